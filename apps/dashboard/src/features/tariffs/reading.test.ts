// A tariff being written reads as far as it can, and says what is wrong where it is.

import { currency } from '@colla/money';
import { readTariff } from '@colla/rates';
import { granted } from '@colla/refusal';
import { describe, expect, it } from 'vitest';
import {
  addClause,
  changeClause,
  duplicateClause,
  moveClause,
  openDraft,
  removeClause,
  type TariffDraft,
  typeAt,
  typedAt,
} from './draft.ts';
import { readDraft } from './reading.ts';

const reader = { currency: granted(currency('GBP')), locale: 'en-GB' };

const written = {
  name: 'Students',
  currency: 'GBP',
  version: 3,
  from: '2026-09-01',
  clauses: [
    { id: 'hour', kind: 'hourly', for: { calls: ['rehearsal'] as const }, terms: { price: '40.00' } },
    { id: 'recital', kind: 'fixed', for: { calls: ['recital'] as const }, terms: { price: '150.00' } },
    {
      id: 'late',
      kind: 'supplement',
      terms: { what: 'Late music', by: { as: 'share', share: 2500 }, on: ['recital'] },
    },
  ],
};
const draft = openDraft(written, reader);

describe('a tariff being written', () => {
  it('reads back as it was written', () => {
    const { tariff, slips } = readDraft(draft, reader);
    expect(slips).toEqual([]);
    expect(tariff?.clauses).toEqual(granted(readTariff(written)).clauses);
  });

  it('goes on reading the other clauses while one price is missing, and blames that one only', () => {
    const { tariff, slips } = readDraft(priced(draft, 1, ''), reader);
    expect(tariff?.clauses.map(({ id }) => id)).toEqual(['hour']);
    expect(slips.map(({ pointer }) => pointer)).toEqual(['/clauses/1/terms/price']);
  });

  it('names both clauses where two put a price on the same calls', () => {
    const twice = changeClause(draft, 1, { selector: { calls: ['rehearsal'], levels: '' } });
    const { slips } = readDraft(twice, reader);
    expect(slips.map(({ pointer }) => pointer)).toEqual(['/clauses/1']);
    expect(slips[0]?.detail).toContain('Clauses “hour” and “recital” contradict');
  });

  it('says of a day that is none that it is none, and prices nothing', () => {
    const { tariff, slips } = readDraft({ ...draft, from: '2026-02-30' }, reader);
    expect(tariff).toBeUndefined();
    expect(slips.map(({ pointer }) => pointer)).toEqual(['/from']);
  });

  it('starts a clause that is added from the first worked example of its kind, under a free name', () => {
    const added = addClause(addClause(draft, 'hourly', reader), 'hourly', reader);
    expect(added.clauses.map(({ id }) => id)).toEqual(['hour', 'recital', 'late', 'hourly', 'hourly-2']);
    expect(added.clauses[3]?.terms.price).toBe('60.00');
  });

  it('moves a clause one place, and no further than the ends', () => {
    expect(order(moveClause(draft, 2, -1))).toEqual(['hour', 'late', 'recital']);
    expect(order(moveClause(draft, 0, -1))).toEqual(order(draft));
    expect(order(removeClause(draft, 1))).toEqual(['hour', 'late']);
  });

  it('has a clause twice under two names, the second right below the first', () => {
    const twice = duplicateClause(draft, 0);
    expect(order(twice)).toEqual(['hour', 'hour-2', 'recital', 'late']);
    expect(order(duplicateClause(twice, 0))).toEqual(['hour', 'hour-3', 'hour-2', 'recital', 'late']);
  });

  it('adds a clause that speaks of others by speaking of those that are there', () => {
    const added = addClause(draft, 'highest', reader).clauses.at(-1);
    // The supplement first: the highest only is of supplements.
    expect(added?.terms.of).toEqual(['late', 'hour']);
    const limit = addClause(draft, 'limit', reader).clauses.at(-1);
    expect(limit?.terms.on).toEqual(['hour']);
    const first = addClause({ ...draft, clauses: [] }, 'highest', reader).clauses.at(-1);
    expect(first?.terms.of).toEqual(['sunday', 'holiday']);
  });

  it('takes what is typed in a sentence to where the clause keeps it', () => {
    const [, , late] = draft.clauses;
    const share = ['terms', 'by', 'share'];
    expect(late && typedAt(late, share)).toBe('25');
    const changed = late && { ...late, ...typeAt(late, share, '30') };
    expect(changed && typedAt(changed, share)).toBe('30');
    expect(changed && typedAt(changed, ['terms', 'on'])).toEqual(['recital']);
  });
});

function order({ clauses }: TariffDraft): string[] {
  return clauses.map(({ id }) => id);
}

function priced(of: TariffDraft, key: number, price: string): TariffDraft {
  const terms = of.clauses.find((clause) => clause.key === key)?.terms ?? {};
  return changeClause(of, key, { terms: { ...terms, price } });
}
