import { type Client, createClient } from '@colla/wire/client';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import {
  AFTERWARDS,
  callAt,
  enterAgreed,
  enterInquiry,
  enterPlayed,
  harbourTariff,
  zone,
} from '../trial/cast.ts';
import { databases, OPENED, openPractice, type Practice, problemOf } from '../trial/practice.ts';

describe.each(databases)('a change, %s', (_, begin) => {
  let practice: Practice;
  beforeAll(async () => {
    practice = await openPractice(begin);
  });
  beforeEach(() => practice.setClock(OPENED));
  afterAll(() => practice.close());

  test('a change of one field leaves the others as they are', async () => {
    const { client } = practice.browser;
    const before = await enterInquiry(client);
    const changed = await client.changeEngagement({
      params: { id: before.id },
      body: { soloist: { instrument: 'cello' } },
    });
    expect(changed).toEqual({ ...before, soloist: { instrument: 'cello' } });
  });

  test('null takes a note away', async () => {
    const { client } = practice.browser;
    const { id } = await client.addEngagement({ body: { title: 'Recital', note: 'Bring the second part.' } });
    const changed = await client.changeEngagement({ params: { id }, body: { note: null } });
    expect(changed).not.toHaveProperty('note');
  });

  test('a party keeps its address when only its name changes, and loses an e-mail address made empty', async () => {
    const { client } = practice.browser;
    const { id } = await client.addParty({
      body: { name: 'Mireille Aubane', address: ['2 Quay Row'], email: 'mireille@example.org' },
    });
    const changed = await client.changeParty({ params: { id }, body: { name: 'M. Aubane', email: '' } });
    expect(changed).toEqual({ id, name: 'M. Aubane', address: ['2 Quay Row'] });
  });

  test('a call changed after the quote takes the quote back, and has to be quoted for again', async () => {
    const { client } = practice.browser;
    const { id, calls } = await enterInquiry(client);
    const tariff = await client.addTariff({ body: harbourTariff });
    const quote = { params: { id }, body: { tariff: tariff.id, validUntil: '2026-10-31' } };
    await client.quoteEngagement(quote);
    const planned = { on: '2026-11-02', from: '10:00', until: '20:00', zone };
    const changed = await client.changeCall({
      params: { id, call: calls[0]?.id ?? '' },
      body: { kind: 'recital', planned },
    });
    expect(changed.stage).toBe('inquiry');
    expect(changed).not.toHaveProperty('quote');
    const yes = client.agreeEngagement({ params: { id }, body: { acceptedBy: 'Sanna Ilves' } });
    expect(await problemOf(yes)).toMatchObject({ status: 409 });
    expect((await client.quoteEngagement(quote)).stage).toBe('quoted');
  });

  test('a yes that was said weeks ago is written down as of then, and a call may have fallen since', async () => {
    const { client } = practice.browser;
    const { id, calls } = await enterInquiry(client);
    const tariff = await client.addTariff({ body: harbourTariff });
    const params = { id };
    await client.quoteEngagement({ params, body: { tariff: tariff.id, validUntil: '2026-10-31' } });
    const yes = (on: string, at: string) =>
      client.agreeEngagement({ params, body: { acceptedBy: 'Sanna Ilves', said: { on, at, zone } } });
    expect(await problemOf(yes('2026-10-30', '09:00'))).toMatchObject({ status: 422 });
    const { agreement } = await yes('2026-08-20', '09:30');
    expect(agreement?.agreedAt).toBe('2026-08-20T09:30:00+01:00[Europe/London]');
    const word = { on: '2026-08-27', at: '12:00', zone, by: 'payer', reason: 'illness' } as const;
    const fallen = await client.cancelCall({ params: { id, call: calls[0]?.id ?? '' }, body: word });
    expect(fallen.calls[0]?.standing.is).toBe('cancelled');
  });

  test('an agreement keeps its calls and holidays as they were, whatever is changed later', async () => {
    const { client } = practice.browser;
    await client.changeOrganisation({ body: { holidays: ['2026-11-01'] } });
    const { id, calls, agreement } = await enterAgreed(client);
    const planned = { on: '2026-11-02', from: '10:00', until: '20:00', zone };
    await client.changeCall({ params: { id, call: calls[0]?.id ?? '' }, body: { kind: 'recital', planned } });
    await client.changeOrganisation({ body: { holidays: [] } });
    expect(agreement).toMatchObject({
      holidays: ['2026-11-01'],
      calls: [
        {
          id: calls[0]?.id,
          kind: 'rehearsal',
          start: '2026-11-02T10:00:00+00:00[Europe/London]',
          end: '2026-11-02T11:00:00+00:00[Europe/London]',
        },
        { kind: 'rehearsal' },
        { kind: 'recital' },
      ],
    });
    expect(await client.getAgreement({ params: { id: agreement?.id ?? '' } })).toEqual(agreement);
  });

  test('two who change a party at once, one its name and one its address, lose neither', async () => {
    const { client } = practice.browser;
    for (let round = 1; round <= 10; round++) {
      const { id } = await client.addParty({ body: { name: 'Mireille Aubane' } });
      const [name, address] = [`M. Aubane ${round}`, [`${round} Quay Row`]];
      await Promise.all([
        client.changeParty({ params: { id }, body: { name } }),
        client.changeParty({ params: { id }, body: { address } }),
      ]);
      expect(await client.getParty({ params: { id } })).toEqual({ id, name, address });
    }
  });

  test('two who change the organisation at once, one its name and one how it is paid, lose neither', async () => {
    const { client } = practice.browser;
    for (let round = 1; round <= 10; round++) {
      const [name, payTo] = [`Quay Piano ${round}`, [`Account 555-${round}`]];
      await Promise.all([
        client.changeOrganisation({ body: { name } }),
        client.changeOrganisation({ body: { payTo } }),
      ]);
      expect(await client.getOrganisation({})).toMatchObject({ name, payTo });
    }
  });

  test('the organisation changes what it names', async () => {
    const { client } = practice.browser;
    const before = await client.getOrganisation({});
    const changes = { name: 'Quay Piano', paper: 'Letter' as const, payTo: ['Account 555'] };
    expect(await client.changeOrganisation({ body: changes })).toEqual({ ...before, ...changes });
  });

  test('a programme keeps the works it names again and takes new ones in', async () => {
    const { client } = practice.browser;
    const { id, programme } = await enterInquiry(client);
    const [songs] = programme;
    const { programme: changed } = await client.setProgramme({
      params: { id },
      body: {
        works: [
          { title: 'Nocturne of the Quay', minutes: 5 },
          {
            id: songs?.id,
            title: 'Three Songs of the Quay',
            part: { state: 'received', receivedOn: '2026-10-19' },
          },
        ],
      },
    });
    expect(changed.map(({ title, part }) => [title, part.state])).toEqual([
      ['Nocturne of the Quay', 'wanted'],
      ['Three Songs of the Quay', 'received'],
    ]);
    expect(changed[1]?.id).toBe(songs?.id);
    expect(changed[0]?.id).not.toBe(songs?.id);
  });

  test('a journey and a cost that are taken out no longer count', async () => {
    const { client } = practice.browser;
    const { id } = await enterAgreed(client);
    const on = '2026-11-06';
    const leg = { on, from: 'Home', to: 'Eastmouth', distance: '10', unit: 'km' as const };
    const { legs } = await client.addLeg({ params: { id }, body: leg });
    const { costs } = await client.addCost({ params: { id }, body: { on, what: 'Part', amount: '8.00' } });
    expect((await client.getStatement({ params: { id } })).statement.total).toBe('312.50');
    await client.removeLeg({ params: { id, leg: legs[0]?.id ?? '' } });
    await client.removeCost({ params: { id, cost: costs[0]?.id ?? '' } });
    expect((await client.getStatement({ params: { id } })).statement.total).toBe('300.00');
    const again = client.removeLeg({ params: { id, leg: legs[0]?.id ?? '' } });
    expect(await problemOf(again)).toMatchObject({ status: 404, type: '/api/problems/legs/unknown' });
  });

  test('a round is kept free, moved, agreed, missed and opened again', async () => {
    const { client } = practice.browser;
    const { id } = await enterAgreed(client);
    const round = {
      ...callAt('rehearsal', '2026-11-05', ['10:00', '11:00']),
      onlyIf: 'the final is reached',
    };
    const { calls } = await client.addCall({ params: { id }, body: round });
    const call = calls.at(-1)?.id ?? '';
    const params = { id, call };
    const last = (of: typeof calls) => of.find((one) => one.id === call);
    expect(last(calls)?.standing).toEqual({ is: 'held', onlyIf: 'the final is reached' });
    const planned = { on: '2026-11-06', from: '14:00', until: '15:00', zone };
    const moved = await client.changeCall({ params, body: { planned } });
    expect(last(moved.calls)?.start).toBe('2026-11-06T14:00:00+00:00[Europe/London]');
    await client.agreeCall({ params });
    practice.setClock(AFTERWARDS);
    const missed = await client.missCall({ params, body: { by: 'payer', reason: 'forgotten' } });
    expect(last(missed.calls)?.standing).toEqual({ is: 'missed', by: 'payer', reason: 'forgotten' });
    const open = await client.reopenCall({ params });
    expect(last(open.calls)?.standing).toEqual({ is: 'agreed' });
  });

  test('a hold that is released is gone', async () => {
    const { client } = practice.browser;
    const { id, calls } = await enterInquiry(client);
    const left = await client.releaseCall({ params: { id, call: calls[0]?.id ?? '' } });
    expect(left.calls).toEqual(calls.slice(1));
  });

  test('an engagement cancelled as a whole lets every call fall', async () => {
    const { client } = practice.browser;
    const { id } = await enterAgreed(client);
    practice.setClock('2026-10-25T10:00:00Z');
    const word = { on: '2026-10-25', at: '09:00', zone, by: 'payer' as const, reason: 'illness' as const };
    const cancelled = await client.cancelEngagement({ params: { id }, body: word });
    expect(cancelled.stage).toBe('cancelled');
    expect(cancelled.calls.map(({ standing }) => standing.is)).toEqual([
      'cancelled',
      'cancelled',
      'cancelled',
    ]);
  });

  test('of a quote, the version in force on the day of the first call is taken', async () => {
    const { client } = practice.browser;
    const { id } = await enterInquiry(client);
    const tariff = await client.addTariff({ body: harbourTariff });
    const params = { id: tariff.id };
    await client.addTariffVersion({ params, body: { ...harbourTariff, from: '2026-11-01' } });
    await client.addTariffVersion({ params, body: { ...harbourTariff, from: '2026-11-03' } });
    const body = { tariff: tariff.id, validUntil: '2026-10-31' };
    expect((await client.quoteEngagement({ params: { id }, body })).quote?.tariff.version).toBe(2);
    const named = { ...body, version: 1 };
    expect((await client.quoteEngagement({ params: { id }, body: named })).quote?.tariff.version).toBe(1);
  });

  test('a version cannot begin before the one before it', async () => {
    const { client } = practice.browser;
    const { id } = await client.addTariff({ body: { ...harbourTariff, from: '2026-02-01' } });
    const asking = client.addTariffVersion({
      params: { id },
      body: { ...harbourTariff, from: '2026-01-31' },
    });
    expect(await problemOf(asking)).toMatchObject({
      type: '/api/problems/tariffs/begins-too-early',
      pointer: '/from',
    });
  });

  test('of two payments of the whole at once, one is taken and one is offered as credit', async () => {
    const { client, fetch } = practice.browser;
    const otherTab = createClient({ fetch });
    const { id } = await enterPlayed(practice);
    const invoice = await client.issueInvoice({ params: { id }, body: { payer: 'payer' } });
    const pay = (tab: Client) =>
      tab.addPayment({
        params: { id: invoice.id },
        body: { receivedOn: '2026-11-06', amount: '300.00' },
      });
    const outcomes = await Promise.allSettled([pay(client), pay(otherTab)]);
    expect(outcomes.map(({ status }) => status).sort()).toEqual(['fulfilled', 'rejected']);
    expect(await client.getInvoice({ params: { id: invoice.id } })).toMatchObject({
      paid: '300.00',
      is: 'paid',
    });
  });

  test('of two invoices of the same at once, one is issued', async () => {
    const { client, fetch } = practice.browser;
    const otherTab = createClient({ fetch });
    const { id } = await enterPlayed(practice);
    const issue = (tab: Client) => tab.issueInvoice({ params: { id }, body: { payer: 'payer' } });
    const outcomes = await Promise.allSettled([issue(client), issue(otherTab)]);
    expect(outcomes.map(({ status }) => status).sort()).toEqual(['fulfilled', 'rejected']);
    expect((await client.getEngagement({ params: { id } })).invoices).toHaveLength(1);
  });

  test('of two calls played at once on two telephones, neither is lost', async () => {
    const { client } = practice.browser;
    const { id, calls } = await enterAgreed(client);
    const [first, second] = calls.map(({ id }) => id);
    practice.setClock(AFTERWARDS);
    const play = (call = '', on: string) =>
      client.playCall({ params: { id, call }, body: { on, from: '10:00', until: '11:00', zone } });
    await Promise.all([play(first, '2026-11-02'), play(second, '2026-11-04')]);
    const after = await client.getEngagement({ params: { id } });
    expect(after.calls.map(({ standing }) => standing.is)).toEqual(['played', 'played', 'agreed']);
  });

  test('what is paid before the last call is played is settled by hand afterwards', async () => {
    const { client } = practice.browser;
    const { id, calls } = await enterAgreed(client);
    const invoice = await client.issueInvoice({ params: { id }, body: { payer: 'payer' } });
    const pay = { receivedOn: '2026-10-20', amount: '300.00' };
    await client.addPayment({ params: { id: invoice.id }, body: pay });
    expect(await problemOf(client.settleEngagement({ params: { id } }))).toMatchObject({
      status: 409,
      type: '/api/problems/engagements/calls-open',
    });
    practice.setClock(AFTERWARDS);
    const times = [
      ['2026-11-02', '10:00', '11:00'],
      ['2026-11-04', '10:00', '11:00'],
      ['2026-11-06', '19:30', '20:30'],
    ];
    for (const [at, [on = '', from = '', until = '']] of times.entries()) {
      await client.playCall({ params: { id, call: calls[at]?.id ?? '' }, body: { on, from, until, zone } });
    }
    expect((await client.settleEngagement({ params: { id } })).stage).toBe('settled');
  });
});
