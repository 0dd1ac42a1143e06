// Travel: by distance, by time under way, or a sum for a band of distance; journey by journey, or those of a day together.

import { Temporal } from '@colla/calendar';
import { type Call, chargedMinutes } from '@colla/hours';
import { DISTANCE_UNITS, distanceText, inUnit, type Leg } from '@colla/travel';
import { z } from 'zod';
import type { Charge } from '../charge.ts';
import type { Desk } from '../desk.ts';
import { amountField, countField, minutesField } from '../fields.ts';
import { fitsEngagement } from '../fit.ts';
import { groupsOf } from '../groups.ts';
import { type ClauseHead, clauseKind, perCurrency } from '../kind.ts';
import { sayConditions } from '../phrases.ts';
import type { Voice } from '../voice.ts';

const schema = perCurrency((currency) =>
  z.strictObject({
    unit: z.enum(DISTANCE_UNITS).default('km').meta({ title: 'Distances in' }),
    perUnit: amountField(currency, 'For each unit of distance').optional(),
    perHour: amountField(currency, 'For each hour under way').optional(),
    /** Paid once for each way longer than `over` and no longer than `upTo`. */
    flat: amountField(currency, 'A sum for each').optional(),
    over: countField('Only beyond this distance').default(0),
    upTo: countField('Only up to this distance', { least: 1 }).optional(),
    each: z
      .enum(['journey', 'day', 'engagement'])
      .default('journey')
      .meta({ title: 'Reckoned together for each' }),
    freeMinutes: minutesField('Minutes under way that are not charged').default(0),
    increment: minutesField('Time charged in steps of (minutes)', { least: 1 }).default(1),
  }),
);
type Terms = z.output<ReturnType<typeof schema>>;

export const travel = clauseKind({
  kind: 'travel',
  title: 'Travel',
  help: 'Charges journeys by distance, by time under way, or by a sum, from a distance that is free; a day whose calls all fell by word before it has none.',
  schema,
  rivalry: () => undefined,
  whole: true,
  turns: (_, start) => [start.startOfDay()],
  sentence,
  contradictions: ({ perUnit, perHour, flat, over, upTo }) => [
    ...(perUnit === undefined && perHour === undefined && flat === undefined
      ? ['Travel is charged by nothing: give a price for distance, for time, or a sum.']
      : []),
    ...(upTo !== undefined && upTo <= over
      ? ['Travel is charged up to where it begins: let it reach farther.']
      : []),
  ],
  phases: {
    travel: (terms, desk, clause) => {
      if (!fitsEngagement(clause.for, desk.facts)) return;
      for (const way of waysOf(legsMade(desk), terms.each)) chargeWay(way, terms, desk, clause);
    },
  },
  examples: [
    {
      case: 'Forty kilometres at 0.35 each',
      terms: { perUnit: '0.35' },
      given: { legs: ['40 km'] },
      owed: '14.00',
    },
    {
      case: 'Only what lies beyond 20 miles is paid, and an hour and a half under way at 20.00 an hour',
      terms: { unit: 'mile', perUnit: '0.50', over: 20, perHour: '20.00' },
      given: { legs: ['32 mile, 90 min'] },
      owed: '36.00',
    },
    {
      case: 'There and back in a day, 12 miles each, only what lies beyond 20 of them: 4 at 0.45',
      terms: { unit: 'mile', perUnit: '0.45', over: 20, each: 'day' },
      given: { legs: ['12 mile', '12 mile'] },
      owed: '1.80',
    },
    {
      case: 'A zone from 10 to 30 km is 15.00: of 8, 30 and 31 km only the second',
      terms: { flat: '15.00', over: 10, upTo: 30 },
      given: { legs: ['8 km', '30 km', '31 km'] },
      owed: '15.00',
    },
    {
      case: 'The first hour under way is free, then half hours begun at 16.00 an hour: 100 minutes are 16.00',
      terms: { perHour: '16.00', freeMinutes: 60, increment: 30 },
      given: { legs: ['90 km, 100 min'] },
      owed: '16.00',
    },
    {
      case: 'Nobody travels on a day whose calls fell the day before; word of the same morning may find the pianist there',
      terms: { perUnit: '0.35' },
      given: {
        calls: ['rehearsal 60 on 2026-03-02', 'rehearsal 60 on 2026-03-03'],
        fallen: [
          { call: 0, at: '2026-03-01T20:00' },
          { call: 1, at: '2026-03-03T07:00' },
        ],
        legs: ['40 km on 2026-03-02', '20 km on 2026-03-03'],
      },
      with: [
        { id: 'fee', kind: 'hourly', for: {}, terms: { price: '40.00' } },
        {
          id: 'notice',
          kind: 'cancellation',
          for: {},
          terms: { scale: [], otherwise: { owes: 'nothing' } },
        },
      ],
      owed: '7.00',
    },
  ],
});

/** The journeys that are made: none on a day whose calls have all fallen by word that came before it. */
function legsMade(desk: Desk): Leg[] {
  return desk.legs().filter(({ on }) => {
    const calls = desk.items.map(({ call }) => call).filter((call) => dayOf(call).equals(on));
    return calls.length === 0 || !calls.every((call) => fellBefore(call, on));
  });
}

function dayOf({ planned }: Call): Temporal.PlainDate {
  return planned.start.toPlainDate();
}

