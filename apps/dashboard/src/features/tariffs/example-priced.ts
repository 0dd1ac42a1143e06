// The example, priced as it stands in its fields under what can be read of the tariff.

import { type Statement, statement, type Tariff } from '@colla/rates';
import { type Example, FIRST_DAY } from './example.ts';
import { factsOf, type PlacedReader } from './example-facts.ts';
import type { Slip } from './typed.ts';

export interface Priced {
  readonly statement: Statement | undefined;
  /** What stands in the example's fields and cannot be read; pointers such as `/calls/0/until`. */
  readonly slips: readonly Slip[];
}

/** Prices the example under what can be read of the tariff, as it stands a month before it begins. */
export function priceExample(example: Example, tariff: Tariff, reader: PlacedReader): Priced {
  const { facts, slips } = factsOf(example, tariff, reader);
  const asOf = FIRST_DAY.subtract({ days: 30 }).toZonedDateTime(reader.zone);
  return { statement: statement(facts, { tariff, locale: reader.locale }, asOf), slips };
}
