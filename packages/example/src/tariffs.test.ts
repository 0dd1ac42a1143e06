// Six tariffs to start from, each to be read as it stands.

import { Temporal } from '@colla/calendar';
import { currency } from '@colla/money';
import { given, readTariff, type Statement, statement } from '@colla/rates';
import { granted, refused } from '@colla/refusal';
import { expect, it } from 'vitest';
import { STARTS, startingTariff } from './tariffs.ts';

const euro = granted(currency('EUR'));

it.each(STARTS)('the tariff “%s” calls itself an example and can be read', (name) => {
  const written = startingTariff(name, '2027-01-01');
  expect(written.name).toMatch(/^Example: /);
  expect(written.note).toMatch(/^An example, invented/);
  expect(refused(readTariff(written))).toBe(false);
});

function paid(calls: readonly string[]): Statement {
  const tariff = granted(readTariff(startingTariff('pay', '2026-01-01')));
  const asOf = Temporal.ZonedDateTime.from('2026-04-01T09:00[Europe/London]');
  return statement(given({ calls }, euro), { tariff, locale: 'en' }, asOf);
}

it('a staff pianist is paid the hours of a week as long as they come to less than a full week', () => {
  // 20 hours at 27.00.
  expect(paid(['5 × rehearsal 240']).total).toBe(54_000n);
});

it('thirty hours in one week are paid as a full week', () => {
  // 30 × 27.00 = 810.00, of which 640.00 are paid.
  expect(paid(['5 × rehearsal 360']).total).toBe(64_000n);
});

it('a recital and a jury are paid beside the hours of their week', () => {
  // 6 × 27.00 + 96.00 + 21.00.
  expect(paid(['rehearsal 360', 'recital 90', 'jury 20']).total).toBe(27_900n);
});
