// The example beside a tariff touches what its clauses speak of, and is priced as an engagement is.

import { currency, toDecimal } from '@colla/money';
import { readTariff, type WrittenClause } from '@colla/rates';
import { granted } from '@colla/refusal';
import { describe, expect, it } from 'vitest';
import { addExampleCall, addExampleWork, type Example, startingExamples } from './example.ts';
import { priceExample } from './example-priced.ts';

const reader = { currency: granted(currency('GBP')), locale: 'en-GB', zone: 'Europe/London' };
const hour: WrittenClause = { id: 'hour', kind: 'hourly', terms: { price: '40.00' } };
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

describe('the example beside a tariff', () => {
  const tariff = granted(readTariff(written));
  const start = startingExamples(tariff.clauses).whole;

  it('has one call of each kind the tariff names, the performance last', () => {
    expect(start.calls.map(({ kind }) => kind)).toEqual(['rehearsal', 'recital']);
  });

  it('has the recital that only a package names', () => {
    const pack = {
      kind: 'package',
      terms: { price: '150.00', what: 'Recital', includes: [{ of: { calls: ['recital'] } }, { of: {} }] },
    };
    const { calls } = startingExamples([...tariff.clauses.slice(0, 1), pack]).whole;
    expect(calls.map(({ kind }) => kind)).toEqual(['rehearsal', 'recital']);
  });

  it('has each call called off on the day before it', () => {
    expect(startingExamples(tariff.clauses).late.calls.map(({ notice }) => notice)).toEqual(['24', '24']);
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

// A rehearsal of an hour on Monday 2 March, a recital of an hour and a half the day after: 100.00 at 40.00 an hour.
describe('the facts of an example', () => {
  it('know a membership: a tenth less of 100.00 for members', () => {
    const under = tariffOf(hour, {
      ...discount({ as: 'share', share: 1000 }),
      for: { memberships: ['member'] },
    });
    expect(prices(under, {}, { membership: '' })).toEqual(['90.00', '100.00']);
  });

  it('know how many engagements came before: 15.00 less from the fifth on', () => {
    const under = tariffOf(hour, {
      ...discount({ as: 'amount', amount: '15.00', each: 'engagement' }),
      for: { soFar: { from: 4 } },
    });
    expect(prices(under, { soFar: '4' }, { soFar: '3' })).toEqual(['85.00', '100.00']);
  });

  it('know the week of the term: 5.00 more for each of two calls in its third week', () => {
    const under = tariffOf(hour, {
      ...supplement({ as: 'amount', amount: '5.00' }),
      for: { termWeeks: { from: 3, to: 3 } },
    });
    expect(prices(under, {}, { termFrom: '2026-03-02' })).toEqual(['110.00', '100.00']);
  });

  it('know how many days ahead one asked: 5.00 more for each call within three days', () => {
    const under = tariffOf(hour, {
      ...supplement({ as: 'amount', amount: '5.00' }),
      for: { daysAhead: { to: 3 } },
    });
    expect(prices(under, { ahead: '1' }, { ahead: '' })).toEqual(['110.00', '100.00']);
  });

  it('know a class of pianist: a quarter less of 100.00 where a student plays', () => {
    const under = tariffOf(hour, {
      ...discount({ as: 'share', share: 2500 }),
      for: { pianists: ['student'] },
    });
    expect(prices(under, {}, { pianistClass: 'professional' })).toEqual(['75.00', '100.00']);
  });

  it('know a hard work: 20.00 more for the engagement', () => {
    const under = tariffOf(hour, {
      ...supplement({ as: 'amount', amount: '20.00', each: 'engagement' }),
      for: { difficulties: ['hard'] },
    });
    expect(prices(under, {}, { works: [] })).toEqual(['120.00', '100.00']);
  });

  it('know pages: twelve of them, and twice twelve, at 3.50', () => {
    const page = { id: 'page', kind: 'fixed', terms: { price: '3.50', each: 'page', what: 'Preparation' } };
    const whole = wholeOf(tariffOf(hour, page));
    expect(prices(tariffOf(hour, page), {}, { works: addExampleWork(whole).works })).toEqual([
      '142.00',
      '184.00',
    ]);
  });

  it('know when a part came: a week before is later than four weeks, five weeks before is not', () => {
    const under = tariffOf(hour, {
      id: 'score',
      kind: 'late-score',
      terms: { steps: [{ days: 28, means: { as: 'charge', amount: '25.00' } }] },
    });
    const whole = wholeOf(under);
    const works = whole.works.map((work) => ({ ...work, came: '2026-01-26' }));
    expect(prices(under, {}, { works })).toEqual(['125.00', '100.00']);
  });

  it('know what rolled over: 30 minutes more of the hour that is covered', () => {
    const under = tariffOf(hour, {
      id: 'covered',
      kind: 'entitlement',
      terms: { minutes: 60, each: 'term', rollsOver: true },
    });
    expect(prices(under, {}, { rolledOver: '30' })).toEqual(['60.00', '40.00']);
  });

  it('know a call that was moved: with a day’s notice where two are asked, half of its 40.00 more', () => {
    const under = tariffOf(hour, {
      id: 'moves',
      kind: 'change',
      terms: { free: 1, noticeHours: 48, after: [5000] },
    });
    const whole = wholeOf(under);
    const calls = whole.calls.map((call, index) =>
      index === 0 ? { ...call, turned: 'moved' as const } : call,
    );
    expect(prices(under, {}, { calls })).toEqual(['100.00', '120.00']);
  });
});

function discount(by: object): WrittenClause {
  return { id: 'less', kind: 'discount', terms: { what: 'Less', by } };
}

function supplement(by: object): WrittenClause {
  return { id: 'more', kind: 'supplement', terms: { what: 'More', by } };
}

function tariffOf(...clauses: WrittenClause[]) {
  return granted(readTariff({ ...written, clauses }));
}

function wholeOf(tariff: ReturnType<typeof tariffOf>): Example {
  return startingExamples(tariff.clauses).whole;
}

/** What the example comes to with one fact, and with another. */
function prices(tariff: ReturnType<typeof tariffOf>, ...facts: Partial<Example>[]): string[] {
  const whole = wholeOf(tariff);
  return facts.map((fact) => {
    const { statement, slips } = priceExample({ ...whole, ...fact }, tariff, reader);
    expect(slips).toEqual([]);
    return toDecimal(statement?.total ?? 0n, reader.currency);
  });
}

function withFirst(example: Example, to: Partial<Example['calls'][number]>): Example {
  const [first, ...others] = example.calls;
  return { ...example, calls: first ? [{ ...first, ...to }, ...others] : others };
}
