// Payments and what they were allocated to.

import type { Payment } from '@colla/invoicing';
import { eq, sql } from 'drizzle-orm';
import type { Books } from './books.ts';
import { isId, paging } from './page.ts';
import { enter } from './posting.ts';
import { adding, packed, packedRows, present, unpack, unpackRows } from './rows.ts';
import { statement } from './statement.ts';
import { allocations } from './tables/allocations.ts';
import { invoices } from './tables/invoices.ts';
import { journals } from './tables/journals.ts';
import { payments } from './tables/payments.ts';
import type { Transaction } from './transaction.ts';

const whole = sql`${packed(payments)}, ${packedRows(
  allocations,
  eq(allocations.paymentId, payments.id),
  sql`${allocations.position}`,
)}`;
const ofEngagement = statement(sql`select ${whole} from ${payments}
  where ${payments.id} in (
    select ${allocations.paymentId} from ${allocations}
      join ${invoices} on ${eq(invoices.id, allocations.invoice)}
      where ${eq(invoices.engagement, sql.placeholder('engagement'))})
  order by ${payments.receivedOn}, ${payments.id}`);
const unposted = statement(sql`select ${whole} from ${payments}
  where not exists (select from ${journals} where ${eq(journals.id, payments.id)})
  order by ${payments.receivedOn}, ${payments.id}`);
const latestFirst = paging({
  name: 'payments',
  by: 'day',
  newestFirst: true,
  order: [sql`${payments.receivedOn}`, sql`${payments.id}`],
  select: whole,
  from: sql`${payments}`,
  read: keptPayment,
});
const addPayment = adding(payments);
const addAllocations = adding(allocations);

export function paymentBooks(
  transaction: Transaction,
): Pick<Books, 'payments' | 'paymentsOf' | 'savePayment'> {
  return {
    payments: (page) => latestFirst(transaction, page),
    paymentsOf: async (engagement) =>
      isId(engagement) ? (await ofEngagement(transaction, { engagement })).map(keptPayment) : [],
    async savePayment(payment, entering) {
      const { allocations, ...received } = payment;
      const { id: paymentId, currency } = received;
      await Promise.all([
        addPayment(transaction, [received]),
        addAllocations(
          transaction,
          allocations.map((allocation, position) => ({ ...allocation, paymentId, position, currency })),
        ),
      ]);
      await enter(transaction, { kind: 'payment', record: payment }, entering);
    },
  };
}

/** Payments that no journal is of, as they came. */
export async function unpostedPayments(transaction: Transaction): Promise<Payment[]> {
  return (await unposted(transaction)).map(keptPayment);
}

function keptPayment([json, allocated]: unknown[]): Payment {
  return {
    ...present(unpack(payments, json)),
    allocations: unpackRows(allocations, allocated).map(({ invoice, amount }) => ({ invoice, amount })),
  };
}
