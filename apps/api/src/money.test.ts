import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { enterAgreed } from '../trial/cast.ts';
import { databases, OPENED, openPractice, type Practice, problemOf } from '../trial/practice.ts';

const OPENING = '2026-10-20';

describe.each(databases)('money of a payer, %s', (_, begin) => {
  let practice: Practice;
  beforeAll(async () => {
    practice = await openPractice(begin);
  });
  beforeEach(() => practice.setClock(OPENED));
  afterAll(() => practice.close());

  const client = () => practice.browser.client;

  /** An agreed engagement whose school is asked for all of its 300.00, due on 3 November. */
  async function billed() {
    const { id, payers } = await enterAgreed(client());
    const invoice = await client().issueInvoice({ params: { id }, body: { payer: 'payer' } });
    return { engagement: id, school: payers.payer ?? '', invoice };
  }
  const standing = async (id: string) => {
    const { paid, owed, is } = await client().getInvoice({ params: { id } });
    return [paid, owed, is];
  };
  const pay = (id: string, amount: string, more: object = {}) =>
    client().addPayment({ params: { id }, body: { receivedOn: OPENING, amount, ...more } });
  const account = (id: string) => client().getAccount({ params: { id } });

  test('one payment goes to the oldest invoice first, and what is left to the next', async () => {
    const { school, invoice } = await billed();
    const again = await secondOf(school);
    const body = { receivedOn: OPENING, amount: '350.00' };
    const payment = await client().addPartyPayment({ params: { id: school }, body });
    expect(payment.allocations).toEqual([
      { invoice: invoice.id, amount: '300.00' },
      { invoice: again.id, amount: '50.00' },
    ]);
    expect([await standing(invoice.id), await standing(again.id)]).toEqual([
      ['300.00', '0.00', 'paid'],
      ['50.00', '250.00', 'part paid'],
    ]);
  });

  test('by hand it goes where somebody says; beyond the money or the invoice, to no invoice of theirs, or for nothing it does not', async () => {
    const { school, invoice } = await billed();
    const other = await billed();
    const send = (against: { invoice: string; amount: string }[], amount = '100.00') =>
      client().addPartyPayment({
        params: { id: school },
        body: { receivedOn: OPENING, amount, against },
      });
    const of = (amount: string, id = invoice.id) => [{ invoice: id, amount }];
    const refusals = [
      await problemOf(send(of('100.01'))),
      await problemOf(send(of('300.01'), '400.00')),
      await problemOf(send(of('10.00', other.invoice.id))),
      await problemOf(send(of('0.00'))),
      await problemOf(send(of('60.00'))),
    ];
    expect(refusals.map(({ type }) => type.replace('/api/problems/invoicing/', ''))).toEqual([
      'beyond-the-money',
      'more-than-owed',
      'not-open',
      'allocated-nothing',
      'more-than-owed',
    ]);
    expect(await standing(invoice.id)).toEqual(['0.00', '300.00', 'open']);
    await send(of('100.00'));
    expect(await standing(invoice.id)).toEqual(['100.00', '200.00', 'part paid']);
  });

  test('what is paid beyond what is owed is credit, which settles the next invoice or is paid back, never twice', async () => {
    const { school, invoice } = await billed();
    await pay(invoice.id, '380.00', { keepCredit: true });
    expect(await account(school)).toMatchObject({ closing: '-80.00', credit: '80.00' });
    const again = await secondOf(school);
    const used = await client().useCredit({ params: { id: school }, body: { on: OPENING } });
    expect(used).toMatchObject({ event: 'credit applied', takenBack: false });
    expect(await standing(again.id)).toEqual(['80.00', '220.00', 'part paid']);
    const refund = { on: OPENING, amount: '0.01' };
    expect(await problemOf(client().refundCredit({ params: { id: school }, body: refund }))).toMatchObject({
      type: '/api/problems/invoicing/no-credit',
    });
    await client().takeBack({
      params: { id: used.id },
      body: { on: OPENING, because: 'entered by mistake' },
    });
    const back = { params: { id: school }, body: { on: OPENING, amount: '80.00', reference: 'Back to you' } };
    expect(await client().refundCredit(back)).toMatchObject({
      event: 'refund paid',
      said: { method: 'bank transfer', reference: 'Back to you' },
    });
    expect(await account(school)).toMatchObject({ closing: '300.00', credit: '0.00' });
  });

  test('credit that two tabs use at once is used once', async () => {
    const { school, invoice } = await billed();
    await pay(invoice.id, '340.00', { keepCredit: true });
    const back = (amount: string) =>
      client().refundCredit({ params: { id: school }, body: { on: OPENING, amount } });
    const ends = await Promise.allSettled([back('40.00'), back('39.99')]);
    expect(ends.map(({ status }) => status).sort()).toEqual(['fulfilled', 'rejected']);
  });

  test('a payment that bounced is owed again, and bounces once', async () => {
    const { school, invoice } = await billed();
    const payment = await pay(invoice.id, '300.00');
    const bounce = () =>
      client().takeBack({
        params: { id: payment.id },
        body: { on: OPENING, because: 'bounced', note: 'no funds' },
      });
    const journal = await bounce();
    expect(journal).toMatchObject({
      event: 'bounced: payment received',
      takesBack: payment.id,
      said: { because: 'bounced', note: 'no funds' },
    });
    expect(await standing(invoice.id)).toEqual(['0.00', '300.00', 'open']);
    expect(await problemOf(bounce())).toMatchObject({
      status: 409,
      type: '/api/problems/invoicing/undone-already',
    });
    await pay(invoice.id, '300.00');
    expect(await account(school)).toMatchObject({ closing: '0.00' });
    const issued = client().takeBack({
      params: { id: invoice.id },
      body: { on: OPENING, because: 'entered by mistake' },
    });
    expect(await problemOf(issued)).toMatchObject({ type: '/api/problems/invoicing/not-to-take-back' });
  });

  test('what will not come is given up with a reason, at most what is owed', async () => {
    const { invoice } = await billed();
    await pay(invoice.id, '299.50');
    const params = { id: invoice.id };
    const more = { on: OPENING, amount: '0.51', reason: 'bank charges' as const };
    expect(await problemOf(client().writeOff({ params, body: more }))).toMatchObject({
      type: '/api/problems/invoicing/not-to-write-off',
    });
    const given = await client().writeOff({ params, body: { on: OPENING, reason: 'bank charges' } });
    expect(given.transfers).toMatchObject([{ to: { purpose: 'write-offs' }, amount: '0.50' }]);
    expect(given.said).toEqual({ reason: 'bank charges' });
    expect(await standing(invoice.id)).toEqual(['300.00', '0.00', 'paid']);
  });

  test('a statement of account says how it came to what is owed, as at any day', async () => {
    const { school, invoice } = await billed();
    practice.setClock('2026-10-25T09:00:00Z');
    const payment = await pay(invoice.id, '120.00', { receivedOn: '2026-10-24' });
    expect(await account(school)).toMatchObject({
      ...{ from: '2026-01-01', to: '2026-10-25', opening: '0.00', closing: '180.00' },
      entries: [
        { on: OPENING, event: 'invoice issued', record: invoice.id, amount: '300.00', balance: '300.00' },
        {
          on: '2026-10-24',
          event: 'payment received',
          record: payment.id,
          amount: '-120.00',
          balance: '180.00',
        },
      ],
    });
    const query = { from: '2026-10-21', to: '2026-10-23' };
    expect(await client().getAccount({ params: { id: school }, query })).toMatchObject({
      ...{ opening: '300.00', entries: [], closing: '300.00' },
    });
    const turned = { from: '2026-10-23', to: '2026-10-21' };
    expect(await problemOf(client().getAccount({ params: { id: school }, query: turned }))).toMatchObject({
      pointer: '/to',
    });
    const behind = await client().listJournals({ query: { invoice: invoice.id } });
    expect(behind.items.map(({ event }) => event)).toEqual(['payment received', 'invoice issued']);
    expect((await client().listJournals({ query: { party: school, limit: 1 } })).next).toBeDefined();
  });

  test('what is owed is aged by how late it is on the day that is asked for, and the books balance', async () => {
    const { school, invoice } = await billed();
    const owedOn = async (asAt: string) => {
      const { payers } = await client().listOwed({ query: { asAt } });
      return payers.find(({ party }) => party === school)?.owed;
    };
    expect(invoice.dueOn).toBe('2026-11-03');
    expect(await owedOn('2026-10-19')).toBeUndefined();
    expect(await owedOn('2026-11-03')).toMatchObject({ 'not due': '300.00', 'up to 30': '0.00' });
    expect(await owedOn('2026-11-04')).toMatchObject({ 'not due': '0.00', 'up to 30': '300.00' });
    expect(await owedOn('2026-12-04')).toMatchObject({ 'up to 30': '0.00', 'up to 60': '300.00' });
    const { rows, total } = await client().getTrialBalance({});
    const cents = (text: string) => BigInt(text.replace('.', ''));
    const sum = (side: 'debit' | 'credit') => rows.reduce((so, row) => so + cents(row[side]), 0n);
    expect([sum('debit'), sum('credit')]).toEqual([cents(total), cents(total)]);
  });

  /** A second engagement of the same school, invoiced. */
  async function secondOf(school: string) {
    const { id } = await enterAgreed(client(), 'A second recital');
    await client().changeEngagement({ params: { id }, body: { payers: { payer: school } } });
    return client().issueInvoice({ params: { id }, body: { payer: 'payer' } });
  }
});
