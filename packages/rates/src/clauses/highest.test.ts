// Premiums that meet: added, or the highest only.

import { describe, expect, it } from 'vitest';
import { pounds, priced } from '../priced.ts';
import type { WrittenClause } from '../tariff.ts';

const sum = (id: string, days: 'sunday' | 'public holiday', amount: string): WrittenClause => ({
  id,
  kind: 'supplement',
  for: { days: [days] },
  terms: { what: id, by: { as: 'amount', amount } },
});
const premiums = [sum('sunday', 'sunday', '25.00'), sum('holiday', 'public holiday', '40.00')];
const highest: WrittenClause = { id: 'highest', kind: 'highest', terms: { of: ['sunday', 'holiday'] } };
// 8 March 2026 is a Sunday, here also a holiday; 15 March is a Sunday only.
const facts = { calls: ['service 60 on 2026-03-08', 'service 60 on 2026-03-15'], holidays: ['2026-03-08'] };

it('two premiums that meet are added unless the tariff says otherwise: 25 + 40 + 25', () => {
  expect(pounds(priced(premiums, facts).total)).toBe('90.00');
});

it('the highest of two that meet stands alone, and one that meets none stays: 40 + 25', () => {
  const bill = priced([highest, ...premiums], facts);
  expect(pounds(bill.total)).toBe('65.00');
  expect(bill.lines.find(({ clause }) => clause === 'holiday')?.facts).toContainEqual({
    name: 'not added',
    value: 'sunday 25.00',
  });
});

describe('a Sunday that is paid once a day, with two services', () => {
  const day = (amount: string): WrittenClause => ({
    id: 'sunday',
    kind: 'supplement',
    for: { days: ['sunday'] },
    terms: { what: 'sunday', by: { as: 'amount', amount, each: 'day' } },
  });
  const holiday = sum('holiday', 'public holiday', '40.00');
  const evening: WrittenClause = {
    id: 'evening',
    kind: 'supplement',
    for: { hours: { from: '17:00', until: '23:00' } },
    terms: { what: 'evening', by: { as: 'amount', amount: '40.00' } },
  };
  const services = {
    calls: ['service 60 on 2026-03-08 at 09:00', 'service 60 on 2026-03-08 at 18:00'],
    holidays: ['2026-03-08'],
  };
  const amounts = (clauses: WrittenClause[]) =>
    priced(clauses, services).lines.map(({ clause, amount }) => [clause, pounds(amount)]);

  it('gives way to a holiday of 40.00 for each: 80.00, for the half of 25.00 is less', () => {
    expect(amounts([day('25.00'), holiday, highest])).toEqual([
      ['holiday', '40.00'],
      ['holiday', '40.00'],
    ]);
  });

  it('stands alone where the half of it is more: 100.00', () => {
    expect(amounts([day('100.00'), holiday, highest])).toEqual([['sunday', '100.00']]);
  });

  it('keeps its half for the service that meets nothing: 12.50, and 40.00 for the evening', () => {
    const bill = priced(
      [day('25.00'), evening, { ...highest, terms: { of: ['sunday', 'evening'] } }],
      services,
    );
    expect(bill.lines.map(({ what, calls, amount }) => [what, calls, pounds(amount)])).toEqual([
      ['sunday', ['c000'], '12.50'],
      ['evening', ['c001'], '40.00'],
    ]);
    expect(bill.lines.map(({ arithmetic }) => arithmetic)[0]).toBe('1 × 25.00 = 25.00; 1/2 of it = 12.50');
    expect(bill.lines[1]?.facts).toContainEqual({ name: 'not added', value: 'sunday 25.00' });
  });
});
