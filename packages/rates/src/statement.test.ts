// What an engagement costs, told as the trade tells it. All sums are worked out by hand.

import { describe, expect, it } from 'vitest';
import type { Facts } from './facts.ts';
import { type Given, given } from './given.ts';
import { POUNDS, pounds, priced } from './priced.ts';
import type { WrittenClause } from './tariff.ts';

const total = (clauses: WrittenClause[], facts: Given) => pounds(priced(clauses, facts).total);

const hours: WrittenClause = { id: 'hours', kind: 'hourly', terms: { price: '40.00' } };
const round: WrittenClause = {
  id: 'round',
  kind: 'fixed',
  for: { calls: ['competition round'] },
  terms: { price: '80.00' },
};
const notice = (terms: object): WrittenClause => ({
  id: 'notice',
  kind: 'cancellation',
  terms: { ...terms },
});
const nothing = { owes: 'nothing' };
const all = { owes: 'all' };
const dayBefore = { scale: [{ before: 24, owes: nothing }], otherwise: all };

describe('a line', () => {
  it('says its arithmetic so that it can be read aloud', () => {
    const { lines } = priced([hours], { calls: ['rehearsal 70'] });
    expect(lines[0]?.arithmetic).toBe('1.25 × 40.00 = 50.00');
    expect(lines[0]?.facts).toEqual([
      { name: 'played', value: '70 min' },
      { name: 'charged', value: '1.25 h' },
    ]);
  });

  it('says a fraction as a fraction where decimals would be false', () => {
    const minutes = { ...hours, terms: { price: '90.00', increment: 1 } };
    expect(priced([minutes], { calls: ['rehearsal 50'] }).lines[0]?.arithmetic).toBe('50/60 × 90.00 = 75.00');
  });

  it('keeps its key when a call is played longer, so that what was invoiced can be set against it', () => {
    const before = priced([hours], { calls: ['rehearsal 60'] });
    const after = priced([hours], { calls: ['rehearsal 60 +30'] });
    expect([before, after].map(({ lines }) => lines.map(({ key }) => key))).toEqual([
      ['hours:c000'],
      ['hours:c000'],
    ]);
  });
});

describe('a call', () => {
  it('is priced by the clause that fits it most closely', () => {
    const sundays = {
      ...hours,
      id: 'sundays',
      for: { days: ['sunday' as const] },
      terms: { price: '60.00' },
    };
    // 8 March 2026 is a Sunday: 60.00, and 40.00 the day after.
    expect(
      total([hours, sundays], { calls: ['rehearsal 60 on 2026-03-08', 'rehearsal 60 on 2026-03-09'] }),
    ).toBe('100.00');
  });

  it('that no clause prices is named, and not silently free', () => {
    const { total, unpriced } = priced([round], { calls: ['competition round 15', 'rehearsal 60'] });
    expect([pounds(total), unpriced]).toEqual(['80.00', ['c001']]);
  });

  it('that crosses midnight on the night clocks go forward is charged as it was lived', () => {
    // 23:00 to 04:00 on the clock of the place is four hours that night.
    const facts = given({ calls: ['recording 240 on 2026-03-28 at 23:00'] }, POUNDS);
    expect(facts.calls[0]?.planned.end.toPlainTime().toString()).toBe('04:00:00');
    expect(pounds(priced([hours], facts).total)).toBe('160.00');
  });
});

describe('a round kept free', () => {
  const rounds = ['competition round 15', 'competition round 15, only if called to the second round'];

  it('for the second round is not in the offer, for it may never come', () => {
    expect(total([round], { calls: rounds, offered: true })).toBe('80.00');
  });

  it('is not charged before it is agreed', () => {
    expect(total([round], { calls: rounds })).toBe('80.00');
  });

  it('is charged once it is agreed', () => {
    expect(total([round], { calls: ['2 × competition round 15, agreed'] })).toBe('160.00');
  });

  it('is priced in an offer where nothing has to happen first', () => {
    expect(total([round], { calls: ['2 × competition round 15'], offered: true })).toBe('160.00');
  });

  it('costs nothing when it is released, whatever the notice, and takes its package with it', () => {
    const pack: WrittenClause = {
      id: 'pack',
      kind: 'package',
      terms: { price: '150.00', what: 'Recital package', includes: [{ of: {} }] },
    };
    const facts = given({ calls: ['recital 60'], fallen: [{ call: 0, at: '2026-03-02T09:30' }] }, POUNDS);
    const released = facts.calls.map((call) =>
      call.standing.is === 'cancelled' ? { ...call, standing: { ...call.standing, wasAgreed: false } } : call,
    );
    expect(
      priced([pack, notice({ scale: [], otherwise: all })], { ...facts, calls: released }).lines,
    ).toEqual([]);
  });
});

