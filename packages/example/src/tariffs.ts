// The tariffs of the example season. Every figure in them is our own invention: examples to look at, not advice.

import type { Temporal } from '@colla/calendar';
import { readTariff, type Tariff, type WrittenClause, type WrittenTariff } from '@colla/rates';
import { granted } from '@colla/refusal';

/** The tariffs by their names in the story. */
export type TariffName = 'hours' | 'recital' | 'rounds' | 'school' | 'church';

const NOTE = 'An example, invented to show what a tariff can say. Replace it with your own.';

/** The price of an hour is the one thing that differs between the two versions. */
function byTheHour(hour: string): WrittenClause[] {
  return [
    {
      id: 'time',
      kind: 'hourly',
      for: { calls: ['rehearsal', 'dress rehearsal', 'lesson', 'coaching', 'class'] },
      terms: { price: hour, minimum: 60, increment: 15, grace: 5 },
    },
    {
      id: 'concert',
      kind: 'fixed',
      for: { calls: ['recital'] },
      terms: {
        price: '230.00',
        what: 'Concert',
        includes: 120,
        beyond: { price: '35.00', per: 30, increment: 30, grace: 5 },
      },
    },
    {
      id: 'hearing',
      kind: 'fixed',
      for: { calls: ['audition', 'exam', 'jury'] },
      terms: { price: '52.00', includes: 30, beyond: { price: '13.00', per: 15 } },
    },
    {
      id: 'studio',
      kind: 'hourly',
      for: { calls: ['recording'] },
      terms: { price: '68.00', minimum: 120, increment: 30, time: 'longer' },
    },
    {
      id: 'jury-package',
      kind: 'package',
      terms: {
        price: '118.00',
        what: 'Jury package',
        includes: [
          { of: { calls: ['jury'], labels: ['end-of-term jury'] }, calls: 1 },
          { of: { labels: ['jury rehearsal'] }, minutes: 90 },
        ],
      },
    },
    {
      id: 'sunday',
      kind: 'supplement',
      for: { days: ['sunday', 'public holiday'] },
      terms: { what: 'Sundays and holidays', by: { as: 'share', share: 2000 } },
    },
    {
      id: 'guild',
      kind: 'discount',
      for: { memberships: ['singers’ guild'] },
      terms: { what: 'Members of the guild', by: { as: 'share', share: 1000 } },
    },
    { id: 'way', kind: 'travel', terms: { unit: 'km', perUnit: '0.38', over: 12 } },
    { id: 'costs', kind: 'cost', terms: {} },
    { id: 'moving', kind: 'change', terms: { free: 1, noticeHours: 72, after: [2500, 5000] } },
    {
      id: 'notice',
      kind: 'cancellation',
      terms: {
        clock: 'hours',
        scale: [
          { before: 72, owes: { owes: 'nothing' } },
          { before: 24, owes: { owes: 'share', share: 5000 } },
        ],
        otherwise: { owes: 'all' },
        excused: { reasons: ['illness', 'emergency'], atMost: 1 },
      },
    },
    { id: 'payment', kind: 'payment', terms: { due: [{ event: 'invoice', days: 21 }] } },
  ];
}

const recital: WrittenClause[] = [
  {
    id: 'recital-package',
    kind: 'package',
    terms: {
      price: '440.00',
      what: 'Recital package',
      includes: [
        { of: { calls: ['recital'] }, calls: 1 },
        { of: { calls: ['dress rehearsal'] }, calls: 1, minutesEach: 120 },
        { of: { calls: ['rehearsal'] }, minutes: 300 },
      ],
      band: { from: '380.00', to: '620.00' },
    },
  },
  {
    id: 'further-time',
    kind: 'hourly',
    terms: { price: '46.00', minimum: 30, increment: 15, grace: 5 },
  },
  {
    id: 'learning',
    kind: 'fixed',
    terms: { price: '35.00', each: 'requested work', what: 'Learning a work asked for' },
  },
  {
    id: 'hard',
    kind: 'supplement',
    for: { difficulties: ['hard'] },
    terms: { what: 'A hard part among the works', by: { as: 'amount', amount: '20.00', each: 'engagement' } },
  },
  { id: 'way', kind: 'travel', terms: { unit: 'km', perUnit: '0.38', over: 12, perHour: '14.00' } },
  { id: 'costs', kind: 'cost', terms: {} },
  {
    id: 'shared',
    kind: 'split',
    for: { circumstances: ['shared recital'] },
    terms: {
      among: [
        { payer: 'first soloist', parts: 1 },
        { payer: 'second soloist', parts: 1 },
      ],
    },
  },
  {
    id: 'deposit',
    kind: 'deposit',
    terms: {
      of: { as: 'share', share: 2500 },
      due: [
        { event: 'agreement', days: 7 },
        { event: 'first call', days: -1 },
      ],
    },
  },
  {
    id: 'notice',
    kind: 'cancellation',
    terms: {
      clock: 'days',
      of: 'engagement',
      scale: [
        { before: 28, owes: { owes: 'deposit' } },
        { before: 7, owes: { owes: 'share', share: 5000 } },
      ],
      otherwise: { owes: 'all' },
    },
  },
  { id: 'payment', kind: 'payment', terms: { due: [{ event: 'invoice', days: 14 }] } },
];

