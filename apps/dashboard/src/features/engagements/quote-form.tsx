// The version, the prices chosen in its bands, until when it stands; and what all that comes to, as one types.
import { Temporal } from '@colla/calendar';
import { versionInForce } from '@colla/rates';
import { refused } from '@colla/refusal';
import type { EngagementWholeJson, OrganisationJson, TariffWholeJson } from '@colla/wire';
import { useState } from 'react';
import { useSend } from '../../books.ts';
import { engagements as say } from '../../catalogue/engagements.ts';
import { asTyped, readTyped, sayDay, sayMoney } from '../../locale.ts';
import { Button, Choice, DayField, Form, MoneyField, type Said, useStatus } from '../../ui/index.ts';
import { factsOf } from './facts.ts';
import { callName, sayStanding } from './names.ts';
import { offerOf, openPrices } from './offer.ts';
import { conditional } from './perhaps.ts';
import { IfItHappens } from './perhaps-note.tsx';
import { pricedHere, type ShowPriced } from './priced.ts';
import { minutesOver, rollingIn, slipsInMinutes, typedMinutes } from './roll-over.ts';
import { RollOverFields } from './roll-over-fields.tsx';

interface QuoteFormProps {
  tariff: TariffWholeJson;
  engagement: EngagementWholeJson;
  organisation: OrganisationJson;
  show: ShowPriced;
  onClose: () => void;
}

interface QuoteDraft {
  readonly version: string;
  /** Prices as typed, by clause. */
  readonly typed: Readonly<Record<string, string>>;
  readonly validUntil: string;
}

/** Days for which a quote is offered to stand, where nobody says otherwise: our own habit, changed in the field. */
const DAYS_TO_DECIDE = 14;

export function QuoteForm({ tariff, engagement, organisation, show, onClose }: QuoteFormProps) {
  const { send, busy, problem } = useSend('quoteEngagement');
  const changing = useSend('changeEngagement');
  const [over, setOver] = useState(() => typedMinutes(engagement));
  const [now] = useState(() => Temporal.Now.zonedDateTimeISO(organisation.zone));
  const facts = { ...factsOf(engagement, organisation), rolledOver: minutesOver(over) };
  const [inForce] = useState(() => versionInForce(tariff.versions, facts.calls)?.version);
  const [draft, setDraft] = useState<QuoteDraft>(() => ({
    version: inForce === undefined ? '' : String(inForce),
    typed: {},
    validUntil: now.toPlainDate().add({ days: DAYS_TO_DECIDE }).toString(),
  }));
  const [wrong, setWrong] = useState<Said>();
  const status = useStatus();
  const version = tariff.versions.find(({ version }) => String(version) === draft.version);
  const prices = version ? openPrices(version) : [];
  const choices = choicesOf(draft.typed, tariff.currency);
  const offer = version && offerOf(facts, { written: version.written, choices }, now, organisation.locale);
  const outside = prices.find(({ clause }) => wrongAt(offer, clause) !== undefined);
  const change = (to: Partial<QuoteDraft>) => {
    setDraft({ ...draft, ...to });
    setWrong(undefined);
  };
  /** What comes over is a fact of the engagement, and kept before it is priced. */
  const keepOver = async () => {
    const rolledOver = minutesOver(over);
    if (JSON.stringify(rolledOver) === JSON.stringify(engagement.rolledOver)) return true;
    return (await changing.send({ params: { id: engagement.id }, body: { rolledOver } })) !== undefined;
  };
  const quoteIt = async () => {
    const { validUntil } = draft;
    if (!version || !offer) return setWrong({ detail: say('nameVersion'), pointer: '/version' });
    const body = { tariff: tariff.id, version: version.version, choices, validUntil };
    if (refused(offer)) return setWrong(sentenceOf(offer, outside?.clause));
    const errors = slipsInMinutes(over);
    if (errors[0]) return setWrong({ detail: errors[0].detail, errors });
    if (!(await keepOver())) return;
    if (!(await send({ params: { id: engagement.id }, body }))) return;
    const { total } = pricedHere(offer, engagement, organisation).statement;
    status(say('nowQuoted', { total: sayMoney(total, tariff.currency), day: sayDay(validUntil) }));
    onClose();
  };
  const foot = (
    <>
      <Button type="submit" kind="primary" busy={busy || changing.busy}>
        {say('quoteIt')}
      </Button>
      <Button onPress={onClose}>{say('giveUp')}</Button>
    </>
  );
  return (
    <Form problem={wrong ?? changing.problem ?? problem} onSubmit={quoteIt} foot={foot}>
      <VersionFields tariff={tariff} draft={draft} begun={inForce !== undefined} onChange={change} />
      {prices.map((open) => (
        <MoneyField
          key={open.clause}
          label={open.sentence}
          hint={say('band', {
            from: sayMoney(open.from, tariff.currency),
            to: sayMoney(open.to, tariff.currency),
          })}
          at={`/choices/${open.clause}`}
          wrong={wrongAt(offer, open.clause)}
          currency={tariff.currency}
          value={draft.typed[open.clause] ?? asTyped(open.price)}
          onType={(price) => change({ typed: { ...draft.typed, [open.clause]: price } })}
        />
      ))}
      {version && (
        <RollOverFields
          engagement={engagement}
          clauses={version.sentences.filter(({ clause }) => rollingIn(version.written).includes(clause))}
          typed={over}
          onChange={setOver}
        />
      )}
      <section aria-live="polite">
        <h3>{say('quoteComesTo')}</h3>
        {!offer ? (
          <p className="aside">{say('nameVersion')}</p>
        ) : refused(offer) ? (
          <p className="aside">{outside ? say('chooseInside') : offer.sentence}</p>
        ) : (
          <>
            {show(pricedHere(offer, engagement, organisation))}
            {conditional(engagement).map((call) => (
              <p key={call.id}>
                {callName(call)}, {sayStanding(call)}:{' '}
                <IfItHappens
                  call={call}
                  under={{ tariff: offer.tariff, engagement, organisation }}
                  asOf={now}
                />
              </p>
            ))}
          </>
        )}
      </section>
    </Form>
  );
}

