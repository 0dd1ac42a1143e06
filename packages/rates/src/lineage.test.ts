// A line that stands for what several clauses charged belongs to each of them in part: one that names a clause reaches
// its part and no more.

import { describe, expect, it } from 'vitest';
import type { Given } from './given.ts';
import { pounds, priced } from './priced.ts';
import type { WrittenClause } from './tariff.ts';

/** A rehearsal of 40.00 with a premium of 10.00, cancelled late for half: 25.00, of which 20.00 are for the hours. */
const hours: WrittenClause = { id: 'hours', kind: 'hourly', terms: { price: '40.00' } };
const premium: WrittenClause = {
  id: 'premium',
  kind: 'supplement',
  terms: { what: 'Sight-reading', by: { as: 'amount', amount: '10.00' } },
};
const half: WrittenClause = {
  id: 'notice',
  kind: 'cancellation',
  terms: { scale: [], otherwise: { owes: 'share', share: 5000 } },
};
const fallen: Given = {
  calls: ['rehearsal 60 on 2026-03-04'],
  fallen: [{ call: 0, at: '2026-03-04T08:00' }],
};
const schoolPays = (of: string[]): WrittenClause => ({
  id: 'school',
  kind: 'split',
  terms: { of, among: [{ payer: 'school', parts: 1 }] },
});

const lines = (clauses: WrittenClause[], facts: Given = fallen) =>
  priced(clauses, facts).lines.map(({ key, payer, amount }) => [key, payer, pounds(amount)]);
const owed = (clauses: WrittenClause[], facts: Given = fallen) =>
  Object.fromEntries(priced(clauses, facts).payers.map(({ payer, total }) => [payer, pounds(total)]));

describe('what a late cancellation leaves of hours and a premium', () => {
  it('is paid by the school as far as it is for the hours', () => {
    expect(lines([hours, premium, half, schoolPays(['hours'])])).toEqual([
      ['notice:c000#hours/school', 'school', '20.00'],
      ['notice:c000', 'payer', '5.00'],
    ]);
  });

  it('says how much of it is for what', () => {
    const [theirs, rest] = priced([hours, premium, half, schoolPays(['hours'])], fallen).lines;
    expect(theirs?.arithmetic).toBe('50\u00a0% × 50.00 = 25.00; of it for “hours” 20.00; 1/1 of it = 20.00');
    expect(rest?.arithmetic).toBe('50\u00a0% × 50.00 = 25.00; of it for “premium” 5.00');
  });

  it('is not parted where all of it is meant', () => {
    expect(lines([hours, premium, half, schoolPays(['hours', 'premium'])])).toEqual([
      ['notice:c000/school', 'school', '25.00'],
    ]);
    expect(lines([hours, premium, half, schoolPays(['notice'])])).toEqual([
      ['notice:c000/school', 'school', '25.00'],
    ]);
  });

  it('counts towards a most for the hours with 20.00: of 60.00 where 50.00 is the most', () => {
    const most: WrittenClause = {
      id: 'week',
      kind: 'limit',
      terms: { what: 'Week', on: ['hours'], each: 'week', most: '50.00' },
    };
    const week = { ...fallen, calls: ['rehearsal 60 on 2026-03-04', 'rehearsal 60 on 2026-03-05'] };
    // 40.00 and 10.00 played, 25.00 left of the cancelled one, and 10.00 over the most of the hours
    expect(lines([hours, premium, half, most], week).at(-1)).toEqual([
      'week:payer:2026-03-02',
      'payer',
      '-10.00',
    ]);
    expect(owed([hours, premium, half, most], week)).toEqual({ payer: '65.00' });
  });

  it('is taken along by a limit: what the most takes off the hours is the school’s, cancelled or not', () => {
    const most: WrittenClause = { id: 'most', kind: 'limit', terms: { on: ['hours'], most: '50.00' } };
    const week = { ...fallen, calls: ['rehearsal 60 on 2026-03-04', 'rehearsal 60 on 2026-03-05'] };
    expect(owed([hours, premium, half, most, schoolPays(['hours'])], week)).toEqual({
      school: '50.00',
      payer: '15.00',
    });
  });

  it('goes to a third party as far as it is for what is theirs', () => {
    const theirs: WrittenClause = {
      id: 'theirs',
      kind: 'payee',
      terms: { payee: 'the festival', of: ['premium'] },
    };
    const { toOthers, total } = priced([hours, premium, half, theirs], fallen);
    expect(toOthers.map(({ amount }) => pounds(amount))).toEqual(['5.00']);
    expect(pounds(total)).toBe('20.00');
  });

  it('goes there also once it is shared out: half of 5.00 from each', () => {
    const theirs: WrittenClause = {
      id: 'theirs',
      kind: 'payee',
      terms: { payee: 'the festival', of: ['premium'] },
    };
    const halves: WrittenClause = {
      id: 'halves',
      kind: 'split',
      terms: {
        among: [
          { payer: 'school', parts: 1 },
          { payer: 'family', parts: 1 },
        ],
      },
    };
    const { toOthers, payers } = priced([hours, premium, half, halves, theirs], fallen);
    expect(toOthers.map(({ payer, amount }) => [payer, pounds(amount)])).toEqual([
      ['school', '2.50'],
      ['family', '2.50'],
    ]);
    expect(payers.map(({ total }) => pounds(total))).toEqual(['10.00', '10.00']);
  });
});

