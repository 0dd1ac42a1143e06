import type { Temporal } from '@colla/calendar';
import { factsOf } from '@colla/engagements';
import { toDecimal } from '@colla/money';
import type { WrittenClause } from '@colla/rates';
import { granted, refused } from '@colla/refusal';
import { describe, expect, it } from 'vitest';
import type { OpenInvoice } from './allocation.ts';
import { invoiced } from './billed.fixture.ts';
import { emptyBooks } from './books.fixture.ts';
import { at, day, engaged, organisation, POUND } from './engaged.fixture.ts';
import type { MoneyEvent } from './event.ts';
import { chargeLateInterest, proposeLateInterest } from './late-interest.ts';
import type { Payment } from './payment.ts';
import published from './published-values.json' with { type: 'json' };

/** A recital of 5,000.00, invoiced on 1 February, due on 3 March, under a term for late payment. */
function late(by: object, price = '5000.00') {
  const clauses: WrittenClause[] = [
    { id: 'fee', kind: 'fixed', terms: { price } },
    { id: 'late', kind: 'late-payment', terms: { by } },
  ];
  const engagement = engaged(clauses, [['c1', 'recital', '01-31T19:00']]);
  const invoice = { ...invoiced(engagement, '02-01'), dueOn: day('03-03') };
  const books = emptyBooks();
  books.enter({ kind: 'invoice', record: invoice });
  const pay = (on: string, amount: bigint, id = 'y1') => {
    const record: Payment = {
      ...{ id, party: 'p1', receivedOn: day(on), amount, currency: POUND, method: 'bank transfer' },
      ...{ allocations: [{ invoice: 'i1', amount }], credit: 0n },
    };
    return books.enter({ kind: 'payment', record });
  };
  const propose = (on: string | Temporal.PlainDate, parts?: OpenInvoice['parts']) =>
    proposeLateInterest({
      invoice: { ...books.open(invoice), ...(parts ? { parts } : {}) },
      posted: books.posted,
      facts: factsOf(engagement, organisation, engagement.agreement),
      terms: { tariff: engagement.agreement.tariff, locale: 'en-GB' },
      on: typeof on === 'string' ? day(on) : on,
    });
  return { books, invoice, pay, propose };
}

const pounds = (minor: bigint) => toDecimal(minor, POUND);
const daysLate = (days: number) => day('03-03').add({ days });
const yearly = (rate: number) => ({ as: 'yearly rate', rate });

