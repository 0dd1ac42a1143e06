// What was invoiced for an engagement, what is still to be, and what came in.
import type { EngagementWholeJson, StatementAnswerJson } from '@colla/wire';
import { engagements as say } from '../catalogue/engagements.ts';
import { payerNames } from '../features/engagements/names.ts';
import { InvoiceBriefs } from '../features/invoices/invoice-briefs.tsx';
import { PaymentList } from '../features/invoices/payment-list.tsx';
import type { Reckoned } from '../features/statements/reckoning.ts';
import { AmountLine, Button, Part } from '../ui/index.ts';
import type { Asked } from './engagement-dialog.tsx';
import { leftWhy } from './left-to-invoice.ts';

interface MoneyProps {
  engagement: EngagementWholeJson;
  today: string;
  /** The statement that what is left is reckoned from; none while it is not here. */
  reckoned: Reckoned | undefined;
  toInvoice: StatementAnswerJson['toInvoice'];
  /** Sums below nought: what was invoiced beyond what is owed now. */
  beyond: StatementAnswerJson['toInvoice'];
  onAsk: (asked: Asked) => void;
}

export function Money({ engagement, today, reckoned, toInvoice, beyond, onAsk }: MoneyProps) {
  const { invoices, payments } = engagement;
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
              {reckoned && <AmountLine why={leftWhy({ payer, total }, reckoned, invoices)} />}
              <Button
                label={say('invoiceMoveFor', { payer: names[payer] ?? payer })}
                onPress={() => onAsk({ is: 'invoice', payer })}
              >
                {say('invoiceMove')}
              </Button>
            </li>
          ))}
        </ul>
        {reckoned &&
          beyond.map(({ payer, total }) => (
            <AmountLine key={payer} why={leftWhy({ payer, total }, reckoned, invoices)} />
          ))}
        {beyond.length > 0 && <p className="aside">{say('beyondWhat')}</p>}
      </Part>
      <Part title={say('payments')}>
        <PaymentList payments={payments} invoices={invoices} />
      </Part>
    </>
  );
}
