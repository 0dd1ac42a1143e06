// The table of an invoice: a row for each line, with its arithmetic below where that says more than the figures.

import type { InvoiceLine } from '@colla/invoicing';
import { formatFigure } from '@colla/money';
import type { Column, Manuscript, Row } from './manuscript.ts';
import { type Reading, sayDay } from './reading.ts';

/** Days have a column where any line has one. */
export function invoiceTable(reading: Reading): Manuscript['table'] {
  const { invoice, words } = reading;
  const dated = invoice.lines.some(({ on }) => on);
  const columns: Column[] = [
    ...(dated ? [{ head: words.day }] : []),
    { head: words.service, grows: true },
    { head: words.quantity, figures: true },
    { head: words.rate, figures: true },
    { head: words.amount, figures: true },
  ];
  const rows = invoice.lines.map((line): Row => {
    const row = rowOf(line, reading);
    return dated ? { ...row, cells: [line.on ? sayDay(reading, line.on, 'short') : '', ...row.cells] } : row;
  });
  return { columns, rows };
}

function rowOf(line: InvoiceLine, reading: Reading): Row {
  const figure = (amount: bigint) =>
    formatFigure({ amount, currency: reading.invoice.currency }, reading.say.locale);
  const { quantity, priced } = sayQuantity(line, reading);
  return {
    cells: [line.what, quantity, priced ? figure(line.rate) : '', figure(line.amount)],
    ...(saysMore(line.arithmetic) ? { small: line.arithmetic } : {}),
  };
}

/** How much of what, and whether at a rate: a line that is the one thing it names has none but its amount. */
function sayQuantity(
  { quantity, unit }: InvoiceLine,
  { words, say }: Reading,
): { quantity: string; priced: boolean } {
  const { count, of } = quantity;
  // The rate is the sum a share is taken of, so that “of 84.00” need not be said beside it.
  if (unit.startsWith('of ')) return { quantity: say.share((count * 10_000) / of), priced: true };
  // A payer's share has been shared out to the cent; the sum it is of is in its arithmetic.
  if (unit.startsWith('share of ')) return { quantity: unit.slice('share of '.length), priced: false };
  const [one, several] = words.units[unit] ?? [unit, words.several(unit)];
  if (count !== of) return { quantity: `${say.quantity(quantity)} ${several}`.trim(), priced: true };
  return { quantity: one === '' || /^\d/.test(one) ? one : `1 ${one}`, priced: one !== '' };
}

/** Whether arithmetic is more than one quantity times one rate, which the columns say already. */
export function saysMore(arithmetic: string): boolean {
  return arithmetic !== '' && !/^[^×=;]+ × [^×=;]+ = [^×=;]+$/.test(arithmetic);
}
