// One invoice as it was issued: its lines, each with its arithmetic and clause, its taxes, what came in.
import type { InvoiceJson } from '@colla/wire';
import { invoices as say } from '../../catalogue/invoices.ts';
import { sayDay, sayFigure } from '../../locale.ts';
import { Figure, Opens, Part } from '../../ui/index.ts';
import './invoice.css';

type Line = InvoiceJson['lines'][number];

interface InvoiceViewProps {
  invoice: InvoiceJson;
  /** The clauses' sentences as they were agreed. */
  sentences: readonly { clause: string; sentence: string }[];
}

export function InvoiceView({ invoice, sentences }: InvoiceViewProps) {
  const sentence = (clause: string) => sentences.find((said) => said.clause === clause)?.sentence;
  return (
    <Part title={say('lines')}>
      <div className="invoice">
        <ul>
          {invoice.lines.map((line) => (
            <LineView
              key={line.key}
              line={line}
              sentence={sentence(line.clause)}
              currency={invoice.currency}
            />
          ))}
        </ul>
        <Sums invoice={invoice} />
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

function LineView(props: { line: Line; sentence: string | undefined; currency: string }) {
  const { line, sentence, currency } = props;
  const summary = (
    <>
      <span>
        {line.what}
        {line.on && <span className="aside when">{sayDay(line.on)}</span>}
      </span>
      <Figure amount={line.amount} currency={currency} bare />
    </>
  );
  return (
    <li>
      <Opens summary={summary}>
        {sentence && <p className="invoice-said">{sentence}</p>}
        <p className="aside">
          {say('arithmetic')}: {line.arithmetic}
        </p>
      </Opens>
    </li>
  );
}

function Sums({ invoice }: { invoice: InvoiceJson }) {
  const { currency, taxes, net, total, paid, owed } = invoice;
  const rows = [
    ...(taxes.length > 0 ? [{ what: say('net'), amount: net }] : []),
    ...taxes.map(({ name, inside, base, amount }) => ({
      what: say(inside ? 'taxInside' : 'tax', { name, base: sayFigure(base, currency) }),
      amount,
    })),
  ];
  return (
    <dl className="invoice-sums">
      {rows.map(({ what, amount }) => (
        <Sum key={what} what={what} amount={amount} currency={currency} />
      ))}
      <Sum what={say('total')} amount={total} currency={currency} whole />
      <Sum what={say('received')} amount={paid} currency={currency} />
      <Sum what={say('owed')} amount={owed} currency={currency} />
    </dl>
  );
}

function Sum(props: { what: string; amount: string; currency: string; whole?: boolean }) {
  const { what, amount, currency, whole = false } = props;
  return (
    <div className={whole ? 'whole' : undefined}>
      <dt>{what}</dt>
      <dd>
        <Figure amount={amount} currency={currency} bare={!whole} />
      </dd>
    </div>
  );
}
