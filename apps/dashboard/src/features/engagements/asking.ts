// What the next invoice to a payer will ask for, line by line, before it is issued.

import { readDay, Temporal } from '@colla/calendar';
import { type Asked, type Billable, billable, USUAL_DAYS } from '@colla/invoicing';
import { currency, fromDecimal } from '@colla/money';
import { dueOn, type Facts, type Statement } from '@colla/rates';
import { granted } from '@colla/refusal';
import type { InvoiceJson } from '@colla/wire';

export interface Asking {
  readonly billable: Billable;
  /** The day it will be due if it is issued on the day asked about. */
  readonly dueOn: string;
}

/** The difference between what the statement says and what was invoiced, as the server will work it out. */
export function askingOf(
  { statement, facts, payer }: { statement: Statement; facts: Facts; payer: string },
  earlier: readonly InvoiceJson[],
  issuedOn: string,
): Asking {
  const day = granted(readDay(issuedOn));
  return {
    billable: billable(statement, payer, earlier.map(askedBy)),
    dueOn: dueDay(statement, facts, day).toString(),
  };
}

/** The day the agreed terms name, or the usual one; never before the invoice itself. */
function dueDay({ payment }: Statement, facts: Facts, issuedOn: Temporal.PlainDate): Temporal.PlainDate {
  const agreed = payment && dueOn(payment.due, facts, issuedOn);
  const due = agreed ?? issuedOn.add({ days: USUAL_DAYS });
  return Temporal.PlainDate.compare(due, issuedOn) < 0 ? issuedOn : due;
}

/** An invoice as far as the difference needs it; the lines' calls and category do not count there. */
function askedBy(invoice: InvoiceJson): Asked {
  const money = (text: string) => granted(fromDecimal(text, granted(currency(invoice.currency))));
  return {
    payer: invoice.payer,
    lines: invoice.lines.map(({ on, ...line }) => ({
      ...line,
      ...(on === undefined ? {} : { on: granted(readDay(on)) }),
      category: 'other',
      calls: [],
      rate: money(line.rate),
      amount: money(line.amount),
    })),
    taxes: invoice.taxes.map((tax) => ({ ...tax, base: money(tax.base), amount: money(tax.amount) })),
  };
}
