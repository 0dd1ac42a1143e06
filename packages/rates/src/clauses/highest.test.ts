// Premiums that meet: added, or the highest only.

import { expect, it } from 'vitest';
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
