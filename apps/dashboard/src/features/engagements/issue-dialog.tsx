// The next invoice to a payer: exactly what will be asked is seen before it has its number.
import { Temporal } from '@colla/calendar';
import { readTariff, statement } from '@colla/rates';
import { refused } from '@colla/refusal';
import type { EngagementWholeJson, OrganisationJson } from '@colla/wire';
import { useState } from 'react';
import { useSend } from '../../books.ts';
import { engagements as say } from '../../catalogue/engagements.ts';
import { sayMoney } from '../../locale.ts';
import { Button, DayField, Dialog, Form, RateFields, rateOf, TextField, useStatus } from '../../ui/index.ts';
import { Addressed } from './addressed.tsx';
import { type Asking, askingOf } from './asking.ts';
import { AskingView } from './asking-view.tsx';
import './engagement.css';
import { factsOf } from './facts.ts';
import { callName, payerNames } from './names.ts';

interface IssueDialogProps {
  engagement: EngagementWholeJson;
  organisation: OrganisationJson;
  payer: string;
  /** Somebody's address is to be changed first. */
  onAddress: (party: string) => void;
  onClose: () => void;
}

export function IssueDialog({ engagement, organisation, payer, onAddress, onClose }: IssueDialogProps) {
  const { id } = engagement;
  const { send, busy, problem } = useSend('issueInvoice');
  const [issuedOn, setIssuedOn] = useState(() => Temporal.Now.plainDateISO(organisation.zone).toString());
  const [note, setNote] = useState('');
  const [rate, setRate] = useState(() => ({ rate: '', on: issuedOn, source: '' }));
  const between = { from: engagement.currency, to: organisation.currency };
  const status = useStatus();
  const name = payerNames(engagement)[payer];
  const party = engagement.payers[payer];
  const asking = askingFor(engagement, organisation, payer, issuedOn);
  const ahead = asking ? callsAhead(engagement, asking) : [];
  const issue = async () => {
    const body = {
      payer,
      issuedOn,
      ...(note.trim() ? { note: note.trim() } : {}),
      ...rateOf(rate, between),
    };
    const invoice = await send({ params: { id }, body });
    if (!invoice) return;
    const { number, total } = invoice;
    status(say('nowIssued', { number, total: sayMoney(total, engagement.currency), payer: invoice.to.name }));
    onClose();
  };
  const foot = (
    <>
      <Button type="submit" kind="primary" busy={busy}>
        {say('issueIt')}
      </Button>
      <Button onPress={onClose}>{say('giveUp')}</Button>
    </>
  );
  return (
    <Dialog title={say('issueTitle', { payer: name ?? payer })} onClose={onClose}>
      <Form problem={problem} onSubmit={issue} foot={foot}>
        <p>{say('issueWhy')}</p>
        {party === undefined ? (
          <p className="overdue">{say('noPayer', { role: payer })}</p>
        ) : (
          <Addressed party={party} onChange={() => onAddress(party)} />
        )}
        {asking && <AskingView asking={asking} engagement={engagement} />}
        {ahead.length > 0 && <p>{say('askedAhead', { calls: ahead.join('; '), count: ahead.length })}</p>}
        <div className="fields">
          <DayField label={say('issuedOn')} at="/issuedOn" value={issuedOn} onType={setIssuedOn} />
          <TextField label={say('issueNote')} optional at="/note" most={4000} value={note} onType={setNote} />
        </div>
        <RateFields {...between} value={rate} onType={setRate} />
      </Form>
    </Dialog>
  );
}

/** What will be asked; nothing to show while the day cannot be read. */
function askingFor(
  engagement: EngagementWholeJson,
  organisation: OrganisationJson,
  payer: string,
  issuedOn: string,
): Asking | undefined {
  const tariff = engagement.agreement ? readTariff(engagement.agreement.written) : undefined;
  if (tariff === undefined || refused(tariff) || issuedOn === '') return undefined;
  const { locale, zone } = organisation;
  const facts = factsOf(engagement, organisation);
  const now = statement(facts, { tariff, locale }, Temporal.Now.zonedDateTimeISO(zone));
  return askingOf({ statement: now, facts, payer }, engagement.invoices, issuedOn);
}

/** Calls that are asked for and have not taken place, by name. */
function callsAhead({ calls }: EngagementWholeJson, { billable }: Asking): string[] {
  const asked = new Set(billable.lines.flatMap((line) => line.calls));
  return calls.filter(({ id, standing }) => standing.is === 'agreed' && asked.has(id)).map(callName);
}
