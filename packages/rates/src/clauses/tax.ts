// Tax on top of the price, or inside it. Which rate applies where is for the user and local law to say.

import { divideRounded } from '@colla/money';
import { z } from 'zod';
import type { Desk } from '../desk.ts';
import { shareField, wordsField } from '../fields.ts';
import type { TaxSum } from '../findings.ts';
import { fitsEngagement } from '../fit.ts';
import { type ClauseHead, clauseKind, perCurrency } from '../kind.ts';
import { CATEGORIES, type Line } from '../line.ts';
import { capital, sayConditions } from '../phrases.ts';
import type { Voice } from '../voice.ts';

const schema = perCurrency(() =>
  z.strictObject({
    name: wordsField('Called'),
    rate: shareField('Rate', { most: 10_000 }),
    /** The category of EN 16931 (UNCL 5305): S standard, Z zero, E exempt, AE reverse charge, O outside scope. */
    code: z.enum(['S', 'Z', 'E', 'AE', 'O']).default('S').meta({ title: 'Category' }),
    inside: z.boolean().default(false).meta({ title: 'Prices include it' }),
    rounding: z.enum(['per total', 'per line']).default('per total').meta({ title: 'Rounded' }),
    wording: wordsField('Wording on the invoice, where the law asks for one').optional(),
    not: z.array(z.enum(CATEGORIES)).readonly().default([]).meta({ title: 'Not on' }),
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
  contradictions: ({ code, rate }) =>
    code !== 'S' && rate > 0
      ? [`A rate of ${rate / 100} % goes with the standard category only: make it zero, or choose S.`]
      : [],
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
  ],
});

/** Two rates of one tax on different charges; or two taxes added to the same (GST and a province’s own). */
function beside(one: Terms, other: Terms): boolean {
  if (CATEGORIES.every((category) => one.not.includes(category) || other.not.includes(category))) return true;
  return one.name.toLowerCase() !== other.name.toLowerCase() && !one.inside && !other.inside;
}

/** One sum for each payer: each gets a document of their own. */
function levy(terms: Terms, desk: Desk, clause: ClauseHead): void {
  if (!fitsEngagement(clause.for, desk.facts)) return;
  const taxed = desk.lines.filter((line) => !terms.not.includes(line.category));
  for (const payer of new Set(taxed.map((line) => line.payer))) {
    const lines = taxed.filter((line) => line.payer === payer);
    desk.taxes.push(taxSum(lines, payer, terms, desk, clause));
  }
}

function taxSum(lines: readonly Line[], payer: string, terms: Terms, desk: Desk, clause: ClauseHead): TaxSum {
  const base = lines.reduce((sum, line) => sum + line.amount, 0n);
  const parts = terms.rounding === 'per line' ? lines.map((line) => line.amount) : [base];
  const amount = parts.reduce((sum, part) => sum + taxOn(part, terms), 0n);
  const { voice } = desk;
  const how = terms.inside
    ? `${voice.money(base)} × ${voice.number(String(terms.rate / 100))} / ${voice.number(String(100 + terms.rate / 100))}`
    : `${voice.share(terms.rate)} × ${voice.money(base)}`;
  return {
    clause: clause.id,
    name: terms.name,
    rate: terms.rate,
    code: terms.code,
    inside: terms.inside,
    payer,
    ...(terms.wording === undefined ? {} : { wording: terms.wording }),
    ...(terms.not.length === 0 ? {} : { not: terms.not }),
    base: terms.inside ? base - amount : base,
    amount,
    arithmetic: `${how} = ${voice.money(amount)}`,
  };
}

/** Tax added to, or contained in, an amount: of 120.00 with 20 % inside, 20.00 (HMRC's VAT fraction, 1/6). */
function taxOn(amount: bigint, { rate, inside }: Terms): bigint {
  const share = BigInt(rate);
  return divideRounded(amount * share, inside ? 10_000n + share : 10_000n);
}

function sentence(terms: Terms, said: { voice: Voice; for: ClauseHead['for'] }): string {
  const not = terms.not.map((category) => CHARGED[category]);
  const except = not.length > 0 ? `, not on ${said.voice.list(not)}` : '';
  const wording = terms.wording === undefined ? '' : `: “${terms.wording}”`;
  return `${capital(sayTax(terms, said.voice))}${except}${sayConditions(said.for, said.voice)}${wording}.`;
}

function sayTax({ name, rate, code, inside }: Terms, voice: Voice): string {
  switch (code) {
    case 'E':
      return `everything is exempt from ${name}`;
    case 'AE':
      return `${name} is owed by the payer under the reverse charge`;
    case 'O':
      return `everything is outside the scope of ${name}`;
    default:
      return inside
        ? `prices include ${name} at ${voice.share(rate)}`
        : `${name} at ${voice.share(rate)} is added`;
  }
}

const CHARGED: Readonly<Record<Terms['not'][number], string>> = {
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