describe('what is left of hours of 100.00 and a premium of 20.00, 50.00 and 10.00, is parted twice', () => {
  const dear: WrittenClause = { ...hours, terms: { price: '100.00' } };
  const sunday: WrittenClause = {
    ...premium,
    terms: { what: 'Sunday', by: { as: 'amount', amount: '20.00' } },
  };
  const vat: WrittenClause = {
    id: 'vat',
    kind: 'tax',
    terms: { name: 'VAT', rate: 2000, on: ['hours'] },
  };
  const halves = (id: string, of: string[]): WrittenClause => ({
    id,
    kind: 'split',
    terms: {
      of,
      among: [
        { payer: 'school', parts: 1 },
        { payer: 'family', parts: 1 },
      ],
    },
  });
  const agency: WrittenClause = {
    id: 'agency',
    kind: 'payee',
    terms: { payee: 'the agency', of: ['premium'], share: 5000 },
  };
  const most: WrittenClause = {
    id: 'most',
    kind: 'limit',
    terms: { on: ['hours', 'premium'], each: 'week', most: '90.00' },
  };

  it('into lines with keys of their own: 50.00 and 5.00 for the school, 5.00 for the family', () => {
    expect(lines([dear, sunday, half, schoolPays(['hours']), halves('both', ['premium'])])).toEqual([
      ['notice:c000#hours/school', 'school', '50.00'],
      ['notice:c000/school', 'school', '5.00'],
      ['notice:c000/family', 'family', '5.00'],
    ]);
    expect(lines([dear, sunday, half, agency])).toEqual([
      ['notice:c000#premium', 'payer', '5.00'],
      ['notice:c000', 'payer', '50.00'],
    ]);
  });

  it.each<[string, WrittenClause[]]>([
    ['where half of the premium goes to an agency', [agency]],
    [
      'where the school pays the hours and half the premium',
      [schoolPays(['hours']), halves('p', ['premium'])],
    ],
    ['where both are shared', [halves('p', ['premium']), halves('h', ['hours'])]],
  ])('and a tax on the hours is a fifth of 50.00, %s', (_, parting) => {
    expect(pounds(priced([dear, sunday, half, ...parting, vat], fallen).tax)).toBe('10.00');
  });

  it.each<[string, WrittenClause[]]>([
    ['where half of the premium goes to an agency', [agency]],
    ['where both are shared', [halves('h', ['hours']), halves('p', ['premium'])]],
  ])(
    'and played, under a most of 90.00 that takes 25.00 off the hours, it is a fifth of 75.00, %s',
    (_, parting) => {
      expect(pounds(priced([dear, sunday, most, ...parting, vat], { calls: ['rehearsal 60'] }).tax)).toBe(
        '15.00',
      );
    },
  );
});

