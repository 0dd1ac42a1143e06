// A season of any number of calls, dealt by a seed: what benches and long properties run on.

import type { Temporal } from '@colla/calendar';
import type { CallKind, Reason } from '@colla/hours';
import { type CastName, castParties, pianist, ZONE } from './cast.ts';
import { type Chance, chance } from './chance.ts';
import { clockAt } from './clock.ts';
import { engage, type Stage } from './engage.ts';
import { type ExampleSeason, spanOf, tariffsFor, tariffsKept, yearsOf } from './season.ts';
import type { TariffName } from './tariffs.ts';
import type { Told, ToldCall, ToldWork, Weekday } from './told.ts';

/** What one stave asks for: who, under which tariff, and which kinds of call lead up to what. */
interface Custom {
  readonly institution?: CastName;
  readonly soloists: readonly [CastName, ...CastName[]];
  readonly payers: Readonly<Record<string, CastName>>;
  readonly tariff: TariffName;
  readonly before: readonly [CallKind, ...CallKind[]];
  readonly last: CallKind;
}

const customs: readonly [Custom, ...Custom[]] = [
  {
    institution: 'conservatoire',
    soloists: ['mirembe', 'freya', 'haruna'],
    payers: { payer: 'conservatoire' },
    tariff: 'hours',
    before: ['rehearsal', 'coaching'],
    last: 'jury',
  },
  {
    institution: 'school',
    soloists: ['nuala', 'wenzel'],
    payers: { school: 'school', family: 'parents' },
    tariff: 'school',
    before: ['lesson', 'rehearsal', 'class'],
    last: 'exam',
  },
  {
    institution: 'competition',
    soloists: ['wenzel', 'haruna', 'mirembe'],
    payers: { payer: 'competition' },
    tariff: 'rounds',
    before: ['rehearsal'],
    last: 'competition round',
  },
  {
    institution: 'church',
    soloists: ['freya', 'anouk'],
    payers: { payer: 'church' },
    tariff: 'church',
    before: ['rehearsal'],
    last: 'service',
  },
  {
    institution: 'society',
    soloists: ['teodor', 'joaquin'],
    payers: { payer: 'society' },
    tariff: 'recital',
    before: ['rehearsal', 'rehearsal', 'dress rehearsal'],
    last: 'recital',
  },
  {
    soloists: ['anouk', 'joaquin'],
    payers: { payer: 'anouk' },
    tariff: 'hours',
    before: ['rehearsal', 'coaching', 'lesson'],
    last: 'recital',
  },
];

const WEEKDAYS: readonly [Weekday, ...Weekday[]] = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'];
const PLACES = [
  'The Net Loft, Quaymarrow',
  'Ropewalk Hall, Quaymarrow',
  'Assembly Rooms, Ostrevale',
] as const;
const FALLS: readonly [Reason, ...Reason[]] = ['illness', 'forgotten', 'other', 'emergency'];
const WORKS: readonly [ToldWork, ...ToldWork[]] = [
  {
    composer: 'Franz Schubert',
    title: 'Impromptu for two',
    minutes: 7,
    state: 'ready',
    permission: 'not needed',
  },
  { composer: 'Clara Schumann', title: 'Romance, op. 22 no. 1', minutes: 3, state: 'received' },
  { composer: 'Lili Boulanger', title: 'Nocturne', minutes: 3, state: 'wanted' },
];

/** As many calls as asked for, in engagements of four to eight, within 26 weeks around `now`; all agreed. */
export function manyCalls(given: {
  newId: () => string;
  now: Temporal.ZonedDateTime;
  seed: number;
  calls: number;
}): ExampleSeason {
  const { newId } = given;
  const clock = clockAt(given.now.withTimeZone(ZONE));
  const season = spanOf(newId(), clock);
  const organisation = pianist(yearsOf(season));
  const parties = castParties(newId);
  const tariffs = tariffsFor(season, clock);
  const { locale, holidays, terms } = organisation;
  const stage: Stage = { newId, clock, locale, holidays, terms, parties, tariffs };
  const tellings = deal(chance(given.seed), given.calls);
  return {
    organisation,
    parties: Object.values(parties),
    tariffs: tariffsKept(tariffs, newId),
    season,
    engagements: tellings.map((told) => engage(told, stage)),
    invoices: [],
    payments: [],
  };
}

function deal(luck: Chance, calls: number): Told[] {
  const tellings: Told[] = [];
  for (let left = calls; left > 0; ) {
    const count = Math.min(left, 4 + luck.below(5));
    tellings.push(dealOne(luck, count, tellings.length + 1));
    left -= count;
  }
  return tellings;
}

function dealOne(luck: Chance, count: number, number: number): Told {
  const { institution, soloists, payers, tariff, before, last } = luck.of(customs);
  const first = -15 + luck.below(18);
  const calls = Array.from({ length: count }, (_, index) =>
    dealCall(luck, first + index, index === count - 1 ? last : luck.of(before)),
  );
  return {
    title: `Dealt engagement ${number}`,
    soloist: luck.of(soloists),
    ...(institution ? { institution } : {}),
    payers,
    tariff,
    asked: first - 2,
    calls,
    programme: [luck.of(WORKS), luck.of(WORKS)],
    ends: { is: 'agreed' },
  };
}

/** One call in ten falls, half of those with word in some time. */
function dealCall(luck: Chance, week: number, kind: CallKind): ToldCall {
  const hour = String(9 + luck.below(11)).padStart(2, '0');
  const call: ToldCall = {
    kind,
    on: [week, luck.of(WEEKDAYS)],
    from: `${hour}:${luck.of(['00', '15', '30', '45'])}`,
    minutes: 30 + 15 * luck.below(7),
    place: luck.of(PLACES),
    over: luck.inHundred(20) ? luck.below(30) : 0,
  };
  if (!luck.inHundred(10)) return call;
  const reason = luck.of(FALLS);
  return {
    ...call,
    falls: luck.inHundred(50)
      ? { by: 'payer', reason, hoursBefore: 1 + luck.below(120) }
      : { by: luck.inHundred(10) ? 'pianist' : 'payer', reason },
  };
}
