// What if: what one call would come to cancelled, moved, longer, with late music or paid late; and what cancelling it
// all costs when.
import type { Temporal } from '@colla/calendar';
import { cancellationCurve, type Facts, readTariff, statement, type Terms } from '@colla/rates';
import { refused } from '@colla/refusal';
import type { EngagementWholeJson, OrganisationJson } from '@colla/wire';
import { useMemo, useState } from 'react';
import { whatIf as say } from '../../catalogue/what-if.ts';
import { Choice, Opens, Part, type Why } from '../../ui/index.ts';
import { CurveView } from './curve-view.tsx';
import { factsOf } from './facts.ts';
import { callName } from './names.ts';
import { type Priced, pricedHere } from './priced.ts';
import { callsAhead, casesOf } from './what-if.ts';
import { askedOfCall, debtsOf, questionOf, startAsking } from './what-if-asked.ts';
import './what-if.css';
import { WhatIfFields } from './what-if-fields.tsx';
import { WhatIfTable } from './what-if-table.tsx';

/** How the page explains a statement, and what cancelling everything would leave of it. */
export interface WhatIfWhys {
  readonly whole: (of: Priced) => Why;
  readonly cancelled: (of: Priced) => Why;
}

interface WhatIfProps {
  engagement: EngagementWholeJson;
  organisation: OrganisationJson;
  now: Temporal.ZonedDateTime;
  whys: WhatIfWhys;
}

/** Only for what is agreed and still ahead. */
export function WhatIf({ engagement, organisation, now, whys }: WhatIfProps) {
  const { agreement } = engagement;
  const { locale } = organisation;
  const read = useMemo(() => agreement && readTariff(agreement.written), [agreement]);
  const facts = useMemo(() => factsOf(engagement, organisation), [engagement, organisation]);
  if (!read || refused(read) || engagement.stage !== 'agreed') return null;
  if (callsAhead(facts, now).length === 0) return null;
  const terms = { tariff: read, locale };
  const priced = (of: ReturnType<typeof statement>) =>
    pricedHere({ tariff: read, statement: of }, engagement, organisation);
  return (
    <Part title={say('title')}>
      <p className="aside">{say('under')}</p>
      <Answers engagement={engagement} facts={facts} terms={terms} now={now} priced={priced} whys={whys} />
    </Part>
  );
}

interface AnswersProps extends Pick<WhatIfProps, 'engagement' | 'now' | 'whys'> {
  facts: Facts;
  terms: Terms;
  priced: (of: ReturnType<typeof statement>) => Priced;
}

function Answers({ engagement, facts, terms, now, priced, whys }: AnswersProps) {
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
        whole={(of) => whys.whole(priced(of))}
        sentences={engagement.agreement?.sentences ?? []}
      />
      <Curve facts={facts} terms={terms} now={now} until={next.planned.start} priced={priced} whys={whys} />
    </>
  );
}

interface CurveProps extends Omit<AnswersProps, 'engagement'> {
  /** When the first call begins. */
  until: Temporal.ZonedDateTime;
}

function Curve({ facts, terms, now, until, priced, whys }: CurveProps) {
  const from = now.withTimeZone(until.timeZoneId);
  // Once it begins it cannot be cancelled any more.
  const curve = cancellationCurve(facts, terms, { from, until: until.subtract({ milliseconds: 1 }) });
  return (
    <CurveView
      curve={curve}
      until={until}
      currency={terms.tariff.currency}
      whyOf={({ from }) => whys.cancelled(priced(statement(facts, terms, from)))}
    />
  );
}
