// Word came that a call, or everything still ahead, will not take place; or nobody came. What it leaves to pay is
// shown before it is said.
import { localTime, Temporal } from '@colla/calendar';
import { REASONS, type Reason, type Who } from '@colla/hours';
import { readTariff, type Tariff } from '@colla/rates';
import { refused } from '@colla/refusal';
import type { CallJson, EngagementJson, EngagementWholeJson, OrganisationJson } from '@colla/wire';
import { useState } from 'react';
import { useSend } from '../../books.ts';
import { headWord, engagements as say } from '../../catalogue/engagements.ts';
import {
  Button,
  Choice,
  DayField,
  Dialog,
  Filled,
  Form,
  Options,
  TimeField,
  useStatus,
} from '../../ui/index.ts';
import { LinesAmount, StatementAmount, type Under } from './explaining.tsx';
import { factsOf } from './facts.ts';
import { type Fall, fallOf } from './falling.ts';
import { callName, sayReason } from './names.ts';
import { clock } from './spans.ts';

interface FallDialogProps {
  engagement: EngagementWholeJson;
  organisation: OrganisationJson;
  /** One call; everything that has not begun where left out. */
  call?: CallJson | undefined;
  /** Nobody came: there was no word. */
  missed?: boolean;
  onClose: () => void;
}

interface WordDraft {
  readonly on: string;
  readonly at: string;
  readonly by: Who;
  readonly reason: Reason;
}

export function FallDialog({ engagement, organisation, call, missed = false, onClose }: FallDialogProps) {
  const zone = call ? Temporal.ZonedDateTime.from(call.start).timeZoneId : organisation.zone;
  const [word, setWord] = useState<WordDraft>(() => wordNow(zone));
  const sending = useFalling(engagement.id, call?.id, missed);
  const status = useStatus();
  const what = call ? callName(call) : say('whole');
  const keep = async () => {
    if (!(await sending.send({ ...word, zone }))) return;
    status(say(missed ? 'nowMissed' : 'nowCancelled', { what }));
    onClose();
  };
  const preview = previewOf(engagement, organisation, { word, zone, call: call?.id, missed });
  const foot = (
    <>
      <Button type="submit" kind="destructive" busy={sending.busy}>
        {say(missed ? 'missIt' : 'fallIt')}
      </Button>
      <Button onPress={onClose}>{say('giveUp')}</Button>
    </>
  );
  return (
    <Dialog title={say(missed ? 'missTitle' : 'fallTitle', { what })} onClose={onClose}>
      <Form problem={sending.problem} onSubmit={keep} foot={foot}>
        <WordFields word={word} missed={missed} onChange={(to) => setWord({ ...word, ...to })} />
        <FallView preview={preview} engagement={engagement} organisation={organisation} />
      </Form>
    </Dialog>
  );
}

function wordNow(zone: string): WordDraft {
  const now = Temporal.Now.zonedDateTimeISO(zone);
  return { on: now.toPlainDate().toString(), at: clock(now), by: 'payer', reason: 'other' };
}

/** The one of three routes that says it. */
function useFalling(id: string, call: string | undefined, missed: boolean) {
  const cancelCall = useSend('cancelCall');
  const missCall = useSend('missCall');
  const cancelEngagement = useSend('cancelEngagement');
  const { busy, problem } = call === undefined ? cancelEngagement : missed ? missCall : cancelCall;
  const send = (body: WordDraft & { zone: string }) => {
    if (call === undefined) return cancelEngagement.send({ params: { id }, body });
    if (!missed) return cancelCall.send({ params: { id, call }, body });
    return missCall.send({ params: { id, call }, body: { by: body.by, reason: body.reason } });
  };
  return { send, busy, problem };
}

interface Preview {
  readonly fall: Fall;
  readonly tariff: Tariff;
}

