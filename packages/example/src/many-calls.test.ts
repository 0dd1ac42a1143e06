import { inSeason, Temporal } from '@colla/calendar';
import { statementOf } from '@colla/engagements';
import { timesOf } from '@colla/hours';
import { billable, type Invoice, payersOf } from '@colla/invoicing';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { manyCalls } from './many-calls.ts';

const now = Temporal.ZonedDateTime.from('2026-11-25T13:45[Europe/Lisbon]');

function deal(seed: number, calls: number) {
  let last = 0;
  const newId = () => {
    last += 1;
    return `id-${last}`;
  };
  return manyCalls({ newId, now, seed, calls });
}

const callsOf = (season: ReturnType<typeof deal>) => season.engagements.flatMap(({ calls }) => calls);

it('deals as many calls as asked for, all within the season', () => {
  const season = deal(7, 2000);
  const days = callsOf(season).map((call) => timesOf(call).start.toPlainDate());
  expect(days).toHaveLength(2000);
  expect(days.filter((day) => !inSeason(day, season.season))).toEqual([]);
});

it('deals the same hand for the same seed, and another for another', () => {
  const titles = (seed: number) =>
    callsOf(deal(seed, 60)).map(({ kind, planned }) => `${kind} ${planned.start}`);
  expect(titles(3)).toEqual(titles(3));
  expect(titles(3)).not.toEqual(titles(4));
});

it('prices whatever is dealt: no call without a price, and payers who pay the whole between them', () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 2 ** 32 - 1 }), (seed) => {
      const season = deal(seed, 40);
      for (const engagement of season.engagements) {
        const statement = statementOf(engagement, now, season.organisation);
        expect(statement?.unpriced).toEqual([]);
        expect(statement?.payers.reduce((sum, { total }) => sum + total, 0n)).toBe(statement?.total);
      }
    }),
    { numRuns: 25 },
  );
});

it('leaves nothing to ask once all of a dealt statement is invoiced', () => {
  const season = deal(11, 300);
  for (const engagement of season.engagements) {
    const statement = statementOf(engagement, now, season.organisation);
    if (!statement) continue;
    const asked: Pick<Invoice, 'payer' | 'lines' | 'taxes'>[] = payersOf(statement, []).map((payer) =>
      billable(statement, payer, []),
    );
    for (const payer of payersOf(statement, asked)) {
      expect(billable(statement, payer, asked)).toMatchObject({ lines: [], taxes: [], total: 0n });
    }
  }
});
