// The sum that one row says, by the columns of its mapping.

import { type Currency, currency, fromDecimal } from '@colla/money';
import { refused } from '@colla/refusal';
import { sumIn } from './cells.ts';
import type { Mapping, SidedSum, TwoSums } from './mapping.ts';

/** What is wrong with a row: completes “in line 12, …”. */
export interface Wrong {
  readonly why: string;
}

/** Minor units with the sign of the movement. */
export interface RowSum {
  readonly amount: bigint;
  readonly currency: Currency;
}

type Cells = readonly string[];

/** The sum of a row, or what is wrong with it. */
export function sumOfRow(cells: Cells, mapping: Mapping): RowSum | Wrong {
  const { sum } = mapping;
  if ('signed' in sum) return read(cells[sum.signed], cells, mapping);
  return 'unsigned' in sum ? sidedSum(cells, sum, mapping) : sumOfTwo(cells, sum, mapping);
}

function sidedSum(cells: Cells, sum: SidedSum, mapping: Mapping): RowSum | Wrong {
  const side = cells[sum.side] ?? '';
  if (side !== sum.inWord && side !== sum.outWord) {
    return { why: `${quoted(side)} is neither ${quoted(sum.inWord)} nor ${quoted(sum.outWord)}` };
  }
  const size = read(cells[sum.unsigned], cells, mapping);
  if ('why' in size) return size;
  if (size.amount < 0n) return { why: `${quoted(cells[sum.unsigned])} has a minus beside ${quoted(side)}` };
  return side === sum.outWord ? { ...size, amount: -size.amount } : size;
}

/** One of two columns, the other empty or zero. */
function sumOfTwo(cells: Cells, sum: TwoSums, mapping: Mapping): RowSum | Wrong {
  const [came, went] = [cells[sum.in], cells[sum.out]];
  const told: RowSum[] = [];
  for (const one of [came && incoming(came, cells, mapping), went && outgoing(went, cells, mapping)]) {
    if (!one) continue;
    if ('why' in one) return one;
    told.push(one);
  }
  const [moved, another] = told.filter(({ amount }) => amount !== 0n);
  if (another) return { why: `a sum came in, ${quoted(came)}, and another went out, ${quoted(went)}` };
  return moved ?? told[0] ?? { why: 'no sum stands in either column' };
}

function incoming(cell: string, cells: Cells, mapping: Mapping): RowSum | Wrong {
  const sum = read(cell, cells, mapping);
  return 'why' in sum || sum.amount >= 0n ? sum : { why: `${quoted(cell)} came in with a minus` };
}

/** Below zero, whether or not it is written with a minus. */
function outgoing(cell: string, cells: Cells, mapping: Mapping): RowSum | Wrong {
  const sum = read(cell, cells, mapping);
  return 'why' in sum || sum.amount <= 0n ? sum : { ...sum, amount: -sum.amount };
}

function read(cell: string | undefined, cells: Cells, mapping: Mapping): RowSum | Wrong {
  const written = sumIn(cell ?? '', mapping.decimalMark);
  if (!written) return { why: `${quoted(cell)} is no sum` };
  const of = currencyOf(cells, written.code, mapping);
  if (typeof of !== 'string') return of;
  const amount = fromDecimal(written.decimal, of);
  return refused(amount) ? { why: `${quoted(cell)} is no sum in ${of}` } : { amount, currency: of };
}

/** The currency that a row says in its own column or beside the sum; else the account's. */
function currencyOf(cells: Cells, beside: string | undefined, mapping: Mapping): Currency | Wrong {
  const told = mapping.currencyOf === undefined ? '' : (cells[mapping.currencyOf] ?? '').toUpperCase();
  if (told !== '' && beside !== undefined && told !== beside) {
    return { why: `the sum is in ${beside}, and the column of currencies says ${quoted(told)}` };
  }
  const code = told || beside;
  if (code === undefined) return mapping.currency;
  const of = currency(code);
  return refused(of) ? { why: `${quoted(code)} is no currency that ISO 4217 lists` } : of;
}

/** A cell as it is shown, cut where it is long. */
export function quoted(cell = ''): string {
  return `“${cell.length > 30 ? `${cell.slice(0, 30)}…` : cell}”`;
}
