// A package: one price that includes calls or time; what lies beyond is priced by the other clauses.

import type { Call } from '@colla/hours';
import { z } from 'zod';
import type { Desk } from '../desk.ts';
import { amountField, bandField, countField, minutesField, wordsField } from '../fields.ts';
import { fitsCall, fitsEngagement } from '../fit.ts';
import { hasFallen, type Item } from '../item.ts';
import { type ClauseHead, clauseKind, perCurrency } from '../kind.ts';
import type { Quantity } from '../line.ts';
import { capital, plural, sayConditions } from '../phrases.ts';
import { selectorSchema } from '../selector.ts';
import type { Voice } from '../voice.ts';
import { bandContradiction, sayBand } from './band.ts';

const included = z.strictObject({
  of: selectorSchema.meta({ title: 'Which calls' }),
  calls: countField('How many calls', { least: 1 }).optional(),
  minutes: minutesField('Minutes together', { least: 1 }).optional(),
  minutesEach: minutesField('Minutes of each call', { least: 1 }).optional(),
});

const schema = perCurrency((currency) =>
  z.strictObject({
    price: amountField(currency, 'Price'),
    what: wordsField('Called'),
    each: z.enum(['engagement', 'soloist']).default('engagement').meta({ title: 'For each' }),
    includes: z.array(included).min(1).max(20).readonly().meta({ title: 'Includes' }),
    back: z
      .enum(['nothing', 'what the pianist misses', 'whatever falls'])
      .default('nothing')
      .meta({ title: 'Given back in proportion, for calls that are not owed' }),
    band: bandField(currency),
  }),
);
type Terms = z.output<ReturnType<typeof schema>>;
type Included = Terms['includes'][number];

export const pack = clauseKind({
  kind: 'package',
  title: 'Package',
  help: 'One price that includes some calls or hours, in the order they happen; the other clauses price what lies beyond.',
  schema,
  rivalry: () => undefined,
  choice: 'price',
  each: () => 'engagement',
  sentence,
  contradictions: (terms) => bandContradiction(terms.price, terms.band),
  phases: { coverage: cover },
  examples: [
    {
      case: 'A recital package includes the hearing, a dress rehearsal and the recital',
      terms: {
        price: '150.00',
        what: 'Recital package',
        includes: [
          { of: { labels: ['hearing'] }, calls: 1 },
          { of: { calls: ['dress rehearsal', 'recital'] } },
        ],
      },
      given: { calls: ['hearing: class 30', 'dress rehearsal 60', 'recital 60'] },
      owed: '150.00',
    },
    {
      case: 'Two soloists share the recital and each takes the half-recital package',
      terms: {
        price: '50.00',
        what: 'Half recital',
        each: 'soloist',
        includes: [{ of: { calls: ['recital'] } }],
      },
      given: { calls: ['recital 60'], sharers: 2 },
      owed: '100.00',
    },
    {
      case: 'A course of ten lessons is 400.00; the pianist misses one and the student one in time: nine tenths are owed',
      terms: {
        price: '400.00',
        what: 'Course',
        includes: [{ of: { calls: ['lesson'] }, calls: 10 }],
        back: 'what the pianist misses',
      },
      given: {
        calls: ['10 × lesson 45'],
        fallen: [
          { call: 3, at: '2026-03-01T10:00', by: 'pianist' },
          { call: 8, at: '2026-03-01T10:00' },
        ],
      },
      with: [
        {
          id: 'notice',
          kind: 'cancellation',
          for: {},
          terms: { scale: [{ before: 24, owes: { owes: 'nothing' } }], otherwise: { owes: 'all' } },
        },
      ],
      owed: '360.00',
    },
  ],
});

/** A package is owed once any call it includes takes place; an engagement without calls owes it as a subscription. */
function cover(terms: Terms, desk: Desk, clause: ClauseHead): void {
  if (!fitsEngagement(clause.for, desk.facts)) return;
  const taken = new Map<Item, number>();
  const fallen = new Map<string, Fallen>();
  for (const part of terms.includes) {
    const left = take(part, desk, clause, taken);
    for (const one of fallenOf(part, left, desk, clause, fallen)) fallen.set(one.call.id, one);
  }
  if (taken.size === 0 && !desk.withoutCalls) return;
  const drawn = desk.items.flatMap((item) => {
    const minutes = taken.get(item);
    return minutes === undefined ? [] : [{ call: item.call, minutes }];
  });
  const times = terms.each === 'soloist' ? desk.facts.sharers : 1;
  desk.charge(clause, {
    category: 'package',
    what: terms.what,
    calls: drawn.map(({ call }) => call.id),
    facts: drawn.map(({ call, minutes }) => ({
      name: call.label ?? call.kind,
      value: desk.voice.minutes(minutes),
    })),
    quantity: partOf(sumOf(drawn), [...fallen.values()], terms, times),
    unit: terms.each === 'soloist' ? 'soloist' : 'package',
    rate: terms.price,
  });
}

