// Docking: what a pianist's own absence takes off pay: a sum or a rate for the time, a share, or the part that was missed.

import { divideRounded } from '@colla/money';
import { z } from 'zod';
import type { Desk } from '../desk.ts';
import { amountField, minutesField, shareField, wordsField } from '../fields.ts';
import { groupsOf } from '../groups.ts';
import { type ClauseHead, clauseKind, perCurrency } from '../kind.ts';
import type { Line } from '../line.ts';
import { EACH, type Each, sayEach } from '../occasion.ts';
import { capital, plural, sayCharges, sayConditions } from '../phrases.ts';
import type { Voice } from '../voice.ts';
import { type Docking, dockings } from './docked.ts';
import { excuseSchema, sayExcuse } from './excuse.ts';

const schema = perCurrency((currency) =>
  z.strictObject({
    what: wordsField('Called').default('Absence'),
    by: z
      .discriminatedUnion('as', [
        z.strictObject({
          as: z.literal('amount'),
          amount: amountField(currency, 'Amount'),
          each: z.enum(EACH).default('call').meta({ title: 'For each' }),
        }),
        z.strictObject({
          as: z.literal('time'),
          price: amountField(currency, 'Price of the time missed'),
          per: minutesField('For each (minutes)', { least: 1 }).default(60),
          increment: minutesField('Charged in steps of (minutes)', { least: 1 }).default(1),
        }),
        z.strictObject({
          as: z.literal('share'),
          share: shareField('Share of pay for each absence'),
          each: z.enum(EACH).default('engagement').meta({ title: 'Of the pay of each' }),
        }),
        z.strictObject({
          as: z.literal('part missed'),
          of: z.enum(['calls', 'time']).default('calls').meta({ title: 'Reckoned by' }),
          each: z.enum(EACH).default('engagement').meta({ title: 'Of the pay of each' }),
        }),
      ])
      .meta({ title: 'Takes off' }),
    on: z
      .array(z.string().min(1))
      .min(1)
      .readonly()
      .optional()
      .meta({ title: 'Only of what these clauses pay', unit: 'clause' }),
    excused: excuseSchema.optional().meta({ title: 'Forgiven' }),
  }),
);
type Terms = z.output<ReturnType<typeof schema>>;

const stipend = {
  id: 'stipend',
  kind: 'fixed',
  for: {},
  terms: { price: '1200.00', each: 'engagement', what: 'Stipend' },
};

export const docking = clauseKind({
  kind: 'docking',
  title: 'Docking',
  help: 'Takes something off the pianist’s pay for calls that the pianist misses; never more than the pay.',
  schema,
  rivalry: () => 'absence',
  each: ({ by }) => ('each' in by ? by.each : 'call'),
  sentence,
  names: ({ on }) => on ?? [],
  gathers: ({ by }) => by.as === 'share' || by.as === 'part missed',
  contradictions: ({ by, on }) =>
    on && (by.as === 'amount' || by.as === 'time')
      ? ['Only a share or a part is taken of what other clauses pay: choose one of them, or name no clauses.']
      : [],
  /** After the discounts. */
  rank: () => 1,
  phases: { discounts: dock },
  examples: [
    {
      case: 'Two absences at 45.00 each, of which one is forgiven',
      terms: {
        by: { as: 'amount', amount: '45.00' },
        excused: { reasons: ['illness', 'emergency', 'force majeure', 'forgotten', 'other'], atMost: 1 },
      },
      given: {
        calls: ['6 × rehearsal 120'],
        fallen: [
          { call: 1, at: '2026-03-01T10:00', by: 'pianist', reason: 'illness' },
          { call: 4, by: 'pianist' },
        ],
      },
      with: [stipend],
      owed: '-45.00',
    },
    {
      case: 'An hour and a half missed at 30.00 an hour',
      terms: { by: { as: 'time', price: '30.00' } },
      given: { calls: ['rehearsal 120', 'rehearsal 90'], fallen: [{ call: 1, by: 'pianist' }] },
      with: [stipend],
      owed: '-45.00',
    },
    {
      case: 'Two of six calls missed take two sixths off the stipend of 1200.00',
      terms: { by: { as: 'part missed' }, on: ['stipend'] },
      given: {
        calls: ['6 × rehearsal 120'],
        fallen: [
          { call: 1, at: '2026-03-01T10:00', by: 'pianist' },
          { call: 4, by: 'pianist' },
        ],
      },
      with: [stipend],
      owed: '-400.00',
    },
    {
      case: 'A tenth of the stipend for an absence, and nothing for the soloist’s own',
      terms: { by: { as: 'share', share: 1000 }, on: ['stipend'] },
      given: {
        calls: ['3 × rehearsal 120'],
        fallen: [
          { call: 1, by: 'pianist' },
          { call: 2, at: '2026-03-01T10:00' },
        ],
      },
      with: [stipend],
      owed: '-120.00',
    },
    {
      case: 'Three absences at 80.00 take no more than the pay of 200.00',
      terms: { by: { as: 'amount', amount: '80.00' } },
      given: {
        calls: ['4 × rehearsal 60'],
        fallen: [
          { call: 1, by: 'pianist' },
          { call: 2, by: 'pianist' },
          { call: 3, by: 'pianist' },
        ],
      },
      with: [{ ...stipend, terms: { ...stipend.terms, price: '200.00' } }],
      owed: '-200.00',
    },
  ],
});