describe('an engagement without calls', () => {
  it('owes its stipend', () => {
    const stipend: WrittenClause = {
      id: 'stipend',
      kind: 'fixed',
      terms: { price: '900.00', each: 'engagement' },
    };
    expect(total([stipend], {})).toBe('900.00');
  });
});

describe('a package', () => {
  const pack: WrittenClause = {
    id: 'pack',
    kind: 'package',
    terms: {
      price: '150.00',
      what: 'Recital package',
      includes: [{ of: { calls: ['rehearsal', 'recital'] }, minutes: 180 }],
    },
  };

  it('is drawn on in the order calls happen, whatever the order they were entered in', () => {
    const { lines } = priced([pack, hours], {
      calls: ['recital 60 on 2026-03-20', 'rehearsal 90 on 2026-03-01', 'rehearsal 60 on 2026-03-10'],
    });
    // 90 and 60 minutes of rehearsal leave 30 for the recital; its other half hour is 20.00.
    expect(lines.map(({ clause, calls, amount }) => [clause, calls, pounds(amount)])).toEqual([
      ['pack', ['c001', 'c002', 'c000'], '150.00'],
      ['hours', ['c000'], '20.00'],
    ]);
  });

  it('that nobody drew on is not owed', () => {
    expect(total([pack, hours], { calls: ['lesson 60'] })).toBe('40.00');
  });

  it('keeps its price where one of its calls falls and the other is played', () => {
    const facts: Given = {
      calls: ['rehearsal 60 on 2026-03-04 at 10:00', 'recital 60 on 2026-03-05 at 19:00'],
      fallen: [{ call: 0, at: '2026-03-04T09:00' }],
    };
    expect(
      total([pack, hours, notice({ scale: [], otherwise: { owes: 'share', share: 5000 } })], facts),
    ).toBe('150.00');
  });
});

describe('a package of up to an hour each', () => {
  it('leaves the half hour beyond it of a rehearsal of 90 minutes', () => {
    const pack: WrittenClause = {
      id: 'pack',
      kind: 'package',
      terms: { price: '100.00', what: 'Rehearsals', includes: [{ of: {}, minutesEach: 60 }] },
    };
    expect(total([pack, hours], { calls: ['rehearsal 90'] })).toBe('120.00');
  });
});

describe('a most for the week and a least in all', () => {
  it('hold one after the other, whichever is written first: 160.00 is 100.00 by the week, and 120.00 in all', () => {
    const inAll: WrittenClause = { id: 'all', kind: 'limit', terms: { on: ['hours'], least: '120.00' } };
    const week: WrittenClause = {
      id: 'week',
      kind: 'limit',
      terms: { on: ['hours'], each: 'week', most: '100.00' },
    };
    const facts: Given = { calls: ['4 × rehearsal 60'] };
    expect([total([hours, inAll, week], facts), total([hours, week, inAll], facts)]).toEqual([
      '120.00',
      '120.00',
    ]);
  });
});

describe('a journey', () => {
  const way: WrittenClause = { id: 'way', kind: 'travel', terms: { flat: '25.00', over: 50 } };

  it.each([
    ['of 40 km', '40 km', '0.00'],
    ['of exactly 50 km', '50 km', '0.00'],
    ['of 60 km', '60 km', '25.00'],
  ])('%s, where a sum is paid beyond 50, is paid %s: %s', (_, leg, owed) => {
    expect(total([way], { legs: [leg] })).toBe(owed);
  });
});

