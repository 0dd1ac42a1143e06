// What if: what one call would come to cancelled, longer, or with late music, and what cancelling it all costs when.
import type { Temporal } from '@colla/calendar';
import { toDecimal } from '@colla/money';
import { cancellationCurve, type Facts, readTariff, type Terms } from '@colla/rates';
import { refused } from '@colla/refusal';
import type { EngagementWholeJson, OrganisationJson } from '@colla/wire';
import { useMemo, useState } from 'react';
import { whatIf as say } from '../../catalogue/what-if.ts';
import { sayDay, sayTime } from '../../locale.ts';
import { Choice, type Column, Figure, Part, Table } from '../../ui/index.ts';
import { CurveView } from './curve-view.tsx';
import { factsOf } from './facts.ts';
import { callName } from './names.ts';
import { type Case, callsAhead, casesOf } from './what-if.ts';
import './what-if.css';

interface WhatIfProps {
  engagement: EngagementWholeJson;
  organisation: OrganisationJson;
  now: Temporal.ZonedDateTime;
}

/** Only for what is agreed and still ahead. */
export function WhatIf({ engagement, organisation, now }: WhatIfProps) {
  const { agreement } = engagement;
  const { holidays, locale } = organisation;
  const read = useMemo(() => agreement && readTariff(agreement.written), [agreement]);
  const facts = useMemo(() => factsOf(engagement, holidays), [engagement, holidays]);
  if (!read || refused(read) || engagement.stage !== 'agreed') return null;
  if (callsAhead(facts, now).length === 0) return null;
  return (
    <Part title={say('title')}>
      <p className="aside">{say('under')}</p>
      <Cases engagement={engagement} facts={facts} terms={{ tariff: read, locale }} now={now} />
    </Part>
  );
}

interface CasesProps {
  engagement: EngagementWholeJson;
  facts: Facts;
  terms: Terms;
  now: Temporal.ZonedDateTime;
}

function Cases({ engagement, facts, terms, now }: CasesProps) {
  const ahead = callsAhead(facts, now);
  const [chosen, setChosen] = useState(ahead[0]?.id ?? '');
  const [next] = ahead;
  const call = ahead.find(({ id }) => id === chosen) ?? next;
  if (!call || !next) return null;
  const options = engagement.calls
    .filter(({ id }) => ahead.some((call) => call.id === id))
    .map((call) => ({ value: call.id, label: callName(call) }));
  const at = now.withTimeZone(call.planned.start.timeZoneId);
  // Once it begins it cannot be cancelled any more.
  const until = next.planned.start.subtract({ milliseconds: 1 });
  return (
    <>
      {options.length > 1 && (
        <Choice label={say('call')} value={call.id} options={options} onChoose={setChosen} />
      )}
      <CaseTable cases={casesOf(facts, terms, call, at)} currency={terms.tariff.currency} />
      <CurveView
        curve={cancellationCurve(facts, terms, { from: now.withTimeZone(until.timeZoneId), until })}
        until={next.planned.start}
        currency={terms.tariff.currency}
      />
    </>
  );
}

function CaseTable({ cases, currency }: { cases: readonly Case[]; currency: Terms['tariff']['currency'] }) {
  const stands = cases.find(({ name }) => name === 'stands')?.total ?? 0n;
  const figure = (amount: bigint) => <Figure amount={toDecimal(amount, currency)} currency={currency} bare />;
  const columns: Column<Case>[] = [
    { key: 'what', head: say('what'), cell: (of) => <CaseName of={of} /> },
    { key: 'total', head: say('total'), figure: true, cell: ({ total }) => figure(total) },
    {
      key: 'difference',
      head: say('difference'),
      figure: true,
      cell: ({ total }) => figure(total - stands),
    },
  ];
  return (
    <Table caption={say('title')} captionUnseen columns={columns} rows={cases} rowKey={({ name }) => name} />
  );
}

function CaseName({ of: { name, at, why } }: { of: Case }) {
  const text = at?.toString() ?? '';
  const said = at ? { day: sayDay(text, 'weekday'), time: sayTime(text) } : {};
  return (
    <span className="what-if-case">
      <span>{say(name, said)}</span>
      {why.length > 0 && <span className="aside">{why.join('; ')}</span>}
    </span>
  );
}
