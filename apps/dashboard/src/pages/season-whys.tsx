// What the money of a season opens to in the end: the invoices that are owed, the statement less the invoices, the
// lines that were earned. Each is asked for when somebody opens it.
import type { EngagementWholeJson, InvoiceJson, StatementAnswerJson } from '@colla/wire';
import type { ReactNode } from 'react';
import { useAnswer } from '../books.ts';
import { season as say } from '../catalogue/season.ts';
import { pricedBy } from '../features/engagements/priced.ts';
import { owedWhy } from '../features/invoices/whys.ts';
import { isSome, type OwedPart, summedUp } from '../features/season/sums.ts';
import type { Earning, Which } from '../features/season/whys.ts';
import type { Reckoned } from '../features/statements/reckoning.ts';
import { lineWhy } from '../features/statements/whys.ts';
import { Shown, summed, type Why, WhyView } from '../ui/index.ts';
import { leftWhy } from './left-to-invoice.ts';

export function Owing({ part, which }: { part: OwedPart; which: Which }) {
  return which === 'toInvoice' || which === 'beyond' ? (
    <LeftToInvoice part={part} which={which} />
  ) : (
    <OwedInvoices part={part} which={which} />
  );
}

/** The invoices to one payer on which something is owed: what each asks for, less what came in. */
function OwedInvoices({ part, which }: { part: OwedPart; which: Which }) {
  const isMeant = (invoice: InvoiceJson) =>
    isTo(part, invoice) && isSome(invoice.owed) && (which === 'owed' || invoice.is === 'overdue');
  return (
    <Asked id={part.engagement}>
      {({ invoices, payments, agreement }) =>
        invoices.filter(isMeant).map((invoice) => ({
          ...owedWhy(invoice, agreement?.sentences ?? [], payments),
          what: invoice.number,
        }))
      }
    </Asked>
  );
}

function isTo({ payer, payerName }: OwedPart, { to }: InvoiceJson): boolean {
  return to.party === payer || to.name === payerName;
}

/** For each role in which the payer pays: what the statement says, less what was invoiced. */
function LeftToInvoice({ part, which }: { part: OwedPart; which: Which }) {
  return (
    <Priced id={part.engagement}>
      {(of, engagement, { toInvoice }) =>
        toInvoice
          .filter(({ payer }) => engagement.payers[payer] === part.payer)
          .filter(({ total }) => isSome(total) && total.startsWith('-') === (which === 'beyond'))
          .map((left) => leftWhy(left, of, engagement.invoices))
      }
    </Priced>
  );
}

/** The lines of the statement that were earned. */
export function EarnedLines({ earning }: { earning: Earning }) {
  return (
    <Priced id={earning.engagement}>
      {(of) =>
        of.statement.lines.filter(({ key }) => earning.keys.includes(key)).map((line) => lineWhy(line, of))
      }
    </Priced>
  );
}

interface PricedProps {
  id: string;
  children: (of: Reckoned, engagement: EngagementWholeJson, answer: StatementAnswerJson) => Why[];
}

function Priced({ id, children }: PricedProps) {
  const answer = useAnswer('getStatement', { params: { id }, query: {} });
  const organisation = useAnswer('getOrganisation', {});
  return (
    <Shown answer={organisation} what={say('what')}>
      {(house) => (
        <Shown answer={answer} what={say('what')}>
          {(value) => (
            <Asked id={id}>
              {(engagement) => children(pricedBy(value, engagement, house), engagement, value)}
            </Asked>
          )}
        </Shown>
      )}
    </Shown>
  );
}

interface AskedProps {
  id: string;
  children: (engagement: EngagementWholeJson) => Why[];
}

function Asked({ id, children }: AskedProps): ReactNode {
  const answer = useAnswer('getEngagement', { params: { id } });
  return (
    <Shown answer={answer} what={say('what')}>
      {(engagement) => <Parts engagement={engagement} parts={children(engagement)} />}
    </Shown>
  );
}

/** One part stands for the whole; several are added up. */
function Parts({ engagement, parts }: { engagement: EngagementWholeJson; parts: readonly Why[] }) {
  const more = { to: `/engagements/${engagement.id}`, label: say('toEngagement') };
  const [only, ...others] = parts;
  if (only && others.length === 0) return <WhyView why={{ ...only, more }} />;
  const amount = summedUp(
    parts.map(({ amount }) => amount),
    engagement.currency,
  );
  const whole = { what: engagement.title, amount, currency: engagement.currency };
  return <WhyView why={{ ...summed(whole, parts), more }} />;
}