describe('hours that a department covers', () => {
  it('stay covered whole where the call falls and half is owed', () => {
    const paid: WrittenClause = {
      id: 'paid',
      kind: 'entitlement',
      payer: 'department',
      terms: { minutes: 60, price: '30.00' },
    };
    const facts: Given = { calls: ['rehearsal 60'], fallen: [{ call: 0, at: '2026-03-02T09:00' }] };
    expect(
      total([paid, hours, notice({ scale: [], otherwise: { owes: 'share', share: 5000 } })], facts),
    ).toBe('30.00');
  });

  const covered: WrittenClause = {
    id: 'covered',
    kind: 'entitlement',
    payer: 'department',
    terms: { minutes: 120, first: ['exam'] },
  };

  it('are drawn by the exam first, and the statement says granted, used and left', () => {
    const { entitlements, total } = priced([covered, hours], { calls: ['rehearsal 150', 'exam 20'] });
    expect(entitlements).toMatchObject([
      {
        clause: 'covered',
        granted: 120,
        used: 120,
        left: 0,
        lapsed: 0,
        draws: [
          { call: 'c001', minutes: 20 },
          { call: 'c000', minutes: 100 },
        ],
      },
    ]);
    // 50 minutes lie beyond, charged as an hour in quarter hours.
    expect(pounds(total)).toBe('40.00');
  });

  it('are spent by a call cancelled too late, and not by one cancelled in time', () => {
    const used = (at: string) =>
      priced([covered, hours, notice(dayBefore)], {
        calls: ['rehearsal 60 on 2026-03-04 at 14:00'],
        fallen: [{ call: 0, at }],
      }).entitlements.map(({ used }) => used);
    expect([used('2026-03-04T09:00'), used('2026-03-02T09:00')]).toEqual([[60], [0]]);
  });

  it.each([
    [29, '45.00'],
    [30, '30.00'],
  ])('are the hours that count: %i minutes of an hour planned and half played leave %s', (minutes, owed) => {
    const some = { ...covered, terms: { minutes } };
    const asPlanned = { ...hours, terms: { price: '60.00', time: 'planned' } };
    expect(total([some, asPlanned], { calls: ['rehearsal 60 late 30'] })).toBe(owed);
  });

  it('count towards the minimum: one minute of an hour at least leaves 59', () => {
    const one = { ...covered, terms: { minutes: 1 } };
    const atLeast = { ...hours, terms: { price: '60.00', minimum: 60 } };
    expect(total([one, atLeast], { calls: ['rehearsal 25'] })).toBe('59.00');
  });

  it('make up no minimum a second time: ten minutes beyond are a quarter hour, not an hour', () => {
    const atLeast = { ...hours, terms: { price: '40.00', minimum: 60 } };
    expect(total([covered, atLeast], { calls: ['rehearsal 130'] })).toBe('10.00');
  });
});

describe('shares', () => {
  const premium = (id: string, share: number): WrittenClause => ({
    id,
    kind: 'supplement',
    terms: { what: id, by: { as: 'share', share } },
  });

  it('of the fee come to the same whichever clause is written first', () => {
    const facts: Given = { calls: ['rehearsal 60'] };
    const ways = [
      [hours, premium('evening', 2500), premium('sunday', 5000)],
      [premium('sunday', 5000), premium('evening', 2500), hours],
    ];
    // 40.00, a quarter and a half of it.
    expect(ways.map((clauses) => total(clauses, facts))).toEqual(['70.00', '70.00']);
  });

  it('of a premium are taken where the premium is named, though written before it', () => {
    const onTop: WrittenClause = {
      id: 'pension',
      kind: 'supplement',
      terms: { what: 'Pension', by: { as: 'share', share: 1000 }, on: ['sunday'] },
    };
    // A tenth of 20.00.
    expect(total([onTop, premium('sunday', 5000), hours], { calls: ['rehearsal 60'] })).toBe('62.00');
  });

  it('of what is left under a limit wait for the limit', () => {
    const week: WrittenClause = {
      id: 'week',
      kind: 'limit',
      terms: { on: ['hours'], each: 'week', most: '100.00' },
    };
    const pension: WrittenClause = {
      id: 'pension',
      kind: 'supplement',
      terms: { what: 'Pension', by: { as: 'share', share: 1000, together: true }, on: ['hours', 'week'] },
    };
    expect(total([pension, hours, week], { calls: ['3 × rehearsal 60'] })).toBe('110.00');
  });
});

