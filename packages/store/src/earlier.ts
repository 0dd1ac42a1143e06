// Books that were kept before there was a ledger: their invoices and payments are posted when the tables are brought up
// to date, in the order of their days, by the one function that posts.

import type { Temporal } from '@colla/calendar';
import type { MoneyEvent } from '@colla/invoicing';
import type { Currency } from '@colla/money';
import type { Connection } from './connection.ts';
import { unpostedInvoices } from './invoices.ts';
import { organisationBooks } from './organisations.ts';
import { unpostedPayments } from './payments.ts';
import { type Entering, enter } from './posting.ts';
import { organisationsKept } from './sessions.ts';
import { Transaction } from './transaction.ts';

/** Posts what no journal is of, within a transaction of the owner that is under way. */
export async function postEarlier(connection: Connection): Promise<void> {
  for (const organisation of await organisationsKept(
    new Transaction(connection, 'set local role colla_door'),
  )) {
    const opening = `set local role colla_books; select set_config('colla.organisation', '${organisation}', true)`;
    const transaction = new Transaction(connection, opening);
    const { currency } = await organisationBooks(transaction).organisation();
    for (const event of await unposted(transaction))
      await enter(transaction, event, enteredThen(event, currency));
    // Looked at now, by the role whose rows they are, and not when the owner commits.
    await connection.run('set constraints all immediate; set constraints all deferred');
  }
  await connection.run(`reset role; select set_config('colla.organisation', '', true)`);
}

type Earlier = Extract<MoneyEvent, { kind: 'invoice' | 'payment' }>;

/** Every invoice comes before the payments: money was never taken for one that was not issued. */
async function unposted(transaction: Transaction): Promise<Earlier[]> {
  const [invoices, payments] = await Promise.all([
    unpostedInvoices(transaction),
    unpostedPayments(transaction),
  ]);
  return [
    ...invoices.map((record) => ({ kind: 'invoice' as const, record })),
    ...payments.map((record) => ({ kind: 'payment' as const, record })),
  ];
}

/** It was entered by then. No exchange rate was asked for: one for one, and the journal says so. */
function enteredThen(event: Earlier, book: Currency): Entering {
  const today = dayOf(event);
  const { currency } = event.record;
  if (currency === book) return { today };
  const source = 'none was entered: kept before the books had a ledger';
  return { today, rate: { from: currency, to: book, rate: '1', on: today, source } };
}

function dayOf(event: Earlier): Temporal.PlainDate {
  return event.kind === 'invoice' ? event.record.issuedOn : event.record.receivedOn;
}
