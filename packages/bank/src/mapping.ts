// Which column of a bank's rows says what: chosen once for an account, remembered, and used for each file after it.

import type { Currency } from '@colla/money';
import type { DateOrder, DecimalMark } from './cells.ts';
import type { Delimiter } from './rows.ts';

/** Plain data, to be kept as it is. Columns are counted from 0. */
export interface Mapping {
  readonly delimiter: Delimiter;
  /** The row of headings by which the next file is known to have the same columns; empty where files have none. */
  readonly headings: readonly string[];
  readonly dateOrder: DateOrder;
  readonly decimalMark: DecimalMark;
  readonly day: number;
  readonly sum: SumColumns;
  /** Who paid or was paid. */
  readonly name?: number | undefined;
  /** Joined to one text. */
  readonly words: readonly number[];
  readonly reference?: number | undefined;
  readonly bankId?: number | undefined;
  readonly currencyOf?: number | undefined;
  /** The currency of a row that names none. */
  readonly currency: Currency;
}

/** How a row says its sum. */
export type SumColumns = SignedSum | TwoSums | SidedSum;

/** One column, what went out with a minus. */
export interface SignedSum {
  readonly signed: number;
}

/** One column for what came in and one for what went out. */
export interface TwoSums {
  readonly in: number;
  readonly out: number;
}

/** One column without signs, and beside it one that has a word for in and a word for out. */
export interface SidedSum {
  readonly unsigned: number;
  readonly side: number;
  readonly inWord: string;
  readonly outWord: string;
}

/** The columns in which sums stand. */
export function columnsOf(sum: SumColumns): number[] {
  if ('signed' in sum) return [sum.signed];
  return 'unsigned' in sum ? [sum.unsigned] : [sum.in, sum.out];
}