describe('who pays', () => {
  const thirds: WrittenClause = {
    id: 'thirds',
    kind: 'split',
    terms: { among: ['Ada', 'Bruno', 'Chiara'].map((payer) => ({ payer, parts: 1 })) },
  };
  const fee: WrittenClause = { id: 'fee', kind: 'fixed', terms: { price: '100.00' } };

  it('is shared out to the last penny, the odd one to the first', () => {
    const { payers, total } = priced([fee, thirds], { calls: ['recital 60'] });
    expect(payers.map(({ payer, total }) => [payer, pounds(total)])).toEqual([
      ['Ada', '33.34'],
      ['Bruno', '33.33'],
      ['Chiara', '33.33'],
    ]);
    expect(pounds(total)).toBe('100.00');
  });

  it('shares what is taken off as what is charged', () => {
    const off: WrittenClause = {
      id: 'off',
      kind: 'discount',
      terms: { what: 'Friend', by: { as: 'amount', amount: '100.00' } },
    };
    expect(priced([fee, off, thirds], { calls: ['recital 60'] }).payers.map(({ total }) => total)).toEqual([
      0n,
      0n,
      0n,
    ]);
  });

  it('can be one party for the hours and another for the premium', () => {
    const clauses: WrittenClause[] = [
      { ...hours, payer: 'department' },
      {
        id: 'premium',
        kind: 'supplement',
        for: { calls: ['recital'] },
        payer: 'student',
        terms: { what: 'Performance', by: { as: 'amount', amount: '100.00' } },
      },
    ];
    expect(
      priced(clauses, { calls: ['rehearsal 60', 'recital 60'] }).payers.map(({ payer, total }) => [
        payer,
        pounds(total),
      ]),
    ).toEqual([
      ['department', '80.00'],
      ['student', '100.00'],
    ]);
  });
});

describe('a deposit', () => {
  const deposit: WrittenClause = {
    id: 'deposit',
    kind: 'deposit',
    terms: { of: { as: 'share', share: 2500 }, due: [{ event: 'agreement', days: 3 }] },
  };
  const asked = (facts: Given) => {
    const { deposit: due } = priced([hours, deposit, notice(dayBefore)], facts);
    return due && pounds(due.amount);
  };

  it('is a share of the fee as agreed', () => {
    expect(asked({ calls: ['recital 180, agreed'] })).toBe('30.00');
  });

  it('is not raised by an evening that runs over', () => {
    expect(asked({ calls: ['recital 180 +60'] })).toBe('30.00');
  });

  it('is not lowered by a call that falls afterwards', () => {
    const facts: Given = {
      calls: ['2 × rehearsal 60 on 2026-03-04 at 10:00'],
      fallen: [{ call: 0, at: '2026-03-01T10:00' }],
    };
    expect(asked(facts)).toBe('20.00');
  });

  it('is not raised by music that comes late after the agreement', () => {
    const fee: WrittenClause = { id: 'fee', kind: 'fixed', terms: { price: '200.00' } };
    const late: WrittenClause = {
      ...{ id: 'late', kind: 'late-score' },
      terms: { steps: [{ days: 28, means: { as: 'charge', amount: '25.00' } }] },
    };
    const { deposit: due, total } = priced([fee, late, deposit], {
      calls: ['recital 60 on 2026-06-20'],
      works: ['Sonata, came 2026-05-30'],
      agreedAt: '2026-02-03T09:00',
    });
    // a quarter of 200.00, though 225.00 is owed
    expect([due && pounds(due.amount), pounds(total)]).toEqual(['50.00', '225.00']);
  });

  it('is the one that was agreed, where that was kept', () => {
    const { deposit: due } = priced([hours, deposit], { calls: ['recital 180'] });
    if (!due) throw new Error('a quarter of 120.00 is due');
    const longer: Facts = { ...given({ calls: ['recital 240'] }, POUNDS), agreedDeposit: due };
    expect(priced([hours, deposit], longer)).toMatchObject({ total: 16000n, deposit: { amount: 3000n } });
  });

  describe('of the fee of the first call', () => {
    const ofFirst: WrittenClause = {
      id: 'deposit',
      kind: 'deposit',
      terms: { of: { as: 'first call' }, due: [{ event: 'agreement', days: 3 }] },
    };
    const askedUnder = (clauses: WrittenClause[], calls: string[]) => {
      const { deposit: due } = priced([...clauses, ofFirst], { calls });
      return due && pounds(due.amount);
    };
    const lessons: WrittenClause = { id: 'lessons', kind: 'fixed', terms: { price: '20.00' } };

    it('is that of ten lessons of 20.00 at half price: 10.00', () => {
      const half: WrittenClause = {
        id: 'half',
        kind: 'discount',
        terms: { what: 'Half', by: { as: 'share', share: 5000, together: true } },
      };
      expect(askedUnder([lessons, half], ['10 × lesson 30'])).toBe('10.00');
    });

    it('is a third of a package of 150.00 for three calls', () => {
      const pack: WrittenClause = {
        id: 'pack',
        kind: 'package',
        terms: { price: '150.00', what: 'Recital package', includes: [{ of: {} }] },
      };
      expect(askedUnder([pack], ['2 × rehearsal 60', 'recital 60'])).toBe('50.00');
    });

    it('is nothing, and no less, where more is taken off than is charged', () => {
      const gift: WrittenClause = {
        id: 'gift',
        kind: 'discount',
        terms: { what: 'Gift', by: { as: 'amount', amount: '30.00' } },
      };
      expect(askedUnder([lessons, gift], ['lesson 30'])).toBe('0.00');
    });
  });

  it('adds nothing to what is owed', () => {
    expect(total([hours, deposit], { calls: ['recital 180'] })).toBe('120.00');
  });
});

