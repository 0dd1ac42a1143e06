// Every fact that a clause may ask for can be said of a kept engagement, and then it prices it.

import type { Client } from '@colla/wire/client';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { callAt, zone } from '../trial/cast.ts';
import { databases, OPENED, openPractice, type Practice, problemOf } from '../trial/practice.ts';

type Clauses = Parameters<Client['addTariff']>[0]['body']['clauses'];
type Engaging = Partial<Parameters<Client['addEngagement']>[0]['body']>;

/** An hour of rehearsal on Monday 2 November 2026 at 60.00, and a clause that asks for more than calls. */
const hour: Clauses[number] = { id: 'hour', kind: 'hourly', terms: { price: '60.00' } };
const less = (what: string, selector: Clauses[number]['for']): Clauses => [
  hour,
  {
    id: 'less',
    kind: 'discount',
    for: selector,
    terms: { what, by: { as: 'amount', amount: '10.00', each: 'engagement' } },
  },
];
const rehearsal = callAt('rehearsal', '2026-11-02', ['10:00', '11:00']);

describe.each(databases)('what is known of an engagement, %s', (_, begin) => {
  let practice: Practice;
  beforeAll(async () => {
    practice = await openPractice(begin);
  });
  beforeEach(() => practice.setClock(OPENED));
  afterAll(() => practice.close());

  const quote = async (clauses: Clauses, engaging: Engaging = {}) => {
    const { client } = practice.browser;
    const payer = await client.addParty({ body: { name: 'Sanna Ilves' } });
    const tariff = await client.addTariff({
      body: { name: 'Asking', currency: 'EUR', from: '2026-01-01', clauses },
    });
    const body = { title: 'Audition', payers: { payer: payer.id }, calls: [rehearsal], ...engaging };
    const { id } = await client.addEngagement({ body });
    const params = { id };
    await client.quoteEngagement({ params, body: { tariff: tariff.id, validUntil: '2026-10-31' } });
    return params;
  };
  const agree = (params: { id: string }) =>
    practice.browser.client.agreeEngagement({ params, body: { acceptedBy: 'Sanna Ilves' } });
  const engage = async (clauses: Clauses, engaging: Engaging = {}) => agree(await quote(clauses, engaging));
  const total = async ({ id }: { id: string }) =>
    (await practice.browser.client.getStatement({ params: { id } })).statement.total;

  test('members of the guild pay less', async () => {
    const clauses = less('Members', { memberships: ['guild'] });
    expect(await total(await engage(clauses, { soloist: { membership: 'guild' } }))).toBe('50.00');
    expect(await total(await engage(clauses, { soloist: { membership: 'union' } }))).toBe('60.00');
  });

  test('a hard work costs more, and each page of a part its price', async () => {
    const clauses: Clauses = [
      hour,
      {
        id: 'hard',
        kind: 'supplement',
        for: { difficulties: ['hard'] },
        terms: { what: 'Hard', by: { as: 'amount', amount: '20.00', each: 'engagement' } },
      },
      { id: 'pages', kind: 'fixed', terms: { price: '0.50', each: 'page' } },
    ];
    const easy = { title: 'Three Songs of the Quay', pages: 8 };
    // 60.00 and 8 pages at 0.50
    const { id } = await engage(clauses, { programme: [easy] });
    expect(await total({ id })).toBe('64.00');
    const works = [easy, { title: 'Toccata', difficulty: 'hard', pages: 12 }];
    const changed = await practice.browser.client.setProgramme({ params: { id }, body: { works } });
    expect(changed.programme).toMatchObject([{ pages: 8 }, { difficulty: 'hard', pages: 12 }]);
    // 60.00, 20 pages and 20.00 more
    expect(await total({ id })).toBe('90.00');
  });

  test('the second week of a term costs less, as the terms were entered when it was agreed', async () => {
    const { client } = practice.browser;
    const clauses = less('Second week of autumn', { terms: ['autumn'], termWeeks: { from: 2, to: 2 } });
    const autumn = { name: 'autumn', from: '2026-10-26', to: '2026-12-18' };
    await client.changeOrganisation({ body: { terms: [autumn] } });
    const agreed = await engage(clauses);
    expect(agreed.agreement?.terms).toEqual([autumn]);
    const asked = await quote(clauses);
    expect([await total(agreed), await total(asked)]).toEqual(['50.00', '50.00']);
    // The call is then in the first week: only what is not agreed yet follows.
    await client.changeOrganisation({ body: { terms: [{ ...autumn, from: '2026-11-02' }] } });
    expect([await total(agreed), await total(asked)]).toEqual(['50.00', '60.00']);
  });

  test('two terms on one day are refused', async () => {
    const { client } = practice.browser;
    const terms = [
      { name: 'autumn', from: '2026-09-01', to: '2026-12-18' },
      { name: 'Advent', from: '2026-11-29', to: '2026-12-24' },
    ];
    expect(await problemOf(client.changeOrganisation({ body: { terms } }))).toMatchObject({
      status: 422,
      type: '/api/problems/organisations/terms-overlap',
      detail:
        '“autumn” and “Advent” both hold 2026-11-29, and a day is of one term only. Let one end before the other begins.',
      pointer: '/terms/1/from',
    });
  });

  describe('a call that moves', () => {
    const clauses: Clauses = [hour, { id: 'moving', kind: 'change', terms: { free: 0, after: [5000] } }];
    const thursday = { on: '2026-11-05', from: '10:00', until: '11:00', zone };
    const move = async (by: 'payer' | 'pianist') => {
      const { id, calls } = await engage(clauses);
      practice.setClock('2026-10-30T12:00:00Z');
      const params = { id, call: calls[0]?.id ?? '' };
      const moved = { on: '2026-10-30', at: '09:00', zone, by };
      return practice.browser.client.changeCall({ params, body: { planned: thursday, moved } });
    };

    test('at the payer’s wish costs half of its fee, and says where it stood', async () => {
      const moved = await move('payer');
      expect(moved.moves).toEqual([
        {
          call: moved.calls[0]?.id,
          start: '2026-11-02T10:00:00+00:00[Europe/London]',
          end: '2026-11-02T11:00:00+00:00[Europe/London]',
          at: '2026-10-30T09:00:00+00:00[Europe/London]',
          by: 'payer',
        },
      ]);
      expect(await total(moved)).toBe('90.00');
    });

    test('at the pianist’s wish costs nothing', async () => {
      expect(await total(await move('pianist'))).toBe('60.00');
    });

    test('by word of a later day is refused', async () => {
      const { id, calls } = await engage(clauses);
      const moved = { on: '2026-10-21', at: '09:00', zone, by: 'payer' as const };
      const asking = practice.browser.client.changeCall({
        params: { id, call: calls[0]?.id ?? '' },
        body: { planned: thursday, moved },
      });
      expect(await problemOf(asking)).toMatchObject({
        status: 422,
        detail: 'Today is 2026-10-20, and word of 2026-10-21 has not come yet. Correct the day it came.',
        pointer: '/moved/on',
      });
    });
  });

  test('minutes that rolled over cover what the engagement’s own do not', async () => {
    const clauses: Clauses = [
      { id: 'covered', kind: 'entitlement', terms: { minutes: 30, rollsOver: true, each: 'month' } },
      hour,
    ];
    const { id } = await engage(clauses);
    expect(await total({ id })).toBe('30.00');
    const body = { rolledOver: { covered: 15 } };
    expect((await practice.browser.client.changeEngagement({ params: { id }, body })).rolledOver).toEqual({
      covered: 15,
    });
    expect(await total({ id })).toBe('15.00');
  });

  test('the second engagement of a payer in a season costs less, and stays so', async () => {
    const { client } = practice.browser;
    await client.addSeason({ body: { name: 'Autumn', from: '2026-09-01', to: '2026-12-31' } });
    const clauses = less('Coming again', { soFar: { from: 1 } });
    const payer = await client.addParty({ body: { name: 'Harbour School' } });
    const payers = { payer: payer.id };
    const first = await engage(clauses, { payers });
    const second = await quote(clauses, { payers });
    const spring = { payers, calls: [callAt('rehearsal', '2027-01-11', ['10:00', '11:00'])] };
    expect((await client.getEngagement({ params: second })).soFar).toBe(1);
    expect(await total(second)).toBe('50.00');
    const { agreement } = await agree(second);
    expect(agreement?.soFar).toBe(1);
    // Called off as a whole, the first counts no more: for the third there is only the second.
    practice.setClock('2026-10-25T10:00:00Z');
    const word = { on: '2026-10-25', at: '09:00', zone, by: 'payer' as const, reason: 'other' as const };
    await client.cancelEngagement({ params: { id: first.id }, body: word });
    const third = await quote(clauses, { payers });
    const others = [await quote(clauses), await quote(clauses, spring)];
    const soFar = [third, ...others].map(async (params) => (await client.getEngagement({ params })).soFar);
    expect(await Promise.all(soFar)).toEqual([1, 0, 0]);
    expect(await total(second)).toBe('50.00');
  });

  describe('what is not paid is not played', () => {
    const clauses: Clauses = [
      hour,
      {
        id: 'first',
        kind: 'payment',
        terms: { due: [{ event: 'first call', days: -7 }], gate: true },
      },
    ];
    const played = { on: '2026-11-02', from: '10:00', until: '11:00', zone };
    const engaged = async () => {
      const { id, calls } = await engage(clauses);
      return { params: { id }, call: { id, call: calls[0]?.id ?? '' } };
    };

    test('a call is blocked from the day its money was due, until it came', async () => {
      const { client } = practice.browser;
      const { params, call } = await engaged();
      practice.setClock('2026-10-25T10:00:00Z');
      expect((await client.getEngagement({ params })).block).toBeUndefined();
      practice.setClock('2026-11-02T12:00:00Z');
      expect((await client.getEngagement({ params })).block).toEqual({
        clause: 'first',
        sentence: 'Payment is due 7 days before the first call; what is not paid by then is not played.',
        due: '2026-10-26',
        owed: '60.00',
        calls: [call.call],
      });
      expect(await problemOf(client.playCall({ params: call, body: played }))).toMatchObject({
        status: 409,
        type: '/api/problems/invoicing/not-paid',
        detail:
          '60.00 is owed since 2026-10-26 and not received, and what is not paid by then is not played. Invoice it and enter the payment, or lift the block with a reason.',
        facts: { owed: '60.00', due: '2026-10-26', clause: 'first' },
      });
      const invoice = await client.issueInvoice({ params, body: { payer: 'payer' } });
      await client.addPayment({
        params: { id: invoice.id },
        body: { receivedOn: '2026-11-02', amount: '60.00' },
      });
      expect((await client.getEngagement({ params })).block).toBeUndefined();
      expect((await client.playCall({ params: call, body: played })).calls[0]?.standing.is).toBe('played');
    });

    test('the pianist lifts the block of a call with a reason, which is kept', async () => {
      const { client } = practice.browser;
      const { params, call } = await engaged();
      const body = { reason: 'The scholarship comes on Friday.' };
      expect(await problemOf(client.liftBlock({ params: call, body }))).toMatchObject({
        status: 409,
        type: '/api/problems/invoicing/not-blocked',
      });
      practice.setClock('2026-11-02T12:00:00Z');
      const lifted = await client.liftBlock({ params: call, body });
      expect(lifted.calls[0]?.lifted).toEqual({ ...body, at: '2026-11-02T12:00:00+00:00[Europe/London]' });
      expect((await client.getEngagement({ params })).block).toBeUndefined();
      const after = await client.playCall({ params: call, body: played });
      expect(after.calls[0]).toMatchObject({ lifted: body, standing: { is: 'played' } });
    });
  });

  test('a round is kept free until another day, and loses its name', async () => {
    const { client } = practice.browser;
    const lapsesAt = { on: '2026-10-25', at: '18:00', zone };
    const { id, calls } = await client.addEngagement({
      body: { title: 'Rounds', calls: [{ ...rehearsal, label: 'second round', lapsesAt }] },
    });
    const params = { id, call: calls[0]?.id ?? '' };
    const later = await client.changeCall({
      params,
      body: { label: null, lapsesAt: { ...lapsesAt, on: '2026-10-28' } },
    });
    expect(later.calls[0]).not.toHaveProperty('label');
    expect(later.calls[0]?.standing).toEqual({
      is: 'held',
      lapsesAt: '2026-10-28T18:00:00+00:00[Europe/London]',
    });
    const open = await client.changeCall({ params, body: { lapsesAt: null } });
    expect(open.calls[0]?.standing).toEqual({ is: 'held' });
  });

  test('nothing is known before its day: no part, no invoice, no money, no word', async () => {
    const { client } = practice.browser;
    const params = { id: (await engage([hour])).id };
    const tomorrow = '2026-10-21';
    const work = { title: 'Toccata', part: { receivedOn: tomorrow } };
    const word = { on: tomorrow, at: '09:00', zone, by: 'payer' as const, reason: 'other' as const };
    const invoice = await client.issueInvoice({ params, body: { payer: 'payer' } });
    const asked = [
      client.setProgramme({ params, body: { works: [work] } }),
      client.addEngagement({ body: { title: 'Recital', programme: [work] } }),
      client.issueInvoice({ params, body: { payer: 'payer', issuedOn: tomorrow } }),
      client.addPayment({ params: { id: invoice.id }, body: { receivedOn: tomorrow, amount: '60.00' } }),
      client.cancelEngagement({ params, body: word }),
    ];
    const problems = await Promise.all(asked.map((asking: Promise<unknown>) => problemOf(asking)));
    expect(problems.map(({ status, pointer }) => [status, pointer])).toEqual([
      [422, '/works/0/part/receivedOn'],
      [422, '/programme/0/part/receivedOn'],
      [422, '/issuedOn'],
      [422, '/receivedOn'],
      [422, '/on'],
    ]);
  });

  test('the form of a tariff’s file is there for whoever writes one, without a key', async () => {
    const response = await practice.stranger.fetch('/api/tariff-schema.json');
    expect(response.headers.get('content-type')).toMatch(/^application\/schema\+json/);
    expect(await response.json()).toMatchObject({
      $schema: 'https://json-schema.org/draft/2020-12/schema',
      title: 'Tariff',
    });
  });
});
