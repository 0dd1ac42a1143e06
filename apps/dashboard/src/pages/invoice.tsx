// What one invoice asks for, and what came in for it.
import type { InvoiceJson } from '@colla/wire';
import { invoicePdfAddress } from '@colla/wire/client';
import { useState } from 'react';
import { useAnswer } from '../books.ts';
import { invoices as say } from '../catalogue/invoices.ts';
import { InvoiceView } from '../features/invoices/invoice-view.tsx';
import { PaymentDialog } from '../features/invoices/payment-dialog.tsx';
import { PaymentList } from '../features/invoices/payment-list.tsx';
import { sayStanding } from '../features/invoices/standing.ts';
import { todayIn } from '../local-time.ts';
import { sayDay } from '../locale.ts';
import { Button, ButtonLink, Page, Part, Shown } from '../ui/index.ts';
import { ShownPage } from './shown-page.tsx';

export function Screen({ id = '' }: { id?: string | undefined }) {
  const answer = useAnswer('getInvoice', { params: { id } });
  return (
    <ShownPage answer={answer} what={say('fetchingOne')} title={say('title')}>
      {(invoice) => <Invoice invoice={invoice} />}
    </ShownPage>
  );
}

function Invoice({ invoice }: { invoice: InvoiceJson }) {
  const engagement = useAnswer('getEngagement', { params: { id: invoice.engagement } });
  const organisation = useAnswer('getOrganisation', {});
  const [recording, setRecording] = useState(false);
  const book = organisation.is === 'here' ? organisation.value.currency : invoice.currency;
  const today = todayIn(organisation.is === 'here' ? organisation.value.zone : 'UTC');
  const under = say('oneUnder', {
    payer: invoice.to.name,
    issued: sayDay(invoice.issuedOn),
    due: sayDay(invoice.dueOn),
    standing: sayStanding(invoice, today),
  });
  return (
    <Page
      title={say('one', { number: invoice.number })}
      under={under}
      actions={<Actions invoice={invoice} onRecord={() => setRecording(true)} />}
    >
      <Shown answer={engagement} what={say('fetchingOne')}>
        {({ agreement, payments, invoices }) => (
          <>
            <InvoiceView invoice={invoice} sentences={agreement?.sentences ?? []} payments={payments} />
            <Part title={say('payments')}>
              <PaymentList
                invoices={invoices}
                payments={payments.filter(({ allocations }) =>
                  allocations.some((allocation) => allocation.invoice === invoice.id),
                )}
              />
            </Part>
          </>
        )}
      </Shown>
      {recording && (
        <PaymentDialog invoice={invoice} today={today} book={book} onClose={() => setRecording(false)} />
      )}
    </Page>
  );
}

function Actions({ invoice, onRecord }: { invoice: InvoiceJson; onRecord: () => void }) {
  return (
    <>
      {invoice.is !== 'paid' && (
        <Button kind="primary" onPress={onRecord}>
          {say('record')}
        </Button>
      )}
      <a className="button plain" href={invoicePdfAddress(invoice.id)} target="_blank" rel="noreferrer">
        {say('pdf')}
      </a>
      <ButtonLink to={`/engagements/${invoice.engagement}`}>{say('engagement')}</ButtonLink>
    </>
  );
}
