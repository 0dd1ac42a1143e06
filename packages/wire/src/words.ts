// The small words of the wire: days, instants with their zone, amounts as decimal text, lists by cursor.

import { z } from 'zod';

/** An id made by the server. */
export const id = z.uuid();

/** A day of the calendar, `2026-03-14`. */
export const day = z
  .string()
  .regex(/^\d{4}-\d\d-\d\d$/, 'is not a day; write it as 2026-03-14')
  .meta({ format: 'date' });

/** A time of day at a place, `19:30`. */
export const time = z.string().regex(/^\d\d:\d\d$/, 'is not a time of day; write it as 19:30');

/** An instant with its zone (RFC 9557), `2026-03-14T10:00:00+00:00[Europe/London]`. */
export const instant = z.string().min(20).max(80);

/** An amount as decimal text in the currency that is named beside it, `75.00`. Never a JSON number. */
export const amount = z
  .string()
  .regex(/^-?\d{1,16}(\.\d{1,4})?$/, 'is not an amount; write figures such as 45.00');

/** An amount that is not below zero. */
export const price = z
  .string()
  .regex(/^\d{1,16}(\.\d{1,4})?$/, 'is not an amount; write figures such as 45.00, without a sign');

/** An ISO 4217 code. */
export const currencyCode = z
  .string()
  .regex(/^[A-Z]{3}$/, 'is not a currency; write its three letters, such as EUR');

/**
 * True for a language, or a language with its country, that figures can be written in. One that asks for figures of
 * another script is none: amounts are read back as they are written.
 */
export function isLocale(name: string): boolean {
  try {
    const { baseName } = new Intl.Locale(name);
    return (
      baseName === String(new Intl.Locale(name)) && Intl.NumberFormat.supportedLocalesOf(name).length === 1
    );
  } catch {
    return false;
  }
}

/** The language that sentences and figures are written in, `de-AT`. */
export const locale = z
  .string()
  .max(35)
  .refine(isLocale, 'is not a language figures can be written in; write it as en or de-AT');

/** A few words of the user's own. */
export const words = z.string().trim().min(1, 'is empty; write something').max(200);
export const text = z.string().max(4000);
/** An e-mail address, or nothing. */
export const email = z.union([
  z.email('is not an e-mail address; write it as name@example.org'),
  z.literal(''),
]);
export const addressLines = z.array(z.string().trim().max(120)).max(8);

/** A list in pages: `next` is the cursor of the following page, absent on the last. */
export const page = <Item extends z.ZodType>(item: Item) =>
  z.object({ items: z.array(item), next: z.string().optional() });

/** How every list is asked for. */
export const pageQuery = z.object({
  after: z.string().max(200).optional(),
  limit: z.coerce.number<number | string>().int().min(1).max(200).default(50),
});
