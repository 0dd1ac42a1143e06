// A tariff starts from an example, or from the season before.

import { currency } from '@colla/money';
import { granted } from '@colla/refusal';
import { expect, it } from 'vitest';
import { readDraft } from './reading.ts';
import { exampleStart, STARTS, seasonStart } from './starts.ts';

const pupils = { name: 'Pupils', currency: 'GBP', version: 3, clauses: [] };

it.each(STARTS)('the example “%s” opens in pounds, and nothing of it needs mending', async (name) => {
  const draft = await exampleStart(name, { from: '2027-01-01', money: 'GBP' });
  const reading = readDraft(draft, { currency: granted(currency('GBP')), locale: 'en-GB' });
  expect(draft).toMatchObject({ currency: 'GBP', from: '2027-01-01' });
  expect(reading.slips).toEqual([]);
  expect(reading.tariff?.clauses.length).toBe(draft.clauses.length);
});

it('an example of 48.00 cannot be written in yen and stays in euro', async () => {
  expect(await exampleStart('hours', { from: '2027-01-01', money: 'JPY' })).toMatchObject({
    currency: 'EUR',
  });
});

it.each([
  ['2026-09-01', '2026-11-25', '2027-09-01'],
  ['2024-09-01', '2026-11-25', '2027-09-01'],
  ['2024-12-01', '2026-11-25', '2026-12-01'],
  ['2027-01-01', '2026-11-25', '2028-01-01'],
])('a tariff of %s, duplicated on %s, begins on %s', (from, today, begins) => {
  expect(seasonStart({ ...pupils, from }, today)).toMatchObject({ name: 'Pupils, new season', from: begins });
});
