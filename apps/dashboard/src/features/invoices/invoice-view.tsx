// One invoice as it was issued: its lines, its taxes, what came in; each amount opens to its why.
import type { InvoiceJson, PaymentJson } from '@colla/wire';
import { invoices as say } from '../../catalogue/invoices.ts';
import { sayDay } from '../../locale.ts';
import { AmountLine, Part } from '../../ui/index.ts';
import './invoice.css';
import { lineWhy, netWhy, owedWhy, receivedWhy, type Sentences, taxWhy, totalWhy } from './whys.ts';

interface InvoiceViewProps {
  invoice: InvoiceJson;
  /** The clauses' sentences as they were agreed. */
  sentences: Sentences;
  payments: readonly PaymentJson[];
}

export function InvoiceView({ invoice, sentences, payments }: InvoiceViewProps) {
  return (
    <Part title={say('lines')}>
      <div className="invoice">
        <ul className="invoice-lines">
          {invoice.lines.map((line) => (
            <li key={line.key}>
              <AmountLine why={lineWhy(line, invoice, sentences)} under={line.on && sayDay(line.on)} bare />
            </li>
          ))}
        </ul>
        <Sums invoice={invoice} sentences={sentences} payments={payments} />
      </div>
      {invoice.terms && <p>{invoice.terms}</p>}
      {invoice.note && (
        <p>
          {say('note')}: {invoice.note}
        </p>
      )}
    </Part>
  );
}

function Sums({ invoice, sentences, payments }: InvoiceViewProps) {
  const { taxes } = invoice;
  return (
    <ul className="invoice-lines">
      {taxes.length > 0 && (
        <li>
          <AmountLine why={netWhy(invoice, sentences)} bare />
        </li>
      )}
      {taxes.map((tax) => (
        <li key={`${tax.name} ${tax.rate} ${tax.code}`}>
          <AmountLine why={taxWhy(tax, invoice, sentences)} bare />
        </li>
      ))}
      <li className="whole">
        <AmountLine why={totalWhy(invoice, sentences)} />
      </li>
      <li>
        <AmountLine why={receivedWhy(invoice, payments)} bare />
      </li>
      <li>
        <AmountLine why={owedWhy(invoice, sentences, payments)} bare />
      </li>
    </ul>
  );
}
