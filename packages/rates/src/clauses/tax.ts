// Tax on top of the price, or inside it. Which rate applies where is for the user and local law to say.

import { z } from 'zod';
import type { Desk } from '../desk.ts';
import { rateField, wordsField } from '../fields.ts';
import { fitsEngagement } from '../fit.ts';
import { type ClauseHead, clauseKind, perCurrency } from '../kind.ts';
import { CATEGORIES, type Category } from '../line.ts';
import { capital, sayCharges, sayConditions } from '../phrases.ts';
import type { Voice } from '../voice.ts';

const schema = perCurrency(() =>
  z.strictObject({
    name: wordsField('Called'),
    rate: rateField('Rate', { most: 10_000 }),
    /** The category of EN 16931 (UNCL 5305): S standard, Z zero, E exempt, AE reverse charge, O outside scope. */
    code: z.enum(['S', 'Z', 'E', 'AE', 'O']).default('S').meta({ title: 'Category' }),
    inside: z.boolean().default(false).meta({ title: 'Prices include it' }),
    rounding: z.enum(['per total', 'per line']).default('per total').meta({ title: 'Rounded' }),
    wording: wordsField('Wording on the invoice, where the law asks for one').optional(),
    on: z
      .array(z.string().min(1))
      .min(1)
      .readonly()
      .optional()
      .meta({ title: 'Only on what these clauses charge', unit: 'clause' }),
    only: z.array(z.enum(CATEGORIES)).min(1).readonly().optional().meta({ title: 'Only on' }),
    not: z.array(z.enum(CATEGORIES)).readonly().default([]).meta({ title: 'Not on' }),
    onTopOf: z
      .array(z.string().min(1))
      .max(3)
      .readonly()
      .default([])
      .meta({ title: 'Reckoned on top of these taxes', unit: 'clause' }),
  }),
);
type Terms = z.output<ReturnType<typeof schema>>;

export const tax = clauseKind({
  kind: 'tax',
  title: 'Tax',
  help: 'Adds a tax such as VAT or GST, or shows the tax inside the price. Rates and duties differ by place: follow local law and licensed advice.',
  schema,
  rivalry: () => undefined,
  once: true,
  beside,
  whole: true,
  sentence,
  names: ({ on = [], onTopOf }) => [...on, ...onTopOf],
  namesAlike: ({ onTopOf }) => onTopOf,
  contradictions: ({ code, rate, only, not }) => [
    ...(code !== 'S' && rate > 0
      ? [`A rate of ${rate / 100} % goes with the standard category only: make it zero, or choose S.`]
      : []),
    ...(only && not.length > 0
      ? ['It says what it is on and what it is not on: leave one of the two out.']
      : []),
  ],
  phases: { tax: levy },
  examples: [
    {
      case: 'No tax is owed where nothing is charged',
      terms: { name: 'VAT', rate: 2000 },
      given: {},
      owed: '0.00',
      also: { tax: '0.00' },
    },
    {
      case: 'VAT at 20 % is added to a fee of 45.00: 9.00',
      terms: { name: 'VAT', rate: 2000 },
      given: { calls: ['recital 60'] },
      with: [{ id: 'fee', kind: 'fixed', for: {}, terms: { price: '45.00' } }],
      owed: '0.00',
      also: { tax: '9.00' },
    },
    {
      case: 'Two taxes on a fee of 100.00: 5 % are 5.00, and 9.5 % of 105.00 are 9.975, so 9.98 (a law that taxes the tax)',
      terms: { name: 'QST', rate: 950, onTopOf: ['gst'] },
      given: { calls: ['recital 60'] },
      with: [
        { id: 'fee', kind: 'fixed', for: {}, terms: { price: '100.00' } },
        { id: 'gst', kind: 'tax', for: {}, terms: { name: 'GST', rate: 500 } },
      ],
      owed: '0.00',
      also: { tax: '14.98' },
    },
    {
      case: 'The fee of 100.00 is taxed at 20 %, the score of 12.00 at 5 %: 20.60',
      terms: { name: 'VAT', rate: 500, only: ['cost'] },
      given: { calls: ['recital 60'], costs: ['Score 12.00'] },
      with: [
        { id: 'fee', kind: 'fixed', for: {}, terms: { price: '100.00' } },
        { id: 'costs', kind: 'cost', for: {}, terms: {} },
        { id: 'full', kind: 'tax', for: {}, terms: { name: 'VAT', rate: 2000 } },
      ],
      owed: '0.00',
      also: { tax: '20.60' },
    },
  ],
});

