// What the next invoice to a payer will ask for, line by line, before it is issued.

import { readDay } from '@colla/calendar';
import { type Asked, type Billable, billable, dueDay } from '@colla/invoicing';
import { currency, fromDecimal } from '@colla/money';
import type { Facts, Statement } from '@colla/rates';
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
    dueOn: dueDay({ statement, facts, issuedOn: day }).toString(),
  };
}

/** An invoice as far as the difference needs it: the calls and category of a line, and why a tax is owed, do not count. */
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
    taxes: invoice.taxes.map(({ name, rate, code, inside, base, amount }) => ({
      ...{ name, rate, code, inside },
      base: money(base),
      amount: money(amount),
    })),
  };
}
