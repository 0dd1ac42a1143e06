// What came in for an invoice or an engagement, and what each payment was set against.
import type { InvoiceJson, PaymentJson } from '@colla/wire';
import { invoices as say } from '../../catalogue/invoices.ts';
import { sayMoney } from '../../locale.ts';
import { AmountLine } from '../../ui/index.ts';
import './invoice.css';
import { paymentWhy } from './whys.ts';

interface PaymentListProps {
  payments: readonly PaymentJson[];
  /** Those that the payments may be for. */
  invoices: readonly InvoiceJson[];
}

export function PaymentList({ payments, invoices }: PaymentListProps) {
  if (payments.length === 0) return <p className="aside">{say('noPayments')}</p>;
  const numbers = Object.fromEntries(invoices.map(({ id, number }) => [id, number]));
  return (
    <ul className="payment-list invoice-lines">
      {payments.map((payment) => (
        <li key={payment.id}>
          <AmountLine why={paymentWhy(payment, numbers)} under={sayCredit(payment)} />
        </li>
      ))}
    </ul>
  );
}

function sayCredit({ credit, currency }: PaymentJson): string | undefined {
  // The credit is decimal text: nothing is kept where it has no figure but noughts.
  return /[1-9]/.test(credit) ? say('credit', { amount: sayMoney(credit, currency) }) : undefined;
}