function fellBefore({ standing, planned }: Call, day: Temporal.PlainDate): boolean {
  if (standing.is !== 'cancelled') return false;
  const word = standing.at.withTimeZone(planned.start.timeZoneId).toPlainDate();
  return Temporal.PlainDate.compare(word, day) < 0;
}

/** Journeys that are reckoned together. */
interface Way {
  /** The journey, or its day; none for all. */
  readonly about?: string;
  readonly legs: readonly Leg[];
}

function waysOf(legs: readonly Leg[], each: Terms['each']): Way[] {
  if (each === 'engagement') return legs.length > 0 ? [{ legs }] : [];
  const byWay = groupsOf(legs, (leg) => (each === 'day' ? leg.on.toString() : leg.id));
  return [...byWay].map(([about, legs]) => ({ about, legs }));
}

function chargeWay(way: Way, terms: Terms, desk: Desk, clause: ClauseHead): void {
  const far = way.legs.reduce((sum, { distance }) => sum + inUnit(distance, terms.unit).thousandths, 0);
  const from = terms.over * 1000;
  const to = terms.upTo === undefined ? Number.POSITIVE_INFINITY : terms.upTo * 1000;
  const paid = Math.min(far, to) - from;
  const unit = terms.unit === 'mile' && far !== 1000 ? 'miles' : terms.unit;
  const said = `${desk.voice.number(distanceText({ thousandths: far, unit: terms.unit }))} ${unit}`;
  const facts = [{ name: 'distance', value: said }];
  if (terms.perUnit !== undefined && paid > 0)
    charge('far', { quantity: { count: paid, of: 1000 }, unit: terms.unit, rate: terms.perUnit, facts });
  if (terms.flat !== undefined && paid > 0 && far <= to)
    charge('flat', { quantity: { count: 1, of: 1 }, unit: terms.each, rate: terms.flat, facts });
  if (terms.perHour !== undefined) chargeTime(terms.perHour);

  function chargeTime(rate: bigint): void {
    const underWay = way.legs.reduce((sum, { minutes }) => sum + minutes, 0);
    const { increment } = terms;
    const charged = Math.max(0, underWay - terms.freeMinutes);
    const count = chargedMinutes(charged, { minimum: 0, increment, round: 'up', grace: 0 });
    if (count > 0) charge('time', { quantity: { count, of: 60 }, unit: 'hour', rate, facts });
  }

  function charge(
    by: 'far' | 'flat' | 'time',
    of: Pick<Charge, 'quantity' | 'unit' | 'rate' | 'facts'>,
  ): void {
    const [first] = way.legs;
    desk.charge(clause, {
      ...of,
      category: 'travel',
      what: [by === 'time' ? 'Time under way' : 'Travel', ...sayWay(way)].join(', '),
      ...(terms.each === 'engagement' || !first ? {} : { on: first.on }),
      about: way.about === undefined ? by : `${way.about}:${by}`,
    });
  }
}

/** “Home to Hall”, “Home to Hall to Home”; where one does not go on from the other, each of them. */
function sayWay({ legs }: Way): string[] {
  // A journey made up for an example has no places.
  if (legs.some(({ from, to }) => from === '' || to === '')) return [];
  const parts = legs.map(({ from, to }, index) =>
    legs[index - 1]?.to === from ? `to ${to}` : `${index > 0 ? 'and ' : ''}${from} to ${to}`,
  );
  return [parts.join(' ')];
}

function sentence(terms: Terms, said: { voice: Voice; for: ClauseHead['for'] }): string {
  const { voice } = said;
  const of = EACH_WAY[terms.each];
  const parts = [
    terms.perUnit === undefined
      ? undefined
      : `${voice.money(terms.perUnit)} a ${terms.unit}${sayEnds(terms, `${of} `)}`,
    terms.flat === undefined
      ? undefined
      : `${voice.money(terms.flat)} ${terms.each === 'engagement' ? 'once' : `for each ${terms.each}`}${sayEnds(terms, '')}`,
    terms.perHour === undefined
      ? undefined
      : `${voice.money(terms.perHour)} an hour under way${sayTime(terms, voice)}`,
  ];
  return `Travel${sayConditions(said.for, voice)} is ${voice.list(parts.filter((part) => part !== undefined))}.`;
}

/** Said of what is reckoned together: the way there and the way back are two journeys, and each has its own free distance. */
const EACH_WAY = { journey: 'of each journey', day: 'of each day', engagement: 'of all journeys' } as const;

function sayEnds({ over, upTo, unit }: Terms, of: string): string {
  const words = unit === 'km' ? 'km' : (upTo ?? over) === 1 ? 'mile' : 'miles';
  if (over === 0) return upTo === undefined ? '' : ` up to ${upTo} ${words} ${of}`.trimEnd();
  return (
    upTo === undefined ? ` beyond ${over} ${words} ${of}` : ` beyond ${over} and up to ${upTo} ${words} ${of}`
  ).trimEnd();
}

function sayTime({ freeMinutes, increment, each }: Terms, voice: Voice): string {
  const free = freeMinutes === 0 ? '' : ` beyond ${voice.length(freeMinutes)} ${EACH_WAY[each]}`;
  return increment === 1 ? free : `${free}, charged ${voice.steps(increment)}`;
}
