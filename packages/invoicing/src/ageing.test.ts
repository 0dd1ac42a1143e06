import { describe, expect, it } from 'vitest';
import { accountStatement } from './account-statement.ts';
import { ageing, ageOf } from './ageing.ts';
import { invoiced, twoHours } from './billed.fixture.ts';
import { emptyBooks } from './books.fixture.ts';
import { day, POUND, school } from './engaged.fixture.ts';

const first = { ...invoiced(twoHours(), '02-01'), dueOn: day('03-03') };
const second = { ...first, id: 'i2', number: '2026-0002', issuedOn: day('04-01'), dueOn: day('05-01') };
const theirs = { ...first, id: 'i3', number: '2026-0003', to: { ...first.to, party: school.id } };
const invoices = [first, second, theirs].map(({ id: invoice, dueOn }) => ({ invoice, dueOn }));

/**
 * Mara is invoiced 120.00 on 1 February and again on 1 April, the school once on 1 February. On 20 March Mara pays 50.00
 * of the first; on 10 April 100.00, of which 70.00 is the rest of the first and 30.00 is kept as credit, which settles a
 * part of the second on 12 April. On 1 April a deposit of 25.00 came.
 */
function told() {
  const books = emptyBooks();
  const pay = (id: string, on: string, amount: bigint, credit: bigint) => {
    const allocations = [{ invoice: 'i1', amount: amount - credit }];
    const record = {
      id,
      party: 'p1',
      receivedOn: day(on),
      amount,
      currency: POUND,
      method: 'card',
      allocations,
      credit,
    } as const;
    books.enter({ kind: 'payment', record });
  };
  for (const record of [first, theirs]) books.enter({ kind: 'invoice', record });
  pay('y1', '03-20', 5000n, 0n);
  books.enter({ kind: 'invoice', record: second });
  const deposit = {
    id: 'd1',
    engagement: 'e2',
    party: 'p1',
    receivedOn: day('04-01'),
    amount: 2500n,
  } as const;
  books.enter({ kind: 'deposit', record: { ...deposit, currency: POUND, method: 'cash', credit: 0n } });
  pay('y2', '04-10', 10000n, 3000n);
  const applied = { id: 'a1', party: 'p1', on: day('04-12'), currency: POUND };
  books.enter({
    kind: 'credit applied',
    record: { ...applied, allocations: [{ invoice: 'i2', amount: 3000n }] },
  });
  return books.posted;
}

const posted = told();

describe('what payers owe, by how late it is', () => {
  const of = (asAt: string, party: string) =>
    ageing(posted, invoices, day(asAt)).find((aged) => aged.party === party);
  const none = { 'not due': 0n, 'up to 30': 0n, 'up to 60': 0n, 'up to 90': 0n, 'over 90': 0n };

  it.each([
    // due on 3 March; 4 March is a day late; 2 April is 30 days late
    ['on the day it is due', '03-03', { 'not due': 12000n }, 0n, 12000n],
    ['the day after', '03-04', { 'up to 30': 12000n }, 0n, 12000n],
    ['after a part was paid', '03-20', { 'up to 30': 7000n }, 0n, 7000n],
    [
      'thirty days late, with a second that is not due',
      '04-02',
      { 'not due': 12000n, 'up to 30': 7000n },
      0n,
      19000n,
    ],
    ['thirty-one days late', '04-03', { 'not due': 12000n, 'up to 60': 7000n }, 0n, 19000n],
    ['with a credit that settles nothing yet', '04-11', { 'not due': 12000n }, 3000n, 9000n],
    ['once the credit settles a part', '04-12', { 'not due': 9000n }, 0n, 9000n],
    ['sixty-one days late', '07-01', { 'up to 90': 9000n }, 0n, 9000n],
    ['ninety-one days late', '07-31', { 'over 90': 9000n }, 0n, 9000n],
  ])('%s', (_, asAt, owed, credit, total) => {
    expect(of(asAt, 'p1')).toMatchObject({ currency: 'GBP', owed: { ...none, ...owed }, credit, total });
  });

  it('and each payer by themselves', () => {
    expect(of('07-31', 'p2')).toMatchObject({ owed: { ...none, 'over 90': 12000n }, total: 12000n });
    expect(of('01-31', 'p1')).toBeUndefined();
  });

  it('with deposits beside it, which settle nothing until they are applied', () => {
    expect([of('03-31', 'p1')?.deposits, of('04-01', 'p1')?.deposits]).toEqual([0n, 2500n]);
  });

  it('a debt in monthly parts grows old part by part, and the first is paid first', () => {
    // Mara's first 120.00 in three parts of 40.00; 50.00 came, so 30.00 is left of the second
    const parts = ['03-03', '04-03', '05-03'].map((on) => ({ on: day(on), amount: 4000n }));
    const known = invoices.map((of) => (of.invoice === 'i1' ? { ...of, parts } : of));
    const owed = (asAt: string) => ageing(posted, known, day(asAt)).find(({ party }) => party === 'p1')?.owed;
    // on 10 March the first is a week late; nothing had come
    expect(owed('03-10')).toEqual({ ...none, 'up to 30': 4000n, 'not due': 8000n });
    // on 31 March the 50.00 of 20 March has paid the first and 10.00 of the second
    expect(owed('03-31')).toEqual({ ...none, 'not due': 7000n });
    // on 5 April the second is two days late; another 120.00 was invoiced on 1 April, due on 1 May
    expect(owed('04-05')).toEqual({ ...none, 'up to 30': 3000n, 'not due': 16000n });
  });

  it('a debt of an invoice that nobody knows is loud', () => {
    expect(() => ageOf(undefined, day('04-01'))).toThrow('nobody knows');
  });
});

describe('a statement of account', () => {
  const statement = (from: string, to: string) =>
    accountStatement(posted, { party: 'p1', currency: POUND, from: day(from), to: day(to) });

  it('tells what changed the debt, in order, with what is owed after each', () => {
    const { opening, entries, closing, deposits } = statement('01-01', '12-31');
    expect(opening).toBe(0n);
    expect(
      entries.map(({ on, event, source, amount, balance }) => [`${on}`, event, source.id, amount, balance]),
    ).toEqual([
      ['2026-02-01', 'invoice issued', 'i1', 12000n, 12000n],
      ['2026-03-20', 'payment received', 'y1', -5000n, 7000n],
      ['2026-04-01', 'invoice issued', 'i2', 12000n, 19000n],
      ['2026-04-10', 'payment received', 'y2', -10000n, 9000n],
    ]);
    expect([closing, deposits]).toEqual([9000n, 2500n]);
  });

  it('begins with what was owed before its first day, which belongs to it as its last does', () => {
    const { opening, entries, closing } = statement('03-20', '04-01');
    expect([opening, entries.map(({ amount }) => amount), closing]).toEqual([
      12000n,
      [-5000n, 12000n],
      19000n,
    ]);
  });
});
