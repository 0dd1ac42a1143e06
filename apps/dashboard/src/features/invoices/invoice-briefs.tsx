// The invoices of one engagement, each in two lines, with what can be done about it beside it.
import type { InvoiceJson } from '@colla/wire';
import { invoicePdfAddress } from '@colla/wire/client';
import { Link } from 'wouter';
import { invoices as say } from '../../catalogue/invoices.ts';
import { sayDay } from '../../locale.ts';
import { Button } from '../../ui/index.ts';
import './invoice.css';
import { InvoiceAmount } from './invoice-amount.tsx';
import { sayStanding, standingClass } from './standing.ts';

interface InvoiceBriefsProps {
  invoices: readonly InvoiceJson[];
  today: string;
  onRecord: (invoice: InvoiceJson) => void;
}

export function InvoiceBriefs({ invoices, today, onRecord }: InvoiceBriefsProps) {
  return (
    <ul className="invoice-briefs">
      {invoices.map((invoice) => (
        <li key={invoice.id}>
          <p className="invoice-line">
            <span>
              <Link href={`/invoices/${invoice.id}`}>{invoice.number}</Link> {invoice.to.name}
            </span>
            <InvoiceAmount invoice={invoice} which="total" />
          </p>
          <p className="invoice-line">
            <span className={standingClass(invoice)}>
              {say('dueOn', { day: sayDay(invoice.dueOn) })}, {sayStanding(invoice, today)}
            </span>
            {invoice.is !== 'paid' && <InvoiceAmount invoice={invoice} which="owed" />}
          </p>
          <div className="buttons">
            {invoice.is !== 'paid' && (
              <Button label={say('recordFor', { number: invoice.number })} onPress={() => onRecord(invoice)}>
                {say('record')}
              </Button>
            )}
            <a
              href={invoicePdfAddress(invoice.id)}
              target="_blank"
              rel="noreferrer"
              aria-label={say('pdfOf', { number: invoice.number })}
            >
              PDF
            </a>
          </div>
        </li>
      ))}
    </ul>
  );
}
