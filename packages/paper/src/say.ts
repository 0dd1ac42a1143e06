// Days, quantities and shares as a reader of a locale expects them. Figures are always the digits 0 to 9.

import type { Temporal } from '@colla/calendar';
import type { Quantity } from '@colla/rates';

/** Says the figures of one locale. */
export interface Say {
  readonly locale: string;
  /** `14 March 2026` */
  readonly day: (day: Temporal.PlainDate) => string;
  /** `14 Mar 2026`, for a column */
  readonly shortDay: (day: Temporal.PlainDate) => string;
  /** To four decimals, as statements reckon: 70 minutes of an hour are `1.1667`. */
  readonly quantity: (quantity: Quantity) => string;
  /** Basis points: 2 000 is `20 %`. */
  readonly share: (basisPoints: number) => string;
}

const known = new Map<string, Say>();

/** The sayer for a locale, a BCP 47 tag. Making one is slow, so that each is made once. */
export function sayFor(locale: string): Say {
  const said = known.get(locale) ?? makeSay(locale);
  known.set(locale, said);
  return said;
}

function makeSay(locale: string): Say {
  const figures = new Intl.Locale(locale, { numberingSystem: 'latn' }).toString();
  const long = daySayer(figures, 'long');
  const short = daySayer(figures, 'short');
  const number = new Intl.NumberFormat(figures, { maximumFractionDigits: 4 });
  return {
    locale: figures,
    day: long,
    shortDay: short,
    quantity: ({ count, of }) => number.format(count / of),
    share: (basisPoints) => `${number.format(basisPoints / 100)}\u00a0%`,
  };
}

/** A day has no zone: it is said as the same day of UTC. */
function daySayer(locale: string, month: 'long' | 'short'): (day: Temporal.PlainDate) => string {
  const format = new Intl.DateTimeFormat(locale, { day: 'numeric', month, year: 'numeric', timeZone: 'UTC' });
  return ({ year, month, day }) => format.format(Date.UTC(year, month - 1, day));
}
