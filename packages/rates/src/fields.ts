// The kinds of parameter a clause may have. Each carries its unit and bounds; the form on the screen and the
// published JSON Schema are read from them.

import { readTime } from '@colla/calendar';
import { CALL_KINDS } from '@colla/hours';
import { type Currency, fromDecimal } from '@colla/money';
import { refused } from '@colla/refusal';
import { z } from 'zod';

/** An amount written as decimal text in the tariff's currency; minor units once read. */
export function amountField(currency: Currency, title: string) {
  return z
    .string({
      error: ({ input }) =>
        input === undefined
          ? 'is missing. Give an amount, such as 45.00'
          : 'is not written as text. Write the amount in quotation marks, such as "45.00"',
    })
    .max(24)
    .meta({ title, unit: 'money' })
    .transform((text, context) => {
      const amount = fromDecimal(text, currency);
      if (!refused(amount) && amount >= 0n) return amount;
      context.addIssue({
        code: 'custom',
        message: refused(amount) ? amount.sentence : `“${text}” is below zero. A price is zero or more.`,
      });
      return z.NEVER;
    });
}

/** The band in which a price agreed one by one must lie. */
export function bandField(currency: Currency) {
  return z
    .strictObject({ from: amountField(currency, 'From'), to: amountField(currency, 'To') })
    .meta({ title: 'Agreed price must lie between' })
    .optional();
}

/** Whole minutes, at most 31 days of them. */
export function minutesField(title: string, { least = 0 }: { least?: number } = {}) {
  return z.int().min(least).max(44_640).meta({ title, unit: 'minutes' });
}

/** A share in basis points: 10 000 is the whole. */
export function shareField(title: string, { most = 10_000 }: { most?: number } = {}) {
  return z.int().min(0).max(most).meta({ title, unit: 'share' });
}

/** A rate in basis points, to the hundredth: 9.975 % is 997.5. */
export function rateField(title: string, { most }: { most: number }) {
  return z
    .number()
    .min(0)
    .max(most)
    .refine(
      (rate) => Math.abs(Math.round(rate * 100) - rate * 100) < 1e-6,
      'is finer than a hundredth of a basis point. Round it',
    )
    .meta({ title, unit: 'rate' });
}

export function countField(
  title: string,
  { least = 0, most = 10_000 }: { least?: number; most?: number } = {},
) {
  return z.int().min(least).max(most).meta({ title, unit: 'count' });
}

/** A few words of the organisation's own. */
export function wordsField(title: string) {
  return z.string().trim().min(1).max(120).meta({ title });
}

/** A time of day such as `20:00`. */
export function timeField(title: string) {
  return z
    .string()
    .refine((text) => !refused(readTime(text)), 'is not a time of day; write it as 20:00')
    .meta({ title, unit: 'time' });
}

/**
 * A day named by something that happens: so many days after an event (before it where negative). An event is
 * the invoice, the agreement, the first call, the principal call (what the engagement leads up to), the first call of
 * a name (“hearing”) or a kind, or the start of the term in which the engagement begins.
 */
export const eventDaySchema = z
  .strictObject({
    event: z
      .enum([
        'invoice',
        'agreement',
        'first call',
        'principal call',
        'call named',
        'start of the term',
        ...CALL_KINDS,
      ])
      .meta({ title: 'Event' }),
    named: z.string().min(1).max(60).optional().meta({ title: 'Name of the call' }),
    days: z.int().min(-400).max(400).meta({ title: 'Days after (before, where negative)', unit: 'days' }),
    monthEnd: z.boolean().optional().meta({ title: 'Put off to the end of that month' }),
  })
  .refine(
    ({ event, named }) => (event === 'call named') === (named !== undefined),
    'needs the name of the call, and only where the event is a call named',
  );
export type EventDay = z.output<typeof eventDaySchema>;