describe('late interest is proposed', () => {
  it.each(published.lateInterest.values)(
    'on the whole debt: $debt at $basisPoints basis points for $days days is $interest',
    ({ debt, basisPoints, days, interest }) => {
      const proposal = granted(late(yearly(basisPoints), debt).propose(daysLate(days)));
      expect(pounds(proposal?.interest ?? 0n)).toBe(interest);
      expect(proposal?.left).toBe(proposal?.interest);
    },
  );

  it('and says how it was reckoned', () => {
    expect(late(yearly(1250)).propose('04-02')).toEqual({
      interest: 5137n,
      sum: 0n,
      charged: 0n,
      left: 5137n,
      arithmetic: '5000.00 until 2026-04-02: 51.37',
    });
  });

  it.each(published.fixedSum.values)(
    'with the fixed sum of the statute, once: on $debt $sum',
    ({ debt, sum }) => {
      const proposal = granted(late({ as: 'statutory', law: 'UK' }, debt).propose('04-02'));
      expect(pounds(proposal?.sum ?? 0n)).toBe(sum);
      expect(proposal?.left).toBe((proposal?.sum ?? 0n) + (proposal?.interest ?? 0n));
    },
  );

  it('on each part until it was paid', () => {
    const { pay, propose } = late(yearly(3650));
    pay('03-13', 200000n);
    // 36.5 % a year is 0.1 % a day: 2,000.00 for 10 days 20.00; 3,000.00 for 30 days 90.00
    expect(propose('04-02')).toMatchObject({
      interest: 11000n,
      left: 11000n,
      arithmetic: '2000.00 until 2026-03-13: 20.00; 3000.00 until 2026-04-02: 90.00',
    });
  });

  it('on monthly parts from the day of each, the first paid first', () => {
    const { pay, propose } = late(yearly(3650), '3000.00');
    const parts = ['03-03', '04-03', '05-03'].map((on) => ({ on: day(on), amount: 100000n }));
    expect(propose('03-03', parts)).toBeUndefined();
    pay('03-13', 150000n);
    // 1,000.00 for 10 days are 10.00; what is left of the second, 500.00, for 7 days 3.50; the third is not due
    expect(propose('04-10', parts)).toMatchObject({
      interest: 1350n,
      arithmetic: '1000.00 until 2026-03-13: 10.00; 500.00 until 2026-04-10: 3.50',
    });
  });

  it('no longer on what was paid in time, nor after all was paid', () => {
    const { pay, propose } = late(yearly(3650));
    pay('03-03', 400000n);
    pay('03-13', 100000n, 'y2');
    // 1,000.00 for 10 days
    expect(propose('12-31')).toMatchObject({ interest: 1000n });
  });

  it('on a part that bounced as if it had come when it came again, less the days it was there', () => {
    const { books, pay, propose } = late(yearly(3650));
    const journal = pay('03-13', 500000n);
    const record = {
      id: 'u1',
      of: { kind: 'payment', id: 'y1' },
      on: day('03-23'),
      because: 'bounced',
    } as const;
    books.enter({ kind: 'undo', record, journals: [journal] });
    // 5,000.00 for 30 days is 150.00, less 10 days between the 13th and the 23rd: 100.00
    expect(propose('04-02')).toMatchObject({ interest: 10000n });
  });

  it('not on what a credit note took off: that was never owed', () => {
    const { books, invoice, propose } = late(yearly(3650));
    const lines = invoice.lines.map((line) => ({ ...line, amount: -200000n }));
    const note = { ...invoice, id: 'k1', net: -200000n, total: -200000n, lines, issuedOn: day('03-23') };
    const against = [{ invoice: 'i1', amount: 200000n }];
    books.enter({ kind: 'credit note', record: { ...note, against, credit: 0n } });
    // 3,000.00 for 30 days are 90.00
    expect(propose('04-02')).toMatchObject({ interest: 9000n });
  });

  it.each([
    ['on the day it is due', '03-03', yearly(1250)],
    ['before', '02-15', yearly(1250)],
  ])('not %s', (_, on, by) => {
    expect(late(by).propose(on)).toBeUndefined();
  });

  it('not of a debt that was paid in time', () => {
    const { pay, propose } = late(yearly(1250));
    pay('03-03', 500000n);
    expect(propose('12-31')).toBeUndefined();
  });

  it('not where the reference rate of the law is not known', () => {
    const { books, invoice } = late({ as: 'statutory', law: 'UK' });
    const engagement = engaged(
      [
        { id: 'fee', kind: 'fixed', terms: { price: '10.00' } },
        { id: 'late', kind: 'late-payment', terms: { by: { as: 'statutory', law: 'UK' } } },
      ],
      [['c1', 'recital', '01-31T19:00']],
    );
    const answer = proposeLateInterest({
      invoice: { ...books.open(invoice), dueOn: day('03-03').with({ year: 2090 }) },
      posted: books.posted,
      facts: factsOf(engagement, organisation, engagement.agreement),
      terms: { tariff: engagement.agreement.tariff, locale: 'en-GB' },
      on: at('04-02T10:00').toPlainDate().with({ year: 2090 }),
    });
    expect(answer).toMatchObject({ code: 'rates/no-reference-rate' });
  });
});

describe('late interest is charged only when somebody says so', () => {
  const { books, invoice, pay, propose } = late(yearly(3650));
  const proposal = granted(propose('04-02'));
  if (!proposal) throw new Error('150.00 is late');

  it('as much as is proposed, or less', () => {
    const answer = chargeLateInterest(
      { id: 'l1', on: day('04-02'), amount: 15001n },
      books.open(invoice),
      proposal,
    );
    expect(answer).toMatchObject({ code: 'invoicing/more-than-late', field: '/amount' });
    expect(refused(answer) && answer.sentence).toBe(
      'Late payment has come to 150.00 that is not charged yet. Charge more than nothing and at most that.',
    );
  });

  it('then it is owed on the invoice, bears no interest itself, and is not proposed again', () => {
    const of = { id: 'l1', on: day('04-02'), amount: 15000n };
    const charged: MoneyEvent = {
      kind: 'late interest',
      record: granted(chargeLateInterest(of, books.open(invoice), proposal)),
    };
    books.enter(charged);
    expect(books.open(invoice).owed).toBe(515000n);
    expect(propose('04-02')).toMatchObject({ interest: 15000n, charged: 15000n, left: 0n });
    pay('04-12', 515000n);
    // ten days more on 5,000.00 are 50.00
    expect(propose('12-31')).toMatchObject({ interest: 20000n, left: 5000n });
  });

  it('and where that was a mistake, it is proposed again', () => {
    const { books, invoice, propose } = late(yearly(3650));
    const of = { id: 'l1', on: day('04-02'), amount: 15000n };
    const record = granted(chargeLateInterest(of, books.open(invoice), proposal));
    const journal = books.enter({ kind: 'late interest', record });
    const back = { id: 'u1', of: { kind: 'late interest', id: 'l1' }, on: day('04-02') } as const;
    books.enter({ kind: 'undo', record: { ...back, because: 'entered by mistake' }, journals: [journal] });
    expect(books.open(invoice).owed).toBe(500000n);
    expect(propose('04-02')).toMatchObject({ interest: 15000n, charged: 0n, left: 15000n });
  });
});