const rounds: WrittenClause[] = [
  {
    id: 'round',
    kind: 'fixed',
    for: { calls: ['competition round'] },
    terms: { price: '84.00', includes: 45, beyond: { price: '21.00', per: 15, grace: 5 } },
  },
  {
    id: 'final',
    kind: 'fixed',
    for: { calls: ['competition round'], labels: ['final'] },
    terms: { price: '150.00' },
  },
  {
    id: 'preparation',
    kind: 'hourly',
    for: { calls: ['rehearsal', 'dress rehearsal', 'coaching'] },
    terms: { price: '44.00', minimum: 45 },
  },
  {
    id: 'presence',
    kind: 'supplement',
    for: { calls: ['competition round'] },
    terms: { what: 'Day kept free for the jury', by: { as: 'amount', amount: '40.00', each: 'day' } },
  },
  { id: 'way', kind: 'travel', terms: { unit: 'km', perUnit: '0.38' } },
  { id: 'costs', kind: 'cost', terms: {} },
  {
    id: 'notice',
    kind: 'cancellation',
    terms: {
      clock: 'hours',
      exactly: 'too-late',
      scale: [
        { before: 96, owes: { owes: 'nothing' } },
        { before: 48, owes: { owes: 'share', share: 4000 } },
      ],
      otherwise: { owes: 'share', share: 8000 },
      noShow: { owes: 'all' },
    },
  },
  { id: 'tax', kind: 'tax', terms: { name: 'Sales tax', rate: 1000, not: ['cost'] } },
  { id: 'payment', kind: 'payment', terms: { due: [{ event: 'invoice', days: 21 }] } },
  {
    id: 'candidates-pay-first',
    kind: 'payment',
    for: { levels: ['senior'] },
    terms: { due: [{ event: 'competition round', days: -21 }], gate: true },
  },
];

const school: WrittenClause[] = [
  {
    id: 'covered',
    kind: 'entitlement',
    for: { calls: ['lesson', 'rehearsal', 'class', 'exam'] },
    payer: 'school',
    terms: { minutes: 720, first: ['exam'], price: '37.00' },
  },
  {
    id: 'beyond',
    kind: 'hourly',
    for: { calls: ['lesson', 'rehearsal', 'class', 'exam'] },
    payer: 'family',
    terms: { price: '39.00', increment: 15 },
  },
  {
    id: 'concert',
    kind: 'fixed',
    for: { calls: ['recital'] },
    payer: 'school',
    terms: { price: '125.00', what: 'Pupils’ concert' },
  },
  {
    id: 'notice',
    kind: 'cancellation',
    terms: {
      clock: 'working-days',
      scale: [{ before: 2, owes: { owes: 'nothing' } }],
      otherwise: { owes: 'all' },
      excused: { reasons: ['illness'] },
    },
  },
  { id: 'payment', kind: 'payment', terms: { due: [{ event: 'invoice', days: 30 }] } },
];

