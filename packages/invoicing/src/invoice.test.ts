import { playCall } from '@colla/engagements';
import type { WrittenClause } from '@colla/rates';
import { granted, refused } from '@colla/refusal';
import { describe, expect, it } from 'vitest';
import { draftInvoice } from './draft.ts';
import {
  AFTERWARDS,
  BY_THE_HOUR,
  day,
  engaged,
  lasting,
  mara,
  organisation,
  school,
  statementOfAll,
} from './engaged.fixture.ts';
import { issuable, issue, standingOf } from './invoice.ts';

const agreed = engaged(BY_THE_HOUR, [
  ['c1', 'rehearsal', '02-02T10:00'],
  ['c2', 'audition', '02-09T10:00'],
]);

type But = Partial<Parameters<typeof draftInvoice>[0]>;

function draft(but: But = {}) {
  const engagement = but.engagement ?? agreed;
  return draftInvoice({
    engagement,
    statement: statementOfAll(engagement),
    payer: 'payer',
    to: mara,
    earlier: [],
    organisation,
    issuedOn: day('02-10'),
    ...but,
  });
}

describe('a draft', () => {
  it('is addressed to who pays, from who played, with what both need to see', () => {
    expect(granted(draft({ note: 'With thanks.' }))).toMatchObject({
      engagement: 'e1',
      title: 'Winter audition',
      currency: 'GBP',
      from: { name: 'Ilka Torvane, piano', taxNumber: 'EXAMPLE 1' },
      to: { party: 'p1', name: 'Mara Lindqvar', reference: 'Order 7' },
      payTo: ['Quaymarrow Savings Bank'],
      note: 'With thanks.',
      billable: { total: 12000n },
    });
  });

  it('is not issued on a day before the agreement', () => {
    expect(draft({ issuedOn: day('01-04') })).toMatchObject({
      code: 'invoicing/issued-too-early',
      field: '/issuedOn',
    });
    expect(granted(draft({ issuedOn: day('01-05') })).issuedOn).toEqual(day('01-05'));
  });

  it('is refused where it comes to more than the books can hold', () => {
    // an hour and an hour at half of what the books hold are within them; two hours at the whole are not
    const dear = (price: string) =>
      engaged(
        [{ id: 'time', kind: 'hourly', terms: { price } }],
        [
          ['c1', 'rehearsal', '02-02T10:00'],
          ['c2', 'audition', '02-09T10:00'],
        ],
      );
    expect(granted(draft({ engagement: dear('46116860184273879.03') })).billable.total).toBe(
      9_223_372_036_854_775_806n,
    );
    expect(draft({ engagement: dear('92233720368547758.07') })).toMatchObject({ code: 'money/too-large' });
  });

  it('says the day of a journey and of a cost, which an office will ask for', () => {
    const spent = engaged(
      [
        ...BY_THE_HOUR,
        { id: 'way', kind: 'travel', terms: { perUnit: '0.50' } },
        { id: 'spent', kind: 'cost', terms: {} },
      ],
      [['c1', 'rehearsal', '02-02T10:00']],
    );
    const distance = { thousandths: 40_000, unit: 'km' } as const;
    const leg = {
      id: 'l1',
      on: day('02-01'),
      from: 'Home',
      to: 'Hall',
      distance,
      minutes: 50,
      purpose: 'rehearsal',
    };
    const engagement = {
      ...spent,
      legs: [leg],
      costs: [{ id: 'x1', on: day('01-20'), what: 'Score', amount: 1200n }],
    };
    const invoice = issue(granted(draft({ engagement })), { id: 'i1', series: '2026', ordinal: 1 });
    expect(invoice.lines.map(({ what, on }) => [what, String(on)])).toEqual([
      ['Rehearsal', '2026-02-02'],
      ['Travel, Home to Hall', '2026-02-01'],
      ['Score', '2026-01-20'],
    ]);
  });

  it('leaves out a reference nobody gave', () => {
    expect(granted(draft({ to: school })).to).toEqual({
      party: 'p2',
      name: school.name,
      address: school.address,
    });
  });

  it('knows the day of each call it speaks of, as it was played', () => {
    const times = {
      start: lasting(agreed, 'c1', 60).start.add({ days: 1 }),
      end: lasting(agreed, 'c1', 1560).end,
    };
    const later = granted(playCall(agreed, 'c1', times, AFTERWARDS));
    if (later.stage !== 'agreed') throw new Error('it is agreed still');
    expect(granted(draft({ engagement: later })).days).toEqual({ c1: day('02-03'), c2: day('02-09') });
  });

  it('is refused where nobody has the role that pays', () => {
    const answer = draft({ payer: 'family', to: undefined });
    expect(answer).toMatchObject({
      code: 'invoicing/nobody-pays',
      facts: { payer: 'family' },
      field: '/payer',
    });
    expect(refused(answer) && answer.sentence).toContain('“family”');
  });

  it('is refused where everything has been asked for', () => {
    const first = granted(draft());
    expect(draft({ earlier: [first.billable] })).toMatchObject({ code: 'invoicing/nothing-to-invoice' });
  });
});

