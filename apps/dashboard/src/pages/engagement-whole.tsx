// One engagement put together from what its features show; which dialog is open is known here.
import { Temporal } from '@colla/calendar';
import type { EngagementWholeJson, OrganisationJson, StatementAnswerJson } from '@colla/wire';
import { type ReactNode, useState } from 'react';
import { useSearch } from 'wouter';
import { useAnswer } from '../books.ts';
import { engagements as say } from '../catalogue/engagements.ts';
import { BlockNote } from '../features/engagements/block-note.tsx';
import { isBlocked } from '../features/engagements/blocked.ts';
import { CallList } from '../features/engagements/call-list.tsx';
import { WithExplaining } from '../features/engagements/explaining.tsx';
import { callOf } from '../features/engagements/facts.ts';
import { Journeys } from '../features/engagements/journeys.tsx';
import { callMoves } from '../features/engagements/moves.ts';
import { pricedBy } from '../features/engagements/priced.ts';
import { Programme } from '../features/engagements/programme.tsx';
import { rollingUnder } from '../features/engagements/roll-over-dialog.tsx';
import { Stages } from '../features/engagements/stages.tsx';
import { belowNought, isMore, stepReached } from '../features/engagements/steps.ts';
import { WhatIf } from '../features/engagements/what-if-view.tsx';
import { StatementView } from '../features/statements/statement-view.tsx';
import { ifCancelledWhy, linesWhy, statementWhy } from '../features/statements/whys.ts';
import { sayDay } from '../locale.ts';
import { Button, Page, Part, Shown } from '../ui/index.ts';
import { type Asked, EngagementDialog } from './engagement-dialog.tsx';
import { Money } from './engagement-money.tsx';
import { Next } from './engagement-next.tsx';

interface WholeProps {
  engagement: EngagementWholeJson;
  organisation: OrganisationJson;
}

/** An inquiry has no price yet; any other stage is asked for its statement. */
export function EngagementWhole(props: WholeProps) {
  const { stage } = props.engagement;
  const isPriced = stage !== 'inquiry' && stage !== 'declined' && stage !== 'lapsed';
  const statement = <p className="aside">{say(stage === 'inquiry' ? 'statementNone' : 'statementClosed')}</p>;
  return (
    <WithExplaining how={HOW}>
      {isPriced ? <Priced {...props} /> : <Whole {...props} answer={undefined} statement={statement} />}
    </WithExplaining>
  );
}

const HOW = { whole: statementWhy, cancelled: ifCancelledWhy, lines: linesWhy };

function Priced(props: WholeProps) {
  const answer = useAnswer('getStatement', { params: { id: props.engagement.id }, query: {} });
  const statement = (
    <Shown answer={answer} what={say('fetchingStatement')}>
      {(value) => <StatementView of={pricedBy(value, props.engagement, props.organisation)} />}
    </Shown>
  );
  const value = answer.is === 'here' ? answer.value : undefined;
  return <Whole {...props} answer={value} statement={statement} />;
}

interface AllProps extends WholeProps {
  answer: StatementAnswerJson | undefined;
  statement: ReactNode;
}

