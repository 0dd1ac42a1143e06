// What a debt costs that is paid late: a sum, a share a month, a yearly rate, or what the law of the United Kingdom or
// the European Union adds. A term of the agreement, not advice: whether and how it may be claimed is for local law.

import type { Temporal } from '@colla/calendar';
import { divideRounded } from '@colla/money';
import { type OrRefusal, Refusal } from '@colla/refusal';
import { z } from 'zod';
import { amountField, countField, shareField } from '../fields.ts';
import { clauseKind, perCurrency } from '../kind.ts';
import type { Debt, LateCharge, LatePlace } from '../late.ts';
import { sayConditions } from '../phrases.ts';
import type { Voice } from '../voice.ts';
import { halfYearOf, REFERENCE_RATES } from './reference-rates.ts';

const yearField = z.enum(['365 days', '360 days']).default('365 days').meta({ title: 'A year counts' });
const dayField = z
  .enum(['exactly', 'rounded each day'])
  .default('exactly')
  .meta({ title: 'Interest is reckoned' });

const schema = perCurrency((currency) =>
  z.strictObject({
    by: z
      .discriminatedUnion('as', [
        z.strictObject({
          as: z.literal('sum'),
          amount: amountField(currency, 'Amount'),
          each: z.enum(['debt', 'day', 'week', 'month']).default('debt').meta({ title: 'For each (begun)' }),
          most: amountField(currency, 'At most').optional(),
        }),
        z.strictObject({ as: z.literal('share a month'), share: shareField('Share for each month begun') }),
        z.strictObject({
          as: z.literal('yearly rate'),
          rate: shareField('Rate a year'),
          year: yearField,
          day: dayField,
        }),
        z.strictObject({
          as: z.literal('statutory'),
          law: z.enum(['UK', 'EU']).meta({ title: 'Law' }),
          points: shareField('Points above the reference rate').default(800),
          year: yearField,
          day: dayField,
        }),
      ])
      .meta({ title: 'Late payment costs' }),
    grace: countField('Days late that are forgiven', { most: 400 }).default(0),
  }),
);
type Terms = z.output<ReturnType<typeof schema>>;
type By<As extends Terms['by']['as']> = Extract<Terms['by'], { as: As }>;

export const latePayment = clauseKind({
  kind: 'late-payment',
  title: 'Late payment',
  help: 'Says what is owed on top when an invoice is paid late. Whether it may be claimed depends on the law of the place and on who the payer is.',
  schema,
  rivalry: () => undefined,
  once: true,
  whole: true,
  sentence: ({ by, grace }, { voice, for: selector }) => {
    const days = grace === 1 ? 'one day' : `${grace} days`;
    const late = grace === 0 ? 'after it is due' : `more than ${days} after it is due`;
    return `An invoice${sayConditions(selector, voice)} that is paid ${late} costs ${sayBy(by, voice)}.`;
  },
  late: lateCharge,
  phases: {},
  examples: [
    {
      case: 'A term for late payment charges nothing by itself: nothing is late yet',
      terms: { by: { as: 'statutory', law: 'UK' } },
      given: { calls: ['rehearsal 60'] },
      owed: '0.00',
    },
  ],
});

function lateCharge({ by, grace }: Terms, debt: Debt, place: LatePlace): OrRefusal<LateCharge> {
  const { voice } = place;
  const days = debt.dueOn.until(debt.on, { largestUnit: 'days' }).days;
  if (days <= 0 || debt.amount <= 0n)
    return charge(place, { days: 0, interest: 0n, sum: 0n, how: 'paid in time' });
  if (days <= grace) {
    const how = `${days === 1 ? '1 day' : `${days} days`} late, ${grace} forgiven`;
    return charge(place, { days, interest: 0n, sum: 0n, how });
  }
  switch (by.as) {
    case 'sum':
      return charge(place, { days, interest: 0n, ...sumFor(by, debt, days, voice) });
    case 'share a month': {
      const months = monthsBegun(debt.dueOn, debt.on);
      const interest = divideRounded(debt.amount * BigInt(by.share * months), 10_000n);
      const how = `${voice.share(by.share)} × ${voice.money(debt.amount)} × ${months} ${months === 1 ? 'month' : 'months'} begun`;
      return charge(place, { days, interest, sum: 0n, how });
    }
    case 'yearly rate':
      return charge(place, { days, ...interestAt(by.rate, by, debt.amount, days, voice), sum: 0n });
    case 'statutory':
      return statutory(by, debt, days, place);
  }
}

