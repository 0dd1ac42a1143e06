import { Temporal } from 'temporal-polyfill';
import { expect, test } from 'vitest';
import { isAfter } from './order.ts';

test.each([
  ['2026-03-01', '2026-02-28', true],
  ['2026-03-01', '2026-03-01', false],
  ['2025-12-31', '2026-01-01', false],
])('%s is after %s: %s', (one, other, after) => {
  expect(isAfter(Temporal.PlainDate.from(one), Temporal.PlainDate.from(other))).toBe(after);
});
