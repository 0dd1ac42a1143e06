// Exchange rates on the wire: what one unit of a document's currency was in the book's, with its day and its source.

import { readDay } from '@colla/calendar';
import { type ExchangeRate, exchangeRate } from '@colla/ledger';
import type { Currency } from '@colla/money';
import { type OrRefusal, refused } from '@colla/refusal';
import { z } from 'zod';
import { day } from './words.ts';

export const exchangeRateInput = z.strictObject({
  /** One unit of the document's currency in the currency of the books, as 0.8567. */
  rate: z.string().max(20),
  on: day,
  source: z.string().max(120),
});

export type ExchangeRateSent = z.output<typeof exchangeRateInput>;

/** Reads a rate between two currencies; refuses what `exchangeRate` does, and a day that is none. */
export function readExchangeRate(
  { rate, on, source }: ExchangeRateSent,
  between: { readonly from: Currency; readonly to: Currency },
): OrRefusal<ExchangeRate> {
  const day = readDay(on);
  if (refused(day)) return day.at('/on');
  return exchangeRate({ ...between, rate, on: day, source });
}
