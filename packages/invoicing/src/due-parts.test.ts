import { factsOf, statementUnder } from '@colla/engagements';
import type { WrittenClause } from '@colla/rates';
import { describe, expect, it } from 'vitest';
import { duePartsOf } from './due-parts.ts';
import { at, day, engaged, organisation } from './engaged.fixture.ts';
import { standingOf } from './invoice.ts';

/** Two hours at 50.00, paid under these terms; agreed on 5 January. */
function partsUnder(
  terms: WrittenClause['terms'],
  invoice: { total: bigint; issuedOn: string; dueOn: string },
) {
  const payment: WrittenClause = { id: 'pay', kind: 'payment', terms };
  const fee: WrittenClause = { id: 'fee', kind: 'fixed', terms: { price: '50.00' } };
  const engagement = engaged(
    [fee, payment],
    [
      ['c1', 'rehearsal', '02-02T10:00'],
      ['c2', 'recital', '03-20T10:00'],
    ],
  );
  const { agreement } = engagement;
  const statement = statementUnder(engagement, agreement, at('01-06T09:00'), organisation);
  const of = {
    total: invoice.total,
    payer: 'payer',
    issuedOn: day(invoice.issuedOn),
    dueOn: day(invoice.dueOn),
  };
  const facts = factsOf(engagement, organisation, agreement);
  return duePartsOf(of, statement.payment ? { payment: statement.payment, facts } : { facts });
}

const told = (parts: ReturnType<typeof partsUnder>) =>
  parts.map(({ on, amount }) => [on.toString().slice(5), amount]);

describe('an invoice is due', () => {
  const monthly = { due: [{ event: 'agreement', days: 10 }], instalments: 3 };

  it('at once where no parts are agreed', () => {
    const terms = { due: [{ event: 'invoice', days: 14 }] };
    expect(told(partsUnder(terms, { total: 10000n, issuedOn: '01-06', dueOn: '01-20' }))).toEqual([
      ['01-20', 10000n],
    ]);
  });

  it('month by month from the agreed day, the last part with the rest', () => {
    expect(told(partsUnder(monthly, { total: 10000n, issuedOn: '01-06', dueOn: '01-15' }))).toEqual([
      ['01-15', 3333n],
      ['02-15', 3333n],
      ['03-15', 3334n],
    ]);
  });

  it('no earlier than it is issued: those of before then fall due together', () => {
    expect(told(partsUnder(monthly, { total: 9000n, issuedOn: '02-20', dueOn: '02-20' }))).toEqual([
      ['02-20', 3000n],
      ['02-20', 3000n],
      ['03-15', 3000n],
    ]);
  });

  it('month by month from its own day, where that is counted from the invoice', () => {
    const byInvoice = { due: [{ event: 'invoice', days: 14 }], instalments: 2 };
    expect(told(partsUnder(byInvoice, { total: 5000n, issuedOn: '02-03', dueOn: '02-17' }))).toEqual([
      ['02-17', 2500n],
      ['03-17', 2500n],
    ]);
  });

  it('in stages, each on its own day', () => {
    const stages = [{ share: 3000, due: [{ event: 'agreement', days: 7 }] }];
    const staged = { due: [{ event: 'principal call', days: -2 }], stages };
    // 30 % on 12 January, 70 % two days before 20 March
    expect(told(partsUnder(staged, { total: 10000n, issuedOn: '01-06', dueOn: '03-18' }))).toEqual([
      ['01-12', 3000n],
      ['03-18', 7000n],
    ]);
  });
});

it('an invoice in parts is overdue once less was paid than was due by then', () => {
  const parts = ['01-15', '02-15'].map((on) => ({ on: day(on), amount: 5000n }));
  const invoice = { total: 10000n, dueOn: day('01-15'), parts };
  expect(standingOf(invoice, 5000n, day('02-15')).is).toBe('part paid');
  expect(standingOf(invoice, 5000n, day('02-16')).is).toBe('overdue');
});