describe('an invoice is due', () => {
  const due = (days: number, event: string): WrittenClause => ({
    id: 'payment',
    kind: 'payment',
    terms: { due: [{ event, days }] },
  });

  it.each<[string, WrittenClause | undefined, string]>([
    ['thirty days after it where nothing is agreed', undefined, '2026-03-12'],
    ['as many days after it as agreed', due(14, 'invoice'), '2026-02-24'],
    ['after the audition, where that is agreed', due(7, 'principal call'), '2026-02-16'],
    ['on its own day where the agreed day has passed', due(-7, 'first call'), '2026-02-10'],
  ])('%s', (_, clause, on) => {
    const engagement = engaged(clause ? [...BY_THE_HOUR, clause] : BY_THE_HOUR, [
      ['c1', 'rehearsal', '02-02T10:00'],
      ['c2', 'audition', '02-09T10:00'],
    ]);
    const drafted = granted(draft({ engagement }));
    expect(drafted.dueOn.toString()).toBe(on);
    const sentence = engagement.agreement.sentences.find(({ clause }) => clause === 'payment')?.sentence;
    expect(drafted.terms).toBe(sentence);
  });
});

describe('an issued invoice', () => {
  const invoice = issue(granted(draft()), { id: 'i1', series: '2026', ordinal: 7 });

  it('has its number, its parties and its sums', () => {
    expect(invoice).toMatchObject({
      id: 'i1',
      series: '2026',
      ordinal: 7,
      number: '2026-0007',
      payer: 'payer',
    });
    expect(invoice).toMatchObject({ net: 12000n, tax: 0n, total: 12000n });
  });

  it('says of each line on which day it was', () => {
    expect(invoice.lines.map(({ what, on }) => [what, on?.toString()])).toEqual([
      ['Rehearsal', '2026-02-02'],
      ['Audition', '2026-02-09'],
    ]);
  });

  it('says the last day of a line that tells of several', () => {
    const pack: WrittenClause[] = [
      {
        id: 'pack',
        kind: 'package',
        terms: { price: '100.00', what: 'Audition package', includes: [{ of: {} }] },
      },
    ];
    const engagement = engaged(pack, [
      ['c2', 'audition', '02-09T10:00'],
      ['c1', 'rehearsal', '02-02T10:00'],
    ]);
    const { lines } = issue(granted(draft({ engagement })), { id: 'i1', series: '2026', ordinal: 1 });
    expect(lines.map(({ what, on }) => [what, on?.toString()])).toEqual([['Audition package', '2026-02-09']]);
  });

  it('is never one of nothing', () => {
    const nothing = { ...granted(draft()), billable: { ...granted(draft()).billable, total: 0n } };
    expect(issuable(nothing)).toMatchObject({ code: 'invoicing/nothing-to-invoice' });
    expect(() => issue(nothing, { id: 'i1', series: '2026', ordinal: 1 })).toThrow('an invoice of nothing');
  });
});

describe('an invoice of 120.00 that is due on 12 March', () => {
  const invoice = { total: 12000n, dueOn: day('03-12') };

  it.each([
    ['is open before', 0n, '03-01', 'open', 12000n],
    ['is open on the day itself', 0n, '03-12', 'open', 12000n],
    ['is overdue from the day after', 0n, '03-13', 'overdue', 12000n],
    ['is part paid', 5000n, '03-12', 'part paid', 7000n],
    ['is overdue though part paid', 5000n, '03-13', 'overdue', 7000n],
    ['is paid', 12000n, '03-01', 'paid', 0n],
    ['stays paid', 12000n, '12-31', 'paid', 0n],
  ] as const)('%s', (_, paid, today, is, owed) => {
    expect(standingOf(invoice, paid, day(today))).toEqual({ paid, owed, is });
  });
});
