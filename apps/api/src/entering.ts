// What is known beside a record of money where it is entered: the day on the organisation's calendar, and a rate.

import type { Temporal } from '@colla/calendar';
import type { Organisation } from '@colla/engagements';
import type { Currency } from '@colla/money';
import type { Entering } from '@colla/store';
import { type ExchangeRateSent, readExchangeRate } from '@colla/wire';
import { must } from './refusals.ts';

/** The day of an instant where the organisation is, and the rate that was sent, of the currency of the record. */
export function enteringAt(
  now: Temporal.Instant,
  { zone, currency: to }: Organisation,
  sent: { readonly rate?: ExchangeRateSent | undefined; readonly currency: Currency },
): Entering {
  const today = now.toZonedDateTimeISO(zone).toPlainDate();
  if (sent.rate === undefined) return { today };
  return { today, rate: must(readExchangeRate(sent.rate, { from: sent.currency, to }), '/rate') };
}
