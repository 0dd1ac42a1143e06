// Every invoice in one line, and how it stands.
import type { InvoiceJson } from '@colla/wire';
import { invoicePdfAddress } from '@colla/wire/client';
import { Link } from 'wouter';
import { invoices as say } from '../../catalogue/invoices.ts';
import { sayDay } from '../../locale.ts';
import { ButtonLink, type Column, Empty, Table } from '../../ui/index.ts';
import './invoice.css';
import { InvoiceAmount } from './invoice-amount.tsx';
import { sayStanding, standingClass } from './standing.ts';

export function InvoiceList({ invoices, today }: { invoices: readonly InvoiceJson[]; today: string }) {
  if (invoices.length === 0) {
    return (
      <Empty title={say('none')}>
        <p>{say('noneWhy')}</p>
        <ButtonLink to="/engagements" kind="primary">
          {say('toEngagements')}
        </ButtonLink>
      </Empty>
    );
  }
  return (
    <Table
      caption={say('title')}
      captionUnseen
      columns={columnsAt(today)}
      rows={invoices}
      rowKey={({ id }) => id}
    />
  );
}

function columnsAt(today: string): Column<InvoiceJson>[] {
  return [
    {
      key: 'number',
      head: say('number'),
      cell: ({ id, number }) => (
        <Link className="invoice-short" href={`/invoices/${id}`}>
          {number}
        </Link>
      ),
    },
    { key: 'to', head: say('to'), cell: ({ to }) => to.name },
    {
      key: 'for',
      head: say('forWhat'),
      cell: ({ engagement, title }) => <Link href={`/engagements/${engagement}`}>{title}</Link>,
    },
    {
      key: 'due',
      head: say('due'),
      cell: ({ dueOn }) => <span className="invoice-short">{sayDay(dueOn)}</span>,
    },
    {
      key: 'standing',
      head: say('standing'),
      cell: (invoice) => <span className={standingClass(invoice)}>{sayStanding(invoice, today)}</span>,
    },
    {
      key: 'total',
      head: say('total'),
      figure: true,
      cell: (invoice) => <InvoiceAmount invoice={invoice} which="total" />,
    },
    {
      key: 'owed',
      head: say('owed'),
      figure: true,
      cell: (invoice) => <InvoiceAmount invoice={invoice} which="owed" />,
    },
    {
      key: 'pdf',
      head: say('document'),
      figure: true,
      cell: ({ id, number }) => (
        <a
          href={invoicePdfAddress(id)}
          target="_blank"
          rel="noreferrer"
          aria-label={say('pdfOf', { number })}
        >
          PDF
        </a>
      ),
    },
  ];
}