describe('of two clauses of which an engagement can have one', () => {
  it('the closer tax holds, and the other adds nothing', () => {
    const taxes: WrittenClause[] = [
      { id: 'standard', kind: 'tax', terms: { name: 'VAT', rate: 2000 } },
      { id: 'reduced', kind: 'tax', for: { study: ['school'] }, terms: { name: 'VAT', rate: 500 } },
    ];
    expect(total([hours, ...taxes], { calls: ['lesson 60'], soloist: { study: 'school' } })).toBe('42.00');
    expect(total([hours, ...taxes], { calls: ['lesson 60'] })).toBe('48.00');
  });
});

describe('a statement', () => {
  const clauses: WrittenClause[] = [
    { id: 'covered', kind: 'entitlement', payer: 'school', terms: { minutes: 90 } },
    hours,
    { id: 'way', kind: 'travel', terms: { perUnit: '0.35' } },
    { id: 'costs', kind: 'cost', terms: {} },
    notice(dayBefore),
    { id: 'vat', kind: 'tax', terms: { name: 'VAT', rate: 2000 } },
  ];
  const facts = given(
    {
      calls: [
        'rehearsal 60',
        'rehearsal 45 +10',
        'recital 75 on 2026-03-20 at 19:00',
        'lesson 30 on 2026-03-25 at 09:00',
      ],
      fallen: [{ call: 3, at: '2026-03-25T08:00' }],
      legs: ['40 km', '12.5 km'],
      costs: ['Score 12.00', 'Fare 3.40'],
      circumstances: ['alone', 'late'],
    },
    POUNDS,
  );
  const bytes = (of: Facts) =>
    JSON.stringify(priced(clauses, of), (_, value: unknown) =>
      typeof value === 'bigint' ? `${value}n` : value,
    );

  it('is the same to the byte when it is made again', () => {
    expect(bytes(facts)).toBe(bytes(facts));
  });

  it('is the same to the byte whatever the order in which its facts were entered', () => {
    const turned: Facts = {
      ...facts,
      calls: facts.calls.toReversed(),
      legs: facts.legs.toReversed(),
      costs: facts.costs.toReversed(),
      circumstances: facts.circumstances.toReversed(),
    };
    expect(bytes(turned)).toBe(bytes(facts));
  });
});
