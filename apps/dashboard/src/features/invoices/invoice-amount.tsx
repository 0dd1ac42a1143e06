// The total of an invoice, or what is owed on it, as a figure that opens: the clauses and the payments are asked for
// when somebody wants to know.
import type { InvoiceJson } from '@colla/wire';
import { useAnswer } from '../../books.ts';
import { invoices as say } from '../../catalogue/invoices.ts';
import { Amount, Shown, WhyView } from '../../ui/index.ts';
import { owedWhy, totalWhy } from './whys.ts';

interface InvoiceAmountProps {
  invoice: InvoiceJson;
  which: 'total' | 'owed';
  /** In a sentence that says what it is. */
  said?: boolean;
}

export function InvoiceAmount({ invoice, which, said = false }: InvoiceAmountProps) {
  const { number, currency } = invoice;
  const what = say(which === 'total' ? 'totalOf' : 'owedOn', { number });
  return (
    <Amount
      why={{
        what,
        amount: invoice[which],
        currency,
        later: () => <InvoiceWhy invoice={invoice} which={which} />,
      }}
      said={said}
    />
  );
}

function InvoiceWhy({ invoice, which }: InvoiceAmountProps) {
  const engagement = useAnswer('getEngagement', { params: { id: invoice.engagement } });
  return (
    <Shown answer={engagement} what={say('fetchingOne')}>
      {({ agreement, payments }) => {
        const sentences = agreement?.sentences ?? [];
        const why = which === 'total' ? totalWhy(invoice, sentences) : owedWhy(invoice, sentences, payments);
        const more = { to: `/invoices/${invoice.id}`, label: say('seeInvoice') };
        return <WhyView why={{ ...why, more }} />;
      }}
    </Shown>
  );
}