describe('what the pianist’s absences take off a stipend of 1200.00', () => {
  const stipend: WrittenClause = {
    id: 'stipend',
    kind: 'fixed',
    terms: { price: '1200.00', each: 'engagement', what: 'Stipend' },
  };
  const missed: Given = {
    calls: ['6 × rehearsal 120'],
    fallen: [
      { call: 1, at: '2026-03-01T10:00', by: 'pianist', reason: 'illness' },
      { call: 4, by: 'pianist' },
    ],
  };
  const docking = (id: string, by: object, more: Partial<WrittenClause> = {}): WrittenClause => ({
    ...more,
    id,
    kind: 'docking',
    terms: { by, on: ['stipend'] },
  });
  const third = docking('third', { as: 'part missed' });

  it('lessens what each of two payers pays of it: a third of 600.00', () => {
    const halves: WrittenClause = {
      id: 'halves',
      kind: 'split',
      terms: {
        of: ['stipend'],
        among: [
          { payer: 'school', parts: 1 },
          { payer: 'studio', parts: 1 },
        ],
      },
    };
    expect(owed([stipend, third, halves], missed)).toEqual({ school: '400.00', studio: '400.00' });
  });

  it('lessens a tax on it: a tenth of 800.00', () => {
    const tax: WrittenClause = {
      id: 'tax',
      kind: 'tax',
      terms: { name: 'Tax', rate: 1000, on: ['stipend'] },
    };
    expect(pounds(priced([stipend, third, tax], missed).tax)).toBe('80.00');
  });

  it('lessens what of it goes to others: 15 % of 960.00, two tenths less', () => {
    const tenth = docking('tenth', { as: 'share', share: 1000 });
    const agency: WrittenClause = {
      id: 'agency',
      kind: 'payee',
      terms: { payee: 'the agency', of: ['stipend'], share: 1500 },
    };
    const { toOthers, total } = priced([stipend, tenth, agency], missed);
    expect(pounds(toOthers.reduce((sum, { amount }) => sum + amount, 0n))).toBe('144.00');
    expect(pounds(total)).toBe('816.00');
  });

  it('counts towards a most for it: of 800.00 where 700.00 is the most, 100.00 comes off', () => {
    const most: WrittenClause = { id: 'most', kind: 'limit', terms: { on: ['stipend'], most: '700.00' } };
    expect(owed([stipend, third, most], missed)).toEqual({ payer: '700.00' });
  });

  it('is taken of the whole by each clause: a tenth for illness and a fifth otherwise, 120.00 and 240.00', () => {
    const ill = docking('ill', { as: 'share', share: 1000 }, { for: { reasons: ['illness'] } });
    const other = docking('other', { as: 'share', share: 2000 }, { for: { reasons: ['other'] } });
    expect(owed([stipend, ill, other], missed)).toEqual({ payer: '840.00' });
  });
});

describe('a month without a call that is made up to 60.00, between one of 40.00 and one of 60.00', () => {
  const least: WrittenClause = {
    id: 'least',
    kind: 'limit',
    terms: { on: ['hours', 'premium'], each: 'month', least: '60.00', through: true },
  };
  const months: Given = { calls: ['lesson 60 on 2026-01-12', 'lesson 90 on 2026-03-02'] };
  const onHours: WrittenClause = { id: 'vat', kind: 'tax', terms: { name: 'VAT', rate: 2000 } };

  it('is taxed as the hours are: 20 % of 180.00', () => {
    const alone = { ...least, terms: { ...least.terms, on: ['hours'] } };
    expect(pounds(priced([hours, alone, onHours], months).tax)).toBe('36.00');
    const named = { ...onHours, terms: { ...onHours.terms, on: ['hours'] } };
    expect(pounds(priced([hours, alone, named], months).tax)).toBe('36.00');
  });

  it('is paid by whoever pays the hours', () => {
    const alone = { ...least, terms: { ...least.terms, on: ['hours'] } };
    expect(owed([hours, alone, schoolPays(['hours'])], months)).toEqual({ school: '180.00' });
  });

  // January 40.00 and 10.00 and 10.00 more; February 60.00; March 60.00 and 10.00. The hours are 100.00 of 120.00.
  it('is for hours and premiums as all months are: 50.00 and 10.00', () => {
    expect(owed([hours, premium, least, schoolPays(['hours'])], months)).toEqual({
      school: '158.00',
      payer: '32.00',
    });
  });
});

describe('a discount on hours and a premium together', () => {
  const tenth: WrittenClause = {
    id: 'tenth',
    kind: 'discount',
    terms: { what: 'Returning', by: { as: 'share', share: 1000, together: true } },
  };

  it('lessens the part of each: of 5.00 off 50.00 the hours have 4.00', () => {
    expect(owed([hours, premium, tenth, schoolPays(['hours'])], { calls: ['rehearsal 60'] })).toEqual({
      school: '36.00',
      payer: '9.00',
    });
  });

  it('also where the call then falls: half of 36.00 and of 9.00', () => {
    expect(owed([hours, premium, tenth, half, schoolPays(['hours'])])).toEqual({
      school: '18.00',
      payer: '4.50',
    });
  });
});
