// Engagements come back from the books as they were put in, at every stage and however their calls stand.

import { Temporal } from '@colla/calendar';
import {
  addCall,
  cancel,
  decline,
  type Engagement,
  type Inquiry,
  lapse,
  releaseCall,
  settle,
} from '@colla/engagements';
import type { Call, Standing } from '@colla/hours';
import type { WrittenClause } from '@colla/rates';
import { granted } from '@colla/refusal';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import {
  agreed,
  at,
  call,
  clauses,
  day,
  inquiry,
  newBooks,
  newId,
  quoted,
  tariff,
  withStanding,
} from '../trial/cast.ts';
import { databases, servers, type Trial } from '../trial/databases.ts';

describe.each(databases)('$name', (database) => {
  let trial: Trial;
  let cast: Awaited<ReturnType<typeof newBooks>>;

  beforeAll(async () => {
    trial = await database.begin();
    cast = await newBooks(trial.store);
  });
  afterAll(() => trial.end());

  const save = (engagement: Engagement) =>
    trial.store.within(cast.home.id, (books) => books.saveEngagement(engagement));
  const load = (id: string) => trial.store.within(cast.home.id, (books) => books.engagement(id));
  const roundTrip = async (engagement: Engagement) => {
    await save(engagement);
    expect(await load(engagement.id)).toStrictEqual(engagement);
  };

  test('an inquiry comes back whole, its payers and calls in their order', async () => {
    const asked = inquiry(cast);
    await roundTrip(asked);
    const kept = await load(asked.id);
    expect(Object.keys(kept?.payers ?? {})).toEqual(['school', 'payer']);
  });

  test('an inquiry of which next to nothing is known comes back as bare as it was', async () => {
    const { soloistParty: _, institutionParty: __, note: ___, ...bare } = inquiry(cast);
    await roundTrip({
      ...bare,
      payers: {},
      calls: [],
      programme: [],
      legs: [],
      costs: [],
      rolledOver: {},
      soloist: {},
      circumstances: [],
    });
  });

  const now = at('2026-03-20', '10:00');
  const stages: [string, () => Engagement][] = [
    ['quoted', () => quoted(inquiry(cast))],
    ['agreed', () => agreed(inquiry(cast))],
    ['declined', () => granted(decline(inquiry(cast), now))],
    ['lapsed', () => granted(lapse(quoted(inquiry(cast)), at('2026-03-02', '00:00')))],
    [
      'cancelled',
      () =>
        granted(
          cancel(agreed(inquiry(cast)), { at: at('2026-03-01', '08:00'), by: 'payer', reason: 'illness' }),
        ),
    ],
    [
      'settled',
      () => {
        const done = agreed(inquiry(cast, { calls: [call('2026-03-12')] }));
        const played = withStanding(done, {
          is: 'played',
          times: done.calls[0]?.planned ?? call('2026-03-12').planned,
        });
        return granted(settle(played, { at: now, toInvoice: 0n, owed: 0n }));
      },
    ],
  ];
  test.each(stages)('an engagement that is %s comes back whole', (_, made) => roundTrip(made()));

  const standings: [string, Standing][] = [
    ['held', { is: 'held' }],
    [
      'held until a day, for a second round',
      { is: 'held', lapsesAt: at('2026-03-01', '18:00'), onlyIf: 'second round' },
    ],
    ['agreed', { is: 'agreed' }],
    [
      'played, later than planned',
      { is: 'played', times: { start: at('2026-03-12', '10:10'), end: at('2026-03-12', '11:25') } },
    ],
    [
      'cancelled by the payer',
      { is: 'cancelled', at: at('2026-03-10', '22:01'), by: 'payer', reason: 'illness', wasAgreed: true },
    ],
    [
      'a hold released',
      { is: 'cancelled', at: at('2026-03-10', '22:01'), by: 'pianist', reason: 'other', wasAgreed: false },
    ],
    [
      'a round that fell while it waited for its condition',
      {
        ...{ is: 'cancelled', at: at('2026-03-10', '22:01'), by: 'payer', reason: 'other', wasAgreed: false },
        ...{ lapsesAt: at('2026-03-11', '18:00'), onlyIf: 'second round' },
      },
    ],
    ['missed', { is: 'missed', by: 'payer', reason: 'forgotten' }],
  ];
  test.each(standings)('a call that is %s comes back so', (_, standing) =>
    roundTrip(withStanding(agreed(inquiry(cast)), standing)),
  );

  test('calls that were moved, and one that is played unpaid, come back so; and without a move that was a slip', async () => {
    const deal = agreed(inquiry(cast));
    const [first, second] = deal.calls;
    if (!first || !second) throw new Error('there are two calls');
    const move = (of: Call, by: 'payer' | 'pianist', word: string) => ({
      ...{ call: of.id, was: of.planned, by },
      at: Temporal.ZonedDateTime.from(word),
    });
    const moved: Engagement = {
      ...deal,
      calls: [
        { ...first, lifted: { at: at('2026-03-12', '09:58'), reason: 'Paid on Friday, she “says”.' } },
        second,
      ],
      moves: [
        move(first, 'payer', '2026-03-01T08:00:00+11:00[Australia/Sydney]'),
        move(second, 'pianist', '2026-03-02T09:00:00+00:00[Europe/London]'),
        move(first, 'payer', '2026-03-03T09:00:00+00:00[Europe/London]'),
      ],
    };
    await roundTrip(moved);
    await roundTrip({ ...moved, moves: moved.moves.slice(1) });
  });

  test('others are counted that share a payer and are agreed in the season of its first call', async () => {
    const own = await newBooks(trial.store);
    const spring = call('2026-03-12');
    const season = { id: newId(), name: 'Spring', from: day('2026-01-01'), to: day('2026-06-30') };
    const year = { id: newId(), name: 'Year', from: day('2025-09-01'), to: day('2026-08-31') };
    const asked = inquiry(own, { payers: { payer: own.soloist.id }, calls: [spring] });
    const cancelled = cancel(agreed(inquiry(own)), {
      ...{ at: at('2026-03-01', '08:00'), by: 'payer', reason: 'illness' },
    });
    const soFar = await trial.store.within(own.home.id, async (books) => {
      for (const engagement of [
        asked,
        agreed(inquiry(own)),
        // shares no payer, is in the year but not in the spring, is only quoted, was called off
        agreed(inquiry(own, { payers: { payer: own.school.id } })),
        agreed(inquiry(own, { calls: [call('2026-07-01')] })),
        quoted(inquiry(own)),
        granted(cancelled),
      ])
        await books.saveEngagement(engagement);
      const outside = await books.agreedSoFar(asked.id);
      await books.saveSeason(year);
      const within = await books.agreedSoFar(asked.id);
      await books.saveSeason(season);
      return [outside, within, await books.agreedSoFar(asked.id), await books.agreedSoFar(newId())];
    });
    expect(soFar).toEqual([0, 2, 1, 0]);
  });

  test('a call in the hour that clocks repeat comes back in the same of the two, with its zone', async () => {
    // On 1 November 2026 clocks in New York go back from 2:00 to 1:00: 1:30 is first −04:00, then −05:00.
    const second = Temporal.ZonedDateTime.from('2026-11-01T01:30:00-05:00[America/New_York]');
    const planned = { start: second.subtract({ hours: 1 }), end: second };
    const asked = inquiry(cast, { calls: [{ ...call('2026-03-12'), planned }] });
    await roundTrip(asked);
    const kept = (await load(asked.id))?.calls[0]?.planned;
    expect(kept?.start.toString()).toBe('2026-11-01T01:30:00-04:00[America/New_York]');
    expect(kept?.end.toString()).toBe('2026-11-01T01:30:00-05:00[America/New_York]');
  });

  test('words in any script, quotation marks and line ends come back as they were typed', async () => {
    await roundTrip(
      inquiry(cast, { title: 'Żółć “\\n{a,"b"}”\n\t— 音楽 🎹', circumstances: ['a,b', '{}', '"', '\\'] }),
    );
  });

  test('any instant to the microsecond in any zone, any amount of eight bytes, and any words come back', async () => {
    const places = [
      'UTC',
      'Europe/Lisbon',
      'America/St_Johns',
      'Asia/Kathmandu',
      'Pacific/Apia',
      'Australia/Lord_Howe',
    ];
    // From the year 1 to 9999, in microseconds.
    const microseconds = fc.bigInt({ min: -62_135_596_800_000_000n, max: 253_402_300_799_999_999n });
    const moments = fc
      .tuple(microseconds, fc.constantFrom(...places))
      .map(([since, place]) => new Temporal.ZonedDateTime(since * 1000n, place));
    const amounts = fc.bigInt({ min: -(2n ** 63n), max: 2n ** 63n - 1n });
    const words = fc.string({ unit: 'grapheme', minLength: 1 }).filter((text) => !text.includes('\0'));
    await fc.assert(
      fc.asyncProperty(moments, amounts, words, async (askedAt, amount, title) => {
        const costs = [{ id: newId(), on: day('2026-03-14'), what: title, amount }];
        await roundTrip(inquiry(cast, { askedAt, title, costs }));
      }),
      { numRuns: 40 },
    );
  });

  test('a character that cannot be kept is refused in a sentence, and nothing is kept', async () => {
    const asked = inquiry(cast, { note: 'a\u0000b' });
    await expect(save(asked)).rejects.toMatchObject({ refusal: { code: 'store/no-such-character' } });
    expect(await load(asked.id)).toBeUndefined();
  });

  test('saving again keeps what was changed, added and taken away', async () => {
    const asked = inquiry(cast);
    await save(asked);
    const more = granted(addCall(asked, { ...call('2026-03-13'), held: {} }));
    const [first] = more.calls;
    const fewer = granted(releaseCall(more, first?.id ?? ''));
    const changed: Engagement = {
      ...fewer,
      title: 'Odalys Brandt, moved',
      payers: { payer: cast.school.id },
      programme: [...fewer.programme].reverse(),
      legs: [],
      costs: fewer.costs.map((cost) => ({ ...cost, amount: 9_007_199_254_740_993n })),
    };
    await roundTrip(changed);
  });

  test('what is loaded and saved in one transaction is kept', async () => {
    const asked = inquiry(cast);
    await save(asked);
    await trial.store.within(cast.home.id, async (books) => {
      const found = await books.lockEngagement(asked.id);
      if (!found) throw new Error('it is not there');
      await books.saveEngagement({ ...found, title: 'once' });
      await books.saveEngagement({ ...found, title: 'twice', calls: [] });
    });
    expect(await load(asked.id)).toStrictEqual({ ...asked, title: 'twice', calls: [] });
  });

  test('an agreement is found by its own id, with its tariff as it was frozen', async () => {
    const engagement = agreed(inquiry(cast), tariff({ name: 'Frozen', version: 3 }));
    await save(engagement);
    const found = await trial.store.within(cast.home.id, (books) => books.agreement(engagement.agreement.id));
    expect(found).toStrictEqual({ agreement: engagement.agreement, engagement: engagement.id });
  });

  test('the deposit of an agreement comes back as it was reckoned that day', async () => {
    const deposit: WrittenClause = {
      ...{ id: 'deposit', kind: 'deposit' },
      terms: { of: { as: 'share', share: 2500 }, due: [{ event: 'agreement', days: 3 }] },
    };
    const engagement = agreed(
      inquiry(cast, { calls: [call('2026-05-04')] }),
      tariff({ clauses: [...clauses, deposit] }),
    );
    // a quarter of an hour at 60.00
    expect(engagement.agreement.deposit).toMatchObject({ clause: 'deposit', amount: 1500n });
    await save(engagement);
    expect(await load(engagement.id)).toStrictEqual(engagement);
  });

  test('an engagement of 3,000 calls is kept and comes back whole', async () => {
    const days = Array.from({ length: 3000 }, (_, n) => day('2026-01-01').add({ days: n % 365 }));
    await roundTrip(inquiry(cast, { calls: days.map((on) => call(on.toString())) }));
  });

  test('nobody is found by an id that is none, or that nobody has', async () => {
    expect(await load('../etc')).toBeUndefined();
    expect(await load(newId())).toBeUndefined();
  });

  test('a payer who is not in the books is turned down, and nothing is kept', async () => {
    const asked = inquiry(cast, { payers: { payer: newId() } });
    await expect(save(asked)).rejects.toThrow(/foreign key/);
    expect(await load(asked.id)).toBeUndefined();
  });

  describe('between two days', () => {
    test('those are found that have a call on one of them, by the calendar of its place', async () => {
      const { home, ...others } = await newBooks(trial.store);
      // 23:30 on 30 June in Honolulu is already 1 July in London.
      const late = { from: '23:30', until: '23:50', zone: 'Pacific/Honolulu' };
      const june = inquiry(others, { calls: [call('2026-06-30', late), call('2026-08-01')] });
      const july = inquiry(others, { calls: [call('2026-07-01'), call('2026-07-02')] });
      await trial.store.within(home.id, async (books) => {
        await books.saveEngagement(june);
        await books.saveEngagement(july);
        const between = async (from: string, to: string) =>
          (await books.engagementsBetween(day(from), day(to))).map(({ id }) => id);
        expect(await between('2026-06-30', '2026-06-30')).toEqual([june.id]);
        expect(await between('2026-07-01', '2026-07-01')).toEqual([july.id]);
        expect(await between('2026-07-02', '2026-08-01')).toEqual([june.id, july.id].sort());
        expect(await between('2026-07-03', '2026-07-31')).toEqual([]);
      });
    });
  });

  describe('in a list', () => {
    test('each is told with its names, the number and the first and last of its calls, and the parts that are wanted', async () => {
      const { home, ...others } = await newBooks(trial.store);
      const asked = agreed(inquiry(others));
      const { items } = await trial.store.within(home.id, async (books) => {
        await books.saveEngagement(asked);
        return books.engagements({ limit: 10, now: at('2026-03-12', '09:59').toInstant() });
      });
      expect(items).toStrictEqual([
        {
          id: asked.id,
          title: 'Odalys Brandt, spring recital',
          stage: 'agreed',
          soloist: 'Odalys Brandt',
          institution: 'Saltmarsh School of Music',
          calls: 2,
          first: at('2026-03-12', '10:00'),
          last: at('2026-03-14', '19:30'),
          next: { kind: 'rehearsal', start: at('2026-03-12', '10:00') },
          partsWanted: 1,
        },
      ]);
    });

    const fallen: Standing = {
      is: 'cancelled',
      ...{ at: at('2026-03-10', '09:00'), by: 'payer', reason: 'illness', wasAgreed: true },
    };
    const rehearsal = { kind: 'rehearsal', start: at('2026-03-12', '10:00') };
    const recital = { kind: 'recital', label: 'prize-giving', start: at('2026-03-14', '19:30') };
    // Asked for the later one first: the order in which they were written down says nothing.
    const both = () => [
      call('2026-03-14', { kind: 'recital', label: 'prize-giving', from: '19:30', until: '21:00' }),
      call('2026-03-12'),
    ];
    const [held, agreedTo, fell, declined] = [
      (asked: Inquiry) => asked,
      (asked: Inquiry) => agreed(asked),
      (asked: Inquiry) => withStanding(agreed({ ...asked, calls: both().reverse() }), fallen),
      (asked: Inquiry) => granted(decline(asked, now)),
    ];
    const nexts = [
      ['is the earlier of two that are agreed', agreedTo, '2026-03-11', '10:00', rehearsal],
      ['may be one that is only kept free', held, '2026-03-11', '10:00', rehearsal],
      ['is another from the minute that one begins', agreedTo, '2026-03-12', '10:00', recital],
      ['is none once all have begun', agreedTo, '2026-03-14', '19:30', undefined],
      ['passes over one that has fallen', fell, '2026-03-11', '10:00', recital],
      ['is none of an engagement that was declined', declined, '2026-03-11', '10:00', undefined],
    ] as const;
    test.each(nexts)('the next call %s', async (_, becomes, on, time, next) => {
      const { home, ...others } = await newBooks(trial.store);
      const { items } = await trial.store.within(home.id, async (books) => {
        await books.saveEngagement(becomes(inquiry(others, { calls: both() })));
        return books.engagements({ limit: 10, now: at(on, time).toInstant() });
      });
      expect(items.map((item) => item.next)).toStrictEqual([next]);
    });

    test('those of one stage stand alone', async () => {
      const { home, ...others } = await newBooks(trial.store);
      const one = quoted(inquiry(others));
      const titles = await trial.store.within(home.id, async (books) => {
        await books.saveEngagement(inquiry(others));
        await books.saveEngagement(one);
        return (await books.engagements({ limit: 10, now: now.toInstant(), stage: 'quoted' })).items.map(
          ({ id }) => id,
        );
      });
      expect(titles).toEqual([one.id]);
    });
  });
});