/** What an inclusion can still give. */
interface Left {
  readonly calls: number;
  readonly minutes: number;
}

/** Takes what one inclusion gives, call by call in the order they happen, until it is used up; what is left of it. */
function take(part: Included, desk: Desk, clause: ClauseHead, taken: Map<Item, number>): Left {
  let calls = part.calls ?? Number.POSITIVE_INFINITY;
  let minutes = part.minutes ?? Number.POSITIVE_INFINITY;
  for (const item of desk.open(clause)) {
    if (calls === 0 || minutes === 0) break;
    if (!fitsCall(part.of, item.call, desk.facts)) continue;
    const open = item.counted - item.covered;
    const given = Math.min(open, minutes, part.minutesEach ?? Number.POSITIVE_INFINITY);
    item.covered += given;
    item.settled = given === open;
    calls -= 1;
    minutes -= given;
    taken.set(item, (taken.get(item) ?? 0) + given);
  }
  return { calls, minutes };
}

interface Fallen {
  readonly call: Call;
  readonly minutes: number;
}

/** Calls that fell and are not owed, and the minutes that an inclusion would have given them; not those `known` already. */
function fallenOf(
  part: Included,
  left: Left,
  desk: Desk,
  clause: ClauseHead,
  known: ReadonlyMap<string, Fallen>,
): Fallen[] {
  let { minutes } = left;
  return desk.items
    .filter((item) => hasFallen(item.call) && !desk.counts(item) && !known.has(item.call.id))
    .filter(({ call }) => fitsCall(clause.for, call, desk.facts) && fitsCall(part.of, call, desk.facts))
    .slice(0, left.calls)
    .map(({ call, planned }) => {
      const given = Math.min(planned, minutes, part.minutesEach ?? Number.POSITIVE_INFINITY);
      minutes -= given;
      return { call, minutes: given };
    });
}

/** The package, or the part of it that is owed when what fell is given back. */
function partOf(used: number, fallen: readonly Fallen[], { back }: Terms, times: number): Quantity {
  if (back === 'nothing') return { count: times, of: 1 };
  const all = used + sumOf(fallen);
  const givenBack = fallen.filter(
    ({ call }) => back === 'whatever falls' || (hasFallen(call) && call.standing.by === 'pianist'),
  );
  const owed = all - sumOf(givenBack);
  return owed === all ? { count: times, of: 1 } : { count: times * owed, of: all };
}

function sumOf(calls: readonly { minutes: number }[]): number {
  return calls.reduce((sum, { minutes }) => sum + minutes, 0);
}

function sentence(terms: Terms, said: { voice: Voice; for: ClauseHead['for'] }): string {
  const { voice } = said;
  const parts = terms.includes.map((part) => sayIncluded(part, voice));
  const price = terms.price === 0n ? 'no charge' : voice.money(terms.price);
  const each = terms.each === 'soloist' ? ' for each soloist' : '';
  return `${capital(terms.what)}${sayConditions(said.for, voice)}: ${price}${each}, which includes ${voice.list(parts)}; what lies beyond is charged by the other clauses.${BACK[terms.back]}${sayBand(terms.band, voice)}`;
}

const BACK: Readonly<Record<Terms['back'], string>> = {
  nothing: '',
  'what the pianist misses': ' What the pianist misses of it is given back in proportion.',
  'whatever falls': ' What falls of it and is not owed is given back in proportion.',
};

function sayIncluded(part: Included, voice: Voice): string {
  const one = part.calls === 1 && part.minutes === undefined;
  const kinds = one
    ? voice.either(part.of.calls ?? ['call'])
    : voice.list(part.of.calls?.map(plural) ?? ['calls']);
  const each =
    part.minutesEach === undefined ? '' : ` of up to ${voice.length(part.minutesEach)}${one ? '' : ' each'}`;
  return `${sayCount(part, voice)} ${kinds}${sayConditions({ ...part.of, calls: undefined }, voice)}${each}`;
}

function sayCount({ calls, minutes }: Included, voice: Voice): string {
  if (minutes !== undefined)
    return `${voice.length(minutes)} of${calls === undefined ? '' : ` at most ${calls}`}`;
  return calls === undefined ? 'all' : calls === 1 ? 'one' : String(calls);
}