/** What it would leave; nothing to show before an agreement, or while the instant cannot be read. */
function previewOf(
  engagement: EngagementJson,
  organisation: OrganisationJson,
  said: { word: WordDraft; zone: string; call: string | undefined; missed: boolean },
): Preview | undefined {
  const tariff = engagement.agreement ? readTariff(engagement.agreement.written) : undefined;
  const at = localTime(said.word.on, said.word.at, said.zone);
  if (tariff === undefined || refused(tariff) || refused(at)) return undefined;
  const { by, reason } = said.word;
  const word = {
    by,
    reason,
    ...(said.missed ? {} : { at }),
    ...(said.call === undefined ? {} : { call: said.call }),
  };
  const now = Temporal.Now.zonedDateTimeISO(said.zone);
  const terms = { tariff, locale: organisation.locale };
  return { tariff, fall: fallOf(factsOf(engagement, organisation), terms, word, now) };
}

interface FallViewProps extends Pick<FallDialogProps, 'engagement' | 'organisation'> {
  preview: Preview | undefined;
}

function FallView({ preview, engagement, organisation }: FallViewProps) {
  if (!preview) return engagement.agreement ? null : <p>{say('fallFree')}</p>;
  const { fall, tariff } = preview;
  const { before, after, why, clauses } = fall;
  const sentences = engagement.agreement?.sentences.filter(({ clause }) => clauses.includes(clause)) ?? [];
  const under = { tariff, engagement, organisation };
  return (
    <div aria-live="polite">
      <dl className="engagement-sums">
        <div>
          <dt>{say('fallBefore')}</dt>
          <dd>
            <StatementAmount what={say('fallBefore')} of={before} under={under} />
          </dd>
        </div>
        <div className="engagement-whole">
          <dt>{say('fallAfter')}</dt>
          <dd>
            <StatementAmount what={say('fallAfter')} of={after} under={under} />
          </dd>
        </div>
      </dl>
      <Cost fall={fall} under={under} />
      {sentences.map(({ clause, sentence }) => (
        <blockquote key={clause} className="engagement-clause">
          {sentence}
        </blockquote>
      ))}
      {why.length > 0 && <p className="aside">{say('fallWhy', { why: why.map(headWord).join('; ') })}</p>}
    </div>
  );
}

/** What the lines for what falls come to; lines that other calls share are only named. */
function Cost({ fall, under }: { fall: Fall; under: Under }) {
  const { after, own, shared, cost } = fall;
  const taxed = after.taxes.some(({ inside, amount }) => !inside && amount !== 0n);
  const text = cost < 0n ? 'fallTakesOff' : taxed ? 'fallCostsTaxed' : 'fallCosts';
  const together = [...new Set(shared.map(({ what }) => say('sharedLine', { what })))].join(', ');
  return (
    <>
      {cost !== 0n && (
        <p>
          <Filled
            text={say(text)}
            values={{
              amount: <LinesAmount what={say('fallCostOf')} of={after} lines={own} under={under} said />,
            }}
          />
        </p>
      )}
      {shared.length > 0 && <p>{say('fallShared', { lines: together })}</p>}
      {cost === 0n && shared.length === 0 && <p>{say('fallCostsNothing')}</p>}
    </>
  );
}

interface WordFieldsProps {
  word: WordDraft;
  missed: boolean;
  onChange: (to: Partial<WordDraft>) => void;
}

const whos = (['payer', 'pianist'] as const).map((value) => ({ value, label: say(`who_${value}`) }));
const reasons = REASONS.map((value) => ({ value, label: sayReason(value) }));

function WordFields({ word, missed, onChange }: WordFieldsProps) {
  return (
    <>
      <Options
        label={say('who')}
        at="/by"
        value={word.by}
        options={whos}
        onChoose={(by) => onChange({ by })}
      />
      <Choice
        label={say('reason')}
        at="/reason"
        value={word.reason}
        options={reasons}
        onChoose={(reason) => onChange({ reason })}
      />
      {!missed && (
        <div className="fields">
          <DayField label={say('wordOn')} at="/on" value={word.on} onType={(on) => onChange({ on })} />
          <TimeField label={say('wordAt')} at="/at" value={word.at} onType={(at) => onChange({ at })} />
        </div>
      )}
    </>
  );
}
