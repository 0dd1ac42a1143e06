// What was asked for, and how it stands.
import { useAnswer } from '../books.ts';
import { invoices as say } from '../catalogue/invoices.ts';
import { ui } from '../catalogue/ui.ts';
import { InvoiceList } from '../features/invoices/invoice-list.tsx';
import { todayIn } from '../local-time.ts';
import { usePaged } from '../paged.ts';
import { Button, Page, ProblemNote, Shown } from '../ui/index.ts';

export function Screen() {
  const organisation = useAnswer('getOrganisation', {});
  const { answer, more, problem } = usePaged('listInvoices', { query: { limit: 50 } });
  const zone = organisation.is === 'here' ? organisation.value.zone : 'UTC';
  return (
    <Page title={say('title')} under={say('under')}>
      <Shown answer={answer} what={say('fetching')}>
        {(invoices) => (
          <>
            <InvoiceList invoices={invoices} today={todayIn(zone)} />
            {problem && <ProblemNote problem={problem} again={more} />}
            {more && !problem && (
              <div>
                <Button onPress={more}>{ui('more')}</Button>
              </div>
            )}
          </>
        )}
      </Shown>
    </Page>
  );
}