/** The reference rate of the half-year in which the debt became late, and the points; a fixed sum in the law's own currency. */
function statutory(by: By<'statutory'>, debt: Debt, days: number, place: LatePlace): OrRefusal<LateCharge> {
  const half = halfYearOf(debt.dueOn.add({ days: 1 }));
  const reference = REFERENCE_RATES[by.law][half];
  if (reference === undefined) {
    return new Refusal(
      'rates/no-reference-rate',
      `The ${by.law} reference rate for debts that became late in ${half} is not recorded here. Give the clause a yearly rate instead.`,
      { law: by.law, halfYear: half },
    );
  }
  const { interest, how } = interestAt(reference + by.points, by, debt.amount, days, place.voice);
  const sum = fixedSum(by.law, debt.amount, place.currency);
  return charge(place, { days, interest, sum, how });
}

/** Simple interest; the year has 365 days (or 360) whatever the calendar says. */
function interestAt(
  rate: number,
  { year, day }: Pick<By<'yearly rate'>, 'year' | 'day'>,
  amount: bigint,
  days: number,
  voice: Voice,
): { interest: bigint; how: string } {
  const inYear = year === '365 days' ? 365n : 360n;
  const yearly = amount * BigInt(rate);
  const daily = divideRounded(yearly, 10_000n * inYear);
  const count = `${days} ${days === 1 ? 'day' : 'days'}`;
  if (day === 'rounded each day')
    return {
      interest: daily * BigInt(days),
      how: `${voice.money(daily)} a day (${voice.share(rate)} a year) × ${count}`,
    };
  const interest = divideRounded(yearly * BigInt(days), 10_000n * inYear);
  return { interest, how: `${voice.share(rate)} × ${voice.money(amount)} × ${count} / ${inYear}` };
}

/**
 * UK: 40, 70 or 100 pounds for debts below 1,000, below 10,000 and above (payontime.co.uk, “Late payment legislation”,
 * compensation table). EU: 40 euro at least (Directive 2011/7/EU, article 6; EUR-Lex summary mi0074).
 */
function fixedSum(law: 'UK' | 'EU', amount: bigint, currency: string): bigint {
  if (law === 'EU') return currency === 'EUR' ? 4000n : 0n;
  if (currency !== 'GBP') return 0n;
  if (amount < 100_000n) return 4000n;
  return amount < 1_000_000n ? 7000n : 10_000n;
}

function charge(
  { clause, voice }: LatePlace,
  { days, interest, sum, how }: { days: number; interest: bigint; sum: bigint; how: string },
): LateCharge {
  const total = interest + sum;
  const also = sum > 0n && interest > 0n ? ` + ${voice.money(sum)}` : '';
  return { clause, days, interest, sum, total, arithmetic: `${how}${also} = ${voice.money(total)}` };
}

/** A sum for the debt, or for each day, week or month begun, up to the most. */
function sumFor(
  { amount, each, most }: By<'sum'>,
  debt: Debt,
  days: number,
  voice: Voice,
): { sum: bigint; how: string } {
  if (each === 'debt') return { sum: amount, how: voice.money(amount) };
  const begun = { day: days, week: Math.ceil(days / 7), month: monthsBegun(debt.dueOn, debt.on) }[each];
  const sum = amount * BigInt(begun);
  const how = `${voice.money(amount)} × ${begun} ${begun === 1 ? each : `${each}s`} begun`;
  return most !== undefined && sum > most ? { sum: most, how: `${how}, at most` } : { sum, how };
}

/** Months begun after the due day: the day after it begins the first. */
function monthsBegun(due: Temporal.PlainDate, on: Temporal.PlainDate): number {
  const { months, days } = due.until(on, { largestUnit: 'months' });
  return months + (days > 0 ? 1 : 0);
}

function sayBy(by: Terms['by'], voice: Voice): string {
  switch (by.as) {
    case 'sum':
      return sayLateSum(by, voice);
    case 'share a month':
      return `${voice.share(by.share)} of it for each month begun`;
    case 'yearly rate':
      return `${voice.share(by.rate)} of it a year, ${sayDays(by)}`;
    case 'statutory': {
      const law = by.law === 'UK' ? 'the United Kingdom' : 'the European Union';
      return `interest ${voice.share(by.points)} above the reference rate of ${law} and its fixed sum, ${sayDays(by)}`;
    }
  }
}

function sayDays({ year, day }: Pick<By<'yearly rate'>, 'year' | 'day'>): string {
  return `by the day in a year of ${year}${day === 'exactly' ? '' : `, ${day}`}`;
}

function sayLateSum({ amount, each, most }: By<'sum'>, voice: Voice): string {
  const begun = each === 'debt' ? '' : ` for each ${each} begun`;
  return `${voice.money(amount)} more${begun}${most === undefined ? '' : `, ${voice.money(most)} at most`}`;
}