/** In the order in which calls are missed; together never more than the pay. */
function dock(terms: Terms, desk: Desk, clause: ClauseHead): void {
  const left = groupsOf(desk.lines, ({ payer }) => payer);
  const pay = new Map([...left].map(([payer, lines]) => [payer, sumOf(lines)]));
  for (const { charge, of } of dockings(terms, desk, clause)) {
    const payer = charge.payer ?? whoPays(clause, pay);
    const most = pay.get(payer) ?? 0n;
    if (most <= 0n) continue;
    const line = desk.charge(clause, { ...held(charge, most, desk.voice), payer, what: terms.what });
    if (of) desk.lineage.take(line, of);
    pay.set(payer, most + line.amount);
  }
}

/** Whoever the clause names, where they pay anything; otherwise the first who does. */
function whoPays({ payer }: ClauseHead, pay: ReadonlyMap<string, bigint>): string {
  const [first] = pay.keys();
  return pay.has(payer) ? payer : (first ?? payer);
}

/** What is docked, or what is left of the pay where that is less. */
function held(docked: Docking['charge'], most: bigint, voice: Voice): Docking['charge'] {
  const { rate, quantity } = docked;
  if (divideRounded(rate * BigInt(quantity.count), BigInt(quantity.of)) <= most) return docked;
  const { said: _, ...rest } = docked;
  const facts = [...(docked.facts ?? []), { name: 'at most', value: voice.money(most) }];
  return { ...rest, facts, quantity: { count: 1, of: 1 }, unit: 'pay', rate: most };
}

function sumOf(lines: readonly Line[]): bigint {
  return lines.reduce((sum, { amount }) => sum + amount, 0n);
}

function sentence(terms: Terms, said: { voice: Voice; for: ClauseHead['for'] }): string {
  const { voice } = said;
  return `${capital(terms.what)}: ${sayDocking(terms, said)}.${sayExcuse(terms.excused, voice)} It never takes more than the pay.`;
}

function sayDocking({ by, on }: Terms, said: { voice: Voice; for: ClauseHead['for'] }): string {
  const { voice } = said;
  const kinds = said.for.calls;
  const conditions = sayConditions({ ...said.for, calls: undefined }, voice);
  const one = `${kinds ? voice.either(kinds) : 'call'} that the pianist misses${conditions}`;
  const several = `${kinds ? voice.list(kinds.map(plural)) : 'calls'} that the pianist misses${conditions}`;
  const pay = on ? sayCharges(on, voice) : 'the pay';
  switch (by.as) {
    case 'amount':
      if (by.each === 'call') return `${voice.money(by.amount)} less for each ${one}`;
      return `${voice.money(by.amount)} less ${sayEach(by.each)} with ${several}`;
    case 'time':
      return `${voice.rate(by.price, by.per)} less for the planned time of ${several}, charged ${voice.steps(by.increment)}`;
    case 'share':
      return `${voice.share(by.share)} of ${pay}${ofEach(by.each)} less for each ${one}`;
    case 'part missed':
      return `${pay}${ofEach(by.each)} is less by the part of its ${by.of === 'time' ? 'time in ' : ''}${several}`;
  }
}

function ofEach(each: Each): string {
  return each === 'engagement' ? '' : ` for each ${each}`;
}