const church: WrittenClause[] = [
  {
    id: 'service',
    kind: 'fixed',
    for: { calls: ['service'] },
    terms: { price: '78.00', includes: 75, beyond: { price: '20.00', per: 30, increment: 30, grace: 10 } },
  },
  {
    id: 'wedding',
    kind: 'fixed',
    for: { calls: ['service'], labels: ['wedding'] },
    terms: { price: '165.00', what: 'Wedding' },
  },
  {
    id: 'practice',
    kind: 'hourly',
    for: { calls: ['rehearsal'] },
    terms: { price: '36.00', increment: 30, minimum: 30 },
  },
  {
    id: 'feast',
    kind: 'supplement',
    for: { calls: ['service'], days: ['public holiday'] },
    terms: { what: 'Feast days', by: { as: 'share', share: 5000 } },
  },
  { id: 'way', kind: 'travel', terms: { unit: 'km', flat: '9.00', over: 5 } },
  {
    id: 'notice',
    kind: 'cancellation',
    terms: {
      clock: 'clock',
      scale: [
        { before: 14, time: '12:00', owes: { owes: 'nothing' } },
        { before: 2, time: '18:00', owes: { owes: 'share', share: 5000 } },
      ],
      otherwise: { owes: 'share', share: 7500 },
    },
  },
  { id: 'payment', kind: 'payment', terms: { due: [{ event: 'invoice', days: 30 }] } },
];

/** What a department pays a pianist of its staff: the hours of a week, but a week costs it no more than so much. */
const pay: WrittenClause[] = [
  {
    id: 'hours',
    kind: 'hourly',
    for: { calls: ['rehearsal', 'dress rehearsal', 'lesson', 'coaching', 'class'] },
    terms: { price: '27.00', minimum: 30, increment: 15, time: 'longer' },
  },
  {
    id: 'week',
    kind: 'limit',
    terms: { what: 'Hours of a full week', on: ['hours'], each: 'week', most: '640.00' },
  },
  {
    id: 'performance',
    kind: 'fixed',
    for: { calls: ['recital', 'competition round'] },
    terms: { price: '96.00', includes: 120, beyond: { price: '27.00', per: 60, increment: 30 } },
  },
  { id: 'hearing', kind: 'fixed', for: { calls: ['jury', 'exam', 'audition'] }, terms: { price: '21.00' } },
  { id: 'service', kind: 'fixed', for: { calls: ['service'] }, terms: { price: '58.00' } },
  {
    id: 'sunday',
    kind: 'supplement',
    for: { days: ['sunday', 'public holiday'] },
    terms: { what: 'Sundays and holidays', by: { as: 'share', share: 5000 } },
  },
  {
    id: 'learning',
    kind: 'fixed',
    terms: { price: '18.00', each: 'requested work', what: 'Learning a work asked for' },
  },
  {
    id: 'notice',
    kind: 'cancellation',
    terms: {
      clock: 'hours',
      scale: [{ before: 24, owes: { owes: 'nothing' } }],
      otherwise: { owes: 'share', share: 5000 },
    },
  },
  { id: 'payment', kind: 'payment', terms: { due: [{ event: 'invoice', days: 10 }] } },
];

const NAMES = {
  hours: 'Example: by the hour',
  recital: 'Example: recital package',
  rounds: 'Example: competition by rounds',
  school: 'Example: school with hours covered',
  church: 'Example: church services',
  pay: 'Example: staff pay',
} as const;

/** The tariffs that somebody can start from. */
export type StartName = keyof typeof NAMES;
export const STARTS = Object.keys(NAMES) as StartName[];

/** A tariff to start from, as written, in its first version. Its currency is euro; its figures are to be replaced. */
export function startingTariff(name: StartName, from: string): WrittenTariff {
  const clauses = { hours: byTheHour('48.00'), recital, rounds, school, church, pay }[name];
  return read(NAMES[name], { version: 1, from }, clauses).written;
}

/** Every version of each tariff, oldest first. The hour became dearer at `newPrices`. */
export function exampleTariffs(days: {
  oldPrices: Temporal.PlainDate;
  newPrices: Temporal.PlainDate;
}): Readonly<Record<TariffName, readonly [Tariff, ...Tariff[]]>> {
  const first = { version: 1, from: days.oldPrices.toString() };
  const second = { version: 2, from: days.newPrices.toString() };
  return {
    hours: [read(NAMES.hours, first, byTheHour('46.00')), read(NAMES.hours, second, byTheHour('48.00'))],
    recital: [read(NAMES.recital, first, recital)],
    rounds: [read(NAMES.rounds, first, rounds)],
    school: [read(NAMES.school, first, school)],
    church: [read(NAMES.church, first, church)],
  };
}

function read(
  name: string,
  of: Pick<WrittenTariff, 'version' | 'from'>,
  clauses: readonly WrittenClause[],
): Tariff {
  return granted(readTariff({ name, currency: 'EUR', note: NOTE, ...of, clauses }));
}
