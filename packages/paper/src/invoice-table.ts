// The table of an invoice: a row for each line, with its arithmetic below where that says more than the figures.

import type { InvoiceLine } from '@colla/invoicing';
import { formatFigure } from '@colla/money';
import type { Column, Manuscript, Row } from './manuscript.ts';
import type { Reading } from './reading.ts';

/** Days have a column where any line has one. */
export function invoiceTable(reading: Reading): Manuscript['table'] {
  const { invoice, words, say } = reading;
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
    return dated ? { ...row, cells: [line.on ? say.shortDay(line.on) : '', ...row.cells] } : row;
  });
  return { columns, rows };
}

function rowOf(line: InvoiceLine, reading: Reading): Row {
  const quantity = sayQuantity(line, reading);
  const figure = (amount: bigint) =>
    formatFigure({ amount, currency: reading.invoice.currency }, reading.say.locale);
  return {
    cells: [line.what, quantity, quantity === '' ? '' : figure(line.rate), figure(line.amount)],
    ...(saysMore(line.arithmetic) ? { small: line.arithmetic } : {}),
  };
}

/** How much of what; nothing where the line is the one thing it names. */
function sayQuantity({ quantity, unit }: InvoiceLine, { words, say }: Reading): string {
  const { count, of } = quantity;
  // The rate is the sum a share is taken of, so that “of 84.00” need not be said beside it.
  if (unit.startsWith('of ')) return of === 10_000 ? say.share(count) : `${count}/${of}`;
  const [one, several] = words.units[unit] ?? [unit, `× ${unit}`];
  if (count === of) return one === '' || /^\d/.test(one) ? one : `1 ${one}`;
  return `${say.quantity(quantity)} ${several}`.trim();
}

/** Whether arithmetic is more than one quantity times one rate, which the columns say already. */
function saysMore(arithmetic: string): boolean {
  return arithmetic !== '' && !/^[^×=;]+ × [^×=;]+ = [^×=;]+$/.test(arithmetic);
}
