// When something is due: days named by what happens.

import { Temporal } from '@colla/calendar';
import { currency } from '@colla/money';
import { granted } from '@colla/refusal';
import { describe, expect, it } from 'vitest';
import { dueOn, sayDue } from './due.ts';
import type { EventDay } from './fields.ts';
import { given } from './given.ts';
import { voice } from './voice.ts';

const pounds = granted(currency('GBP'));
const english = voice('en-GB', pounds);
const facts = given(
  {
    terms: ['spring 2026-01-12 to 2026-05-08'],
    calls: [
      'hearing: rehearsal 60 on 2026-03-10',
      'dress rehearsal 60 on 2026-03-18',
      'recital 60 on 2026-03-20',
    ],
    agreedAt: '2026-02-01T09:30',
  },
  pounds,
);
const issued = Temporal.PlainDate.from('2026-03-25');

describe('a payment is due', () => {
  const cases: [string, EventDay[], string][] = [
    ['thirty days after the invoice', [{ event: 'invoice', days: 30 }], '2026-04-24'],
    ['three days after the agreement', [{ event: 'agreement', days: 3 }], '2026-02-04'],
    ['a week before the first call', [{ event: 'first call', days: -7 }], '2026-03-03'],
    [
      'on the day of the recital, to which all leads up',
      [{ event: 'principal call', days: 0 }],
      '2026-03-20',
    ],
    ['on the day of the first dress rehearsal', [{ event: 'dress rehearsal', days: 0 }], '2026-03-18'],
    [
      'in week four of the term or at the hearing, whichever is sooner',
      [
        { event: 'start of the term', days: 21 },
        { event: 'call named', named: 'hearing', days: 0 },
      ],
      '2026-02-02',
    ],
    ['at the hearing', [{ event: 'call named', named: 'hearing', days: 0 }], '2026-03-10'],
    [
      'at the end of the month in which thirty days after the invoice fall',
      [{ event: 'invoice', days: 30, monthEnd: true }],
      '2026-04-30',
    ],
    [
      'on the earlier of fourteen days after the invoice and a week before the recital',
      [
        { event: 'invoice', days: 14 },
        { event: 'principal call', days: -7 },
      ],
      '2026-03-13',
    ],
    [
      'by what is known, where the exam it also names is not in the diary',
      [
        { event: 'exam', days: 0 },
        { event: 'invoice', days: 1 },
      ],
      '2026-03-26',
    ],
  ];
  it.each(cases)('%s', (_, due, day) => {
    expect(dueOn(due, facts, issued)?.toString()).toBe(day);
  });

  it('on no day yet while there is no invoice', () => {
    expect(dueOn([{ event: 'invoice', days: 30 }], facts)).toBeUndefined();
  });
});

describe('a due day is said', () => {
  it.each<[string, EventDay[]]>([
    ['30 days after the invoice', [{ event: 'invoice', days: 30 }]],
    ['1 day before the first call', [{ event: 'first call', days: -1 }]],
    ['on the day of the first dress rehearsal', [{ event: 'dress rehearsal', days: 0 }]],
    ['on the day of “hearing”', [{ event: 'call named', named: 'hearing', days: 0 }]],
    ['21 days after the start of the term', [{ event: 'start of the term', days: 21 }]],
    ['at the end of the month of the invoice', [{ event: 'invoice', days: 0, monthEnd: true }]],
    [
      'at the end of the month that is reached 30 days after the invoice',
      [{ event: 'invoice', days: 30, monthEnd: true }],
    ],
    [
      '14 days after the invoice or 7 days before the principal call, whichever is earlier',
      [
        { event: 'invoice', days: 14 },
        { event: 'principal call', days: -7 },
      ],
    ],
  ])('%s', (said, due) => {
    expect(sayDue(due, english)).toBe(said);
  });
});
