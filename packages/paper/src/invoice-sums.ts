// The sums of an invoice: tax and what it is on, what is to pay, and what has been paid on it so far.

import type { InvoiceTax } from '@colla/invoicing';
import { format, formatFigure } from '@colla/money';
import type { Manuscript, Sum } from './manuscript.ts';
import type { Paid, Reading } from './reading.ts';

/** Tax added to the prices stands above what is to pay; tax inside them is said below it. */
export function invoiceSums(reading: Reading, standing?: Paid): Pick<Manuscript, 'sums' | 'asides'> {
  const { invoice, words } = reading;
  const added = invoice.taxes.filter(({ inside }) => !inside);
  const paid = standing !== undefined && standing.paid > 0n ? standing : undefined;
  const sums = [
    ...(added.length > 0 ? [plain(words.beforeTax, invoice.total - sumOf(added), reading)] : []),
    ...added.map((tax) => plain(sayTax(tax, reading), tax.amount, reading)),
    ...(paid
      ? [
          plain(words.toPay, invoice.total, reading),
          plain(words.received, -paid.paid, reading),
          great(words.leftToPay, paid.owed > 0n ? paid.owed : 0n, reading),
        ]
      : [great(words.toPay, invoice.total, reading)]),
  ];
  const inside = invoice.taxes.filter((tax) => tax.inside).map((tax) => sayInside(tax, reading));
  // What the law wants said beside a tax: “VAT is owed by the recipient”.
  const wordings = invoice.taxes.flatMap(({ wording }) => wording ?? []);
  const asides = [...inside, ...wordings];
  return { sums, asides: paid && paid.owed <= 0n ? [...asides, words.paid] : asides };
}

function sumOf(taxes: readonly InvoiceTax[]): bigint {
  return taxes.reduce((sum, { amount }) => sum + amount, 0n);
}

function plain(label: string, amount: bigint, reading: Reading): Sum {
  return { label, figure: figureOf(amount, reading) };
}

/** With its currency: the sign before the figure or after it, as the locale has it; the code where no face has the sign. */
function great(label: string, amount: bigint, reading: Reading): Sum {
  const { currency } = reading.invoice;
  const figure = figureOf(amount, reading);
  const whole = format({ amount, currency }, reading.say.locale);
  if (!reading.spells(whole)) return { label, figure: `${currency}\u00a0${figure}`, great: true };
  const at = whole.lastIndexOf(figure);
  const end = at < 0 ? whole.length : at + figure.length;
  return { label, figure: whole.slice(0, end), mark: whole.slice(end), great: true };
}

function sayTax({ name, rate, code, base }: InvoiceTax, reading: Reading): string {
  const { words, say } = reading;
  const why = words.untaxed[code];
  const on = figureOf(base, reading);
  if (rate > 0 || !why) return words.tax({ name, share: say.share(rate), base: on });
  return reading.invoice.taxes.length > 1 ? words.untaxedPart({ name, why, base: on }) : `${name}, ${why}`;
}

function sayInside({ name, rate, amount, base }: InvoiceTax, reading: Reading): string {
  const { words, say } = reading;
  const figures = { amount: figureOf(amount, reading), base: figureOf(base, reading) };
  return words.taxInside({ name, share: say.share(rate), ...figures });
}

function figureOf(amount: bigint, { invoice, say }: Reading): string {
  return formatFigure({ amount, currency: invoice.currency }, say.locale);
}