/** The prices that can be read as amounts; the field says so of the others. */
function choicesOf(typed: QuoteDraft['typed'], currency: string): Record<string, string> {
  const read = Object.entries(typed).map(([clause, price]) => [clause, readTyped(price, currency)] as const);
  return Object.fromEntries(read.filter((pair): pair is [string, string] => typeof pair[1] === 'string'));
}

/** A refusal as the form shows it: beside the price it is about, where it is about one. */
function sentenceOf({ sentence }: { sentence: string }, clause: string | undefined): Said {
  return { detail: sentence, ...(clause === undefined ? {} : { pointer: `/choices/${clause}` }) };
}

/** A price outside its band is said beside its field; the refusal names its clause. */
function wrongAt(offer: ReturnType<typeof offerOf> | undefined, clause: string): string | undefined {
  return offer && refused(offer) && offer.facts.clause === clause ? offer.sentence : undefined;
}

interface VersionFieldsProps {
  tariff: TariffWholeJson;
  draft: QuoteDraft;
  /** False where the tariff begins after the first call. */
  begun: boolean;
  onChange: (to: Partial<QuoteDraft>) => void;
}

function VersionFields({ tariff, draft, begun, onChange }: VersionFieldsProps) {
  const options = tariff.versions.map(({ version, from }) => ({
    value: String(version),
    label: say('versionFrom', { version, day: sayDay(from) }),
  }));
  return (
    <div className="fields">
      {(options.length > 1 || !begun) && (
        <Choice
          label={say('version')}
          hint={begun ? undefined : say('notYetBegun')}
          at="/version"
          value={draft.version}
          options={options}
          onChoose={(version) => onChange({ version, typed: {} })}
        />
      )}
      <DayField
        label={say('validUntil')}
        at="/validUntil"
        value={draft.validUntil}
        onType={(validUntil) => onChange({ validUntil })}
      />
    </div>
  );
}