/**
 * Two rates of one tax, of which the closer has its charges first: what names clauses before what names kinds of
 * charge, and that before what is on the rest. Or two taxes on the same charges (GST and a province’s own), both
 * added or both inside.
 */
function beside(one: Terms, other: Terms): boolean {
  if (apart(one, other)) return true;
  return one.name.toLowerCase() === other.name.toLowerCase()
    ? closenessOf(one) !== closenessOf(other)
    : one.inside === other.inside;
}

/** Whether no charge can be under both. */
function apart(one: Terms, other: Terms): boolean {
  const noKind = CATEGORIES.every((category) => !isOn(one, category) || !isOn(other, category));
  return (
    noKind || (one.on !== undefined && other.on !== undefined && !one.on.some((id) => other.on?.includes(id)))
  );
}

function isOn({ only, not }: Terms, category: Category): boolean {
  return only ? only.includes(category) : !not.includes(category);
}

function closenessOf({ on, only }: Terms): number {
  if (on) return 0;
  return only ? 1 : 2;
}

function levy(terms: Terms, desk: Desk, clause: ClauseHead): void {
  if (!fitsEngagement(clause.for, desk.facts)) return;
  const portions = desk.portionsOf(clause, terms.on).filter(({ line }) => isOn(terms, line.category));
  const charges = portions.flatMap(({ line, parts }) => parts.map((part) => ({ line, ...part })));
  const limited = terms.on !== undefined || terms.only !== undefined || terms.not.length > 0;
  desk.levy({ ...terms, clause: clause.id, closeness: closenessOf(terms), limited, charges });
}

function sentence(terms: Terms, said: { voice: Voice; for: ClauseHead['for'] }): string {
  const wording = terms.wording === undefined ? '' : `: “${terms.wording}”`;
  return `${capital(sayTax(terms, said.voice))}${sayConditions(said.for, said.voice)}${wording}.`;
}

function sayTax(terms: Terms, voice: Voice): string {
  const on = sayOn(terms, voice);
  const except = terms.not.length > 0 ? `, not on ${sayCategories(terms.not, voice)}` : '';
  return sayUntaxed(terms, on, except) ?? sayRate(terms, on, except, voice);
}

function sayUntaxed({ name, code }: Terms, on: string | undefined, except: string): string | undefined {
  switch (code) {
    case 'E':
      return on
        ? `no ${name} is charged on ${on}, exempt from it`
        : `everything is exempt from ${name}${except}`;
    case 'O':
      return on
        ? `no ${name} is charged on ${on}, outside its scope`
        : `everything is outside the scope of ${name}${except}`;
    case 'AE':
      return `${name}${on ? ` on ${on}` : ''} is owed by the payer under the reverse charge${except}`;
    default:
      return undefined;
  }
}

function sayRate(terms: Terms, on: string | undefined, except: string, voice: Voice): string {
  const tax = `${terms.name} at ${voice.share(terms.rate)}`;
  const others = voice.list(terms.onTopOf.map((id) => `“${id}”`));
  const top = others ? `, reckoned on the price with ${others}` : '';
  const how = `${except}${top}${terms.rounding === 'per line' ? ', rounded line by line' : ''}`;
  if (!terms.inside) return `${tax} is added${on ? ` to ${on}` : ''}${how}`;
  const prices = on ? `${terms.on ? '' : 'the price of '}${on} includes` : 'prices include';
  return `${prices} ${tax}${how}`;
}

/** What a tax is on alone; undefined where it is on everything. */
function sayOn({ on, only }: Terms, voice: Voice): string | undefined {
  const kinds = only && sayCategories(only, voice);
  if (!on) return kinds;
  return kinds ? `${kinds} in ${sayCharges(on, voice)}` : sayCharges(on, voice);
}

function sayCategories(categories: readonly Category[], voice: Voice): string {
  return voice.list(categories.map((category) => CHARGED[category]));
}

const CHARGED: Readonly<Record<Category, string>> = {
  rehearsal: 'rehearsals',
  performance: 'performances',
  package: 'packages',
  entitlement: 'hours covered',
  supplement: 'supplements',
  discount: 'discounts',
  cancellation: 'cancellations',
  travel: 'travel',
  cost: 'costs',
  other: 'other charges',
};
