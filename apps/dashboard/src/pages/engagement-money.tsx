// What was invoiced for an engagement, what is still to be, and what came in.
import type { EngagementWholeJson, StatementAnswerJson } from '@colla/wire';
import { engagements as say } from '../catalogue/engagements.ts';
import { payerNames } from '../features/engagements/names.ts';
import { belowNought } from '../features/engagements/steps.ts';
import { InvoiceBriefs } from '../features/invoices/invoice-briefs.tsx';
import { PaymentList } from '../features/invoices/payment-list.tsx';
import { sayMoney } from '../locale.ts';
import { Button, Part } from '../ui/index.ts';
import type { Asked } from './engagement-dialog.tsx';

interface MoneyProps {
  engagement: EngagementWholeJson;
  today: string;
  toInvoice: StatementAnswerJson['toInvoice'];
  /** Sums below nought: what was invoiced beyond what is owed now. */
  beyond: StatementAnswerJson['toInvoice'];
  onAsk: (asked: Asked) => void;
}

export function Money({ engagement, today, toInvoice, beyond, onAsk }: MoneyProps) {
  const { invoices, payments, currency } = engagement;
  if (!engagement.agreement) return null;
  const names = payerNames(engagement);
  return (
    <>
      <Part title={say('documents')}>
        {invoices.length === 0 ? (
          <p className="aside">{say('noDocuments')}</p>
        ) : (
          <InvoiceBriefs
            invoices={invoices}
            today={today}
            onRecord={({ id }) => onAsk({ is: 'record a payment', invoice: id })}
          />
        )}
        <ul className="engagement-still">
          {toInvoice.map(({ payer, total }) => (
            <li key={payer}>
              <span>
                {say('stillToInvoice', { payer: names[payer] ?? payer, total: sayMoney(total, currency) })}
              </span>
              <Button
                label={say('invoiceMoveFor', { payer: names[payer] ?? payer })}
                onPress={() => onAsk({ is: 'invoice', payer })}
              >
                {say('invoiceMove')}
              </Button>
            </li>
          ))}
        </ul>
        {beyond.map(({ payer, total }) => (
          <p key={payer}>
            {say('beyondOwed', {
              payer: names[payer] ?? payer,
              total: sayMoney(belowNought(total) ?? total, currency),
            })}
          </p>
        ))}
      </Part>
      <Part title={say('payments')}>
        <PaymentList payments={payments} />
      </Part>
    </>
  );
}
