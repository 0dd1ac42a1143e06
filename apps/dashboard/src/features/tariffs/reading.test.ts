// A tariff being written reads as far as it can, prices an example, and says what is wrong where it is.

import { currency, toDecimal } from '@colla/money';
import { readTariff } from '@colla/rates';
import { granted } from '@colla/refusal';
import { describe, expect, it } from 'vitest';
import { addClause, changeClause, moveClause, openDraft, removeClause, type TariffDraft } from './draft.ts';
import { addExampleCall, type Example, startingExamples } from './example.ts';
import { priceExample } from './example-priced.ts';
import { readDraft } from './reading.ts';

const reader = { currency: granted(currency('GBP')), locale: 'en-GB', zone: 'Europe/London' };

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

  it('says each clause in its sentence', () => {
    expect([...readDraft(draft, reader).sentences.values()][0]).toBe(
      'Rehearsals are 40.00 an hour, charged in quarter hours.',
    );
  });

  it('goes on reading the other clauses while one price is missing, and blames that one only', () => {
    const { sentences, slips } = readDraft(priced(draft, 1, ''), reader);
    expect([...sentences.keys()]).toEqual([0]);
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
    const order = (of: TariffDraft) => of.clauses.map(({ id }) => id);
    expect(order(moveClause(draft, 2, -1))).toEqual(['hour', 'late', 'recital']);
    expect(order(moveClause(draft, 0, -1))).toEqual(order(draft));
    expect(order(removeClause(draft, 1))).toEqual(['hour', 'late']);
  });
});

describe('the example beside a tariff', () => {
  const tariff = granted(readTariff(written));
  const start = startingExamples(tariff).whole;

  it('has one call of each kind the tariff names, the performance last', () => {
    expect(start.calls.map(({ kind }) => kind)).toEqual(['rehearsal', 'recital']);
  });

  it('is priced by the tariff: an hour at 40.00, a recital at 150.00 and a quarter of that for late music', () => {
    expect(total(start)).toBe('227.50');
  });

  it('charges a quarter hour more when the rehearsal runs ten minutes over', () => {
    expect(total(withFirst(start, { over: '10' }))).toBe('237.50');
  });

  it('adds a call like the last, a day later', () => {
    const more = addExampleCall(start);
    expect(more.calls.map(({ on }) => on)).toEqual(['2026-03-02', '2026-03-03', '2026-03-04']);
    expect(total(more)).toBe('415.00');
  });

  it('leaves out a call that ends before it starts, and says so beside its end', () => {
    const { statement, slips } = priceExample(withFirst(start, { until: '09:00' }), tariff, reader);
    expect(slips.map(({ pointer }) => pointer)).toEqual(['/calls/0/until']);
    expect(toDecimal(statement?.total ?? 0n, reader.currency)).toBe('187.50');
  });

  function total(example: Example): string {
    const { statement } = priceExample(example, tariff, reader);
    return toDecimal(statement?.total ?? 0n, reader.currency);
  }
});

function priced(of: TariffDraft, key: number, price: string): TariffDraft {
  const terms = of.clauses.find((clause) => clause.key === key)?.terms ?? {};
  return changeClause(of, key, { terms: { ...terms, price } });
}

function withFirst(example: Example, to: Partial<Example['calls'][number]>): Example {
  const [first, ...others] = example.calls;
  return { ...example, calls: first ? [{ ...first, ...to }, ...others] : others };
}
