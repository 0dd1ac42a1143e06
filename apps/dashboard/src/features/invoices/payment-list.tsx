// What came in for an invoice or an engagement.
import type { PaymentJson } from '@colla/wire';
import { invoices as say, sayMethod } from '../../catalogue/invoices.ts';
import { sayDay, sayMoney } from '../../locale.ts';
import { Figure } from '../../ui/index.ts';
import './invoice.css';

export function PaymentList({ payments }: { payments: readonly PaymentJson[] }) {
  if (payments.length === 0) return <p className="aside">{say('noPayments')}</p>;
  return (
    <ul className="payment-list">
      {payments.map((payment) => (
        <li key={payment.id}>
          <span>
            {sayDay(payment.receivedOn)}, {sayMethod(payment.method).toLowerCase()}
            {payment.reference && `, ${payment.reference}`}
            <Credit payment={payment} />
          </span>
          <Figure amount={payment.amount} currency={payment.currency} />
        </li>
      ))}
    </ul>
  );
}

function Credit({ payment: { credit, currency } }: { payment: PaymentJson }) {
  // The credit is decimal text: nothing is kept where it has no figure but noughts.
  if (!/[1-9]/.test(credit)) return null;
  return <span className="aside when">{say('credit', { amount: sayMoney(credit, currency) })}</span>;
}
