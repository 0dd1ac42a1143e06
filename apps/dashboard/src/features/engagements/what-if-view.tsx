// What if: what one call would come to cancelled, moved, longer, with late music or paid late; and what cancelling it
// all costs when.
import type { Temporal } from '@colla/calendar';
import {
  cancellationCurve,
  type Facts,
  readTariff,
  type Statement,
  statement,
  type Terms,
} from '@colla/rates';
import { refused } from '@colla/refusal';
import type { EngagementWholeJson, OrganisationJson } from '@colla/wire';
import { useMemo, useState } from 'react';
import { whatIf as say } from '../../catalogue/what-if.ts';
import { Choice, Opens, Part, type Why } from '../../ui/index.ts';
import { CurveView } from './curve-view.tsx';
import { type Under, useExplaining } from './explaining.tsx';
import { factsOf } from './facts.ts';
import { callName } from './names.ts';
import { callsAhead, casesOf } from './what-if.ts';
import { askedOfCall, debtsOf, questionOf, startAsking } from './what-if-asked.ts';
import './what-if.css';
import { WhatIfFields } from './what-if-fields.tsx';
import { WhatIfTable } from './what-if-table.tsx';

interface WhatIfProps {
  engagement: EngagementWholeJson;
  organisation: OrganisationJson;
  now: Temporal.ZonedDateTime;
}

/** Only for what is agreed and still ahead. */
export function WhatIf({ engagement, organisation, now }: WhatIfProps) {
  const { agreement } = engagement;
  const { locale } = organisation;
  const read = useMemo(() => agreement && readTariff(agreement.written), [agreement]);
  const facts = useMemo(() => factsOf(engagement, organisation), [engagement, organisation]);
  if (!read || refused(read) || engagement.stage !== 'agreed') return null;
  if (callsAhead(facts, now).length === 0) return null;
  return (
    <Part title={say('title')}>
      <p className="aside">{say('under')}</p>
      <Answers
        facts={facts}
        terms={{ tariff: read, locale }}
        now={now}
        under={{ tariff: read, engagement, organisation }}
      />
    </Part>
  );
}

interface AnswersProps {
  facts: Facts;
  terms: Terms;
  now: Temporal.ZonedDateTime;
  under: Under;
}

function Answers({ facts, terms, now, under }: AnswersProps) {
  const { engagement } = under;
  const { whole, cancelled } = useExplaining(under);
  const ahead = callsAhead(facts, now);
  const [next] = ahead;
  const [draft, setDraft] = useState(() => next && startAsking(next));
  const call = ahead.find(({ id }) => id === draft?.call) ?? next;
  if (!draft || !call || !next) return null;
  const options = engagement.calls
    .filter(({ id }) => ahead.some((call) => call.id === id))
    .map((call) => ({ value: call.id, label: callName(call) }));
  const choose = (id: string) => {
    const chosen = ahead.find((call) => call.id === id);
    if (chosen) setDraft(askedOfCall(draft, chosen));
  };
  const at = now.withTimeZone(call.planned.start.timeZoneId);
  const debts = debtsOf(engagement, { facts, statement: statement(facts, terms, now) }, now.toPlainDate());
  return (
    <>
      {options.length > 1 && (
        <Choice label={say('call')} value={call.id} options={options} onChoose={choose} />
      )}
      <Opens summary={<span>{say('otherwise')}</span>}>
        <WhatIfFields asked={draft} onChange={(to) => setDraft({ ...draft, ...to })} />
      </Opens>
      <WhatIfTable
        cases={casesOf(facts, terms, questionOf(draft, call, debts), at)}
        whole={whole}
        sentences={engagement.agreement?.sentences ?? []}
      />
      <Curve facts={facts} terms={terms} now={now} until={next.planned.start} cancelled={cancelled} />
    </>
  );
}

interface CurveProps extends Omit<AnswersProps, 'under'> {
  /** When the first call begins. */
  until: Temporal.ZonedDateTime;
  cancelled: (of: Statement) => Why;
}

function Curve({ facts, terms, now, until, cancelled }: CurveProps) {
  const from = now.withTimeZone(until.timeZoneId);
  // Once it begins it cannot be cancelled any more.
  const curve = cancellationCurve(facts, terms, { from, until: until.subtract({ milliseconds: 1 }) });
  return (
    <CurveView
      curve={curve}
      until={until}
      currency={terms.tariff.currency}
      whyOf={({ from }) => cancelled(statement(facts, terms, from))}
    />
  );
}