function Whole({ engagement, organisation, answer, statement }: AllProps) {
  const [asked, setAsked] = useState<Asked>();
  const sought = new URLSearchParams(useSearch()).get('call') ?? undefined;
  const now = Temporal.Now.zonedDateTimeISO(organisation.zone);
  const today = now.toPlainDate().toString();
  const open = ['inquiry', 'quoted', 'agreed'].includes(engagement.stage);
  const toInvoice = (answer?.toInvoice ?? []).filter(({ total }) => isMore(total));
  const beyond = (answer?.toInvoice ?? []).filter(({ total }) => belowNought(total) !== undefined);
  return (
    <Page
      title={engagement.title}
      under={<Under engagement={engagement} leftToInvoice={toInvoice.length > 0} />}
      actions={<Next engagement={engagement} toInvoice={toInvoice} now={now} onAsk={setAsked} />}
    >
      <div className="engagement">
        <div className="engagement-played">
          <Part
            title={say('callsTitle')}
            actions={open && <Button onPress={() => setAsked({ is: 'add a call' })}>{say('addCall')}</Button>}
          >
            <BlockNote engagement={engagement} />
            <CallList
              engagement={engagement}
              sought={sought}
              calls={inOrder(engagement).map((call) => ({
                call,
                moves: callMoves(callOf(call), engagement.stage, now, isBlocked(engagement, call)),
                begun: Temporal.Instant.compare(callOf(call).planned.start.toInstant(), now.toInstant()) <= 0,
              }))}
              onMove={(call, move) => setAsked({ is: 'call', move, call })}
            />
          </Part>
          <Programme
            engagement={engagement.id}
            under={engagement.agreement?.written}
            programme={engagement.programme}
            today={today}
            open={open}
          />
          <Journeys engagement={engagement} today={today} open={open} />
        </div>
        <div className="engagement-costs">
          <Part title={say('statement')}>
            <Terms engagement={engagement} />
            {statement}
          </Part>
          <WhatIf engagement={engagement} organisation={organisation} now={now} />
          <Money
            engagement={engagement}
            today={today}
            reckoned={answer && pricedBy(answer, engagement, organisation)}
            toInvoice={toInvoice}
            beyond={beyond}
            onAsk={setAsked}
          />
          {open && <Ending engagement={engagement} onAsk={setAsked} />}
        </div>
      </div>
      {asked && (
        <EngagementDialog
          asked={asked}
          engagement={engagement}
          organisation={organisation}
          answer={answer}
          today={today}
          onAsk={setAsked}
          onClose={() => setAsked(undefined)}
        />
      )}
    </Page>
  );
}

function inOrder({ calls }: EngagementWholeJson) {
  const at = (start: string) => Temporal.ZonedDateTime.from(start).epochMilliseconds;
  return [...calls].sort((a, b) => at(a.start) - at(b.start));
}

function Under({ engagement, leftToInvoice }: { engagement: EngagementWholeJson; leftToInvoice: boolean }) {
  const { soloistParty, institutionParty, parties, soloist } = engagement;
  const about = [soloist.instrument, soloist.level, soloist.study, soloist.membership]
    .filter(Boolean)
    .join(', ');
  const who = [soloistParty, institutionParty].flatMap((id) => (id === undefined ? [] : (parties[id] ?? [])));
  return (
    <>
      <p>{[...who, about].filter(Boolean).join(' · ')}</p>
      {engagement.note && <p className="aside">{engagement.note}</p>}
      <Stages stage={engagement.stage} reached={stepReached(engagement, leftToInvoice)} />
    </>
  );
}

/** Under which tariff, since when, by whose word. */
function Terms({ engagement: { quote, agreement } }: { engagement: EngagementWholeJson }) {
  const under = agreement ?? quote;
  if (!under) return null;
  const { name: tariff, version } = under.tariff;
  const sentence = agreement
    ? say('agreedOn', { name: agreement.acceptedBy, day: sayDay(agreement.agreedAt), tariff, version })
    : say('quotedUntil', { tariff, version, day: sayDay(quote?.validUntil ?? '') });
  return <p className="aside">{sentence}</p>;
}

/** What is seldom done stands last: people change, or it comes to nothing. */
function Ending({ engagement, onAsk }: { engagement: EngagementWholeJson; onAsk: (asked: Asked) => void }) {
  const asked = engagement.stage === 'agreed' ? (['cancel'] as const) : (['decline', 'lapse'] as const);
  // Who pays in two roles has one address.
  const payerIds = [...new Set(Object.values(engagement.payers))];
  return (
    <Part title={say('ending')}>
      <div className="buttons">
        <Button onPress={() => onAsk({ is: 'people' })}>{say('changePeople')}</Button>
        {rollingUnder(engagement).length > 0 && (
          <Button onPress={() => onAsk({ is: 'roll over' })}>{say('rolledOver')}</Button>
        )}
        {payerIds.map((party) => (
          <Button key={party} onPress={() => onAsk({ is: 'address', party })}>
            {say('addressOf', { name: engagement.parties[party] ?? '' })}
          </Button>
        ))}
        {engagement.stage === 'quoted' && (
          <Button onPress={() => onAsk({ is: 'quote' })}>{say('quoteAgain')}</Button>
        )}
        {asked.map((is) => (
          <Button key={is} onPress={() => onAsk({ is })}>
            {say(is === 'cancel' ? 'cancelWhole' : is)}
          </Button>
        ))}
      </div>
    </Part>
  );
}
