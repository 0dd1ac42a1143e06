// A package: one price that includes calls or time; what lies beyond is priced by the other clauses.

import { z } from 'zod';
import type { Desk } from '../desk.ts';
import { amountField, bandField, countField, minutesField, wordsField } from '../fields.ts';
import { fitsCall, fitsEngagement } from '../fit.ts';
import type { Item } from '../item.ts';
import { type ClauseHead, clauseKind, perCurrency } from '../kind.ts';
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
  ],
});

/** A package is owed once any call it includes takes place; an engagement without calls owes it as a subscription. */
function cover(terms: Terms, desk: Desk, clause: ClauseHead): void {
  if (!fitsEngagement(clause.for, desk.facts)) return;
  const taken = new Map<Item, number>();
  for (const part of terms.includes) take(part, desk, clause, taken);
  if (taken.size === 0 && !desk.withoutCalls) return;
  const drawn = desk.items.flatMap((item) => {
    const minutes = taken.get(item);
    return minutes === undefined ? [] : [{ call: item.call, minutes }];
  });
  desk.charge(clause, {
    category: 'package',
    what: terms.what,
    calls: drawn.map(({ call }) => call.id),
    facts: drawn.map(({ call, minutes }) => ({
      name: call.label ?? call.kind,
      value: desk.voice.minutes(minutes),
    })),
    quantity: { count: terms.each === 'soloist' ? desk.facts.sharers : 1, of: 1 },
    unit: terms.each === 'soloist' ? 'soloist' : 'package',
    rate: terms.price,
  });
}

/** Takes what one inclusion gives, call by call in the order they happen, until it is used up. */
function take(part: Included, desk: Desk, clause: ClauseHead, taken: Map<Item, number>): void {
  let calls = part.calls ?? Number.POSITIVE_INFINITY;
  let minutes = part.minutes ?? Number.POSITIVE_INFINITY;
  for (const item of desk.open(clause)) {
    if (calls === 0 || minutes === 0) return;
    if (!fitsCall(part.of, item.call, desk.facts)) continue;
    const open = item.counted - item.covered;
    const given = Math.min(open, minutes, part.minutesEach ?? Number.POSITIVE_INFINITY);
    item.covered += given;
    item.settled = given === open;
    calls -= 1;
    minutes -= given;
    taken.set(item, (taken.get(item) ?? 0) + given);
  }
}

function sentence(terms: Terms, said: { voice: Voice; for: ClauseHead['for'] }): string {
  const { voice } = said;
  const parts = terms.includes.map((part) => sayIncluded(part, voice));
  const price = terms.price === 0n ? 'no charge' : voice.money(terms.price);
  const each = terms.each === 'soloist' ? ' for each soloist' : '';
  return `${capital(terms.what)}${sayConditions(said.for, voice)}: ${price}${each}, which includes ${voice.list(parts)}; what lies beyond is charged by the other clauses.${sayBand(terms.band, voice)}`;
}

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