describe.each(servers)('$name', (database) => {
  let trial: Trial;
  beforeAll(async () => {
    trial = await database.begin();
  });
  afterAll(() => trial.end());

  /** Two transactions that both load the engagement before either saves it, by `load`. */
  async function twoAtOnce(load: 'engagement' | 'lockEngagement') {
    const { home, ...others } = await newBooks(trial.store);
    const asked = inquiry(others, { calls: [] });
    await trial.store.within(home.id, (books) => books.saveEngagement(asked));
    const both = gate(load === 'engagement' ? 2 : 1);
    const addOne = (on: string) =>
      trial.store.within(home.id, async (books) => {
        const found = await books[load](asked.id);
        await both();
        if (found) await books.saveEngagement({ ...found, calls: [...found.calls, call(on)] });
      });
    const ends = await Promise.allSettled([addOne('2026-03-12'), addOne('2026-03-13')]);
    const kept = await trial.store.within(home.id, (books) => books.engagement(asked.id));
    return { ends: ends.map((end) => (end.status === 'rejected' ? end.reason : 'kept')), kept };
  }

  test('of two who change one engagement at once, the second is refused and changes nothing', async () => {
    const { ends, kept } = await twoAtOnce('engagement');
    expect(ends.filter((end) => end === 'kept')).toHaveLength(1);
    expect(ends.find((end) => end !== 'kept')).toMatchObject({
      refusal: { code: 'store/changed-meanwhile' },
    });
    expect(kept?.calls).toHaveLength(1);
  });

  test('of two who lock one engagement at once, the second waits, and both changes are kept', async () => {
    const { ends, kept } = await twoAtOnce('lockEngagement');
    expect(ends).toEqual(['kept', 'kept']);
    expect(kept?.calls).toHaveLength(2);
  });
});

/** Lets nobody through before so many have come. */
function gate(many: number): () => Promise<void> {
  let come = 0;
  let open: () => void = () => undefined;
  const opened = new Promise<void>((resolve) => {
    open = resolve;
  });
  return () => {
    come += 1;
    if (come >= many) open();
    return opened;
  };
}
