// Whose wish it is that an agreed call moves, and what that would come to, before it is kept.
import { localTime, span, Temporal } from '@colla/calendar';
import { type Currency, toDecimal } from '@colla/money';
import { readTariff } from '@colla/rates';
import { refused } from '@colla/refusal';
import type { EngagementJson, OrganisationJson } from '@colla/wire';
import { engagements as say } from '../../catalogue/engagements.ts';
import { sayMoney } from '../../locale.ts';
import { DayField, Figure, Options, TimeField } from '../../ui/index.ts';
import { type CallRow, plannedOf } from './call-row.ts';
import './engagement.css';
import { factsOf } from './facts.ts';
import { type Shifted, shiftOf } from './moving.ts';
import type { WordOfShift } from './shift-word.ts';

interface ShiftFieldsProps {
  word: WordOfShift;
  onChange: (to: Partial<WordOfShift>) => void;
}

const wishes = (['payer', 'pianist', 'nobody'] as const).map((value) => ({
  value,
  label: say(`wish_${value}`),
}));

export function ShiftFields({ word, onChange }: ShiftFieldsProps) {
  return (
    <>
      <Options
        label={say('wish')}
        at="/moved/by"
        value={word.by}
        options={wishes}
        onChoose={(by) => onChange({ by })}
      />
      {word.by !== 'nobody' && (
        <div className="fields">
          <DayField label={say('wordOn')} at="/moved/on" value={word.on} onType={(on) => onChange({ on })} />
          <TimeField label={say('wordAt')} at="/moved/at" value={word.at} onType={(at) => onChange({ at })} />
        </div>
      )}
    </>
  );
}

interface Asking {
  engagement: EngagementJson;
  organisation: OrganisationJson;
  call: string;
  row: CallRow;
  word: WordOfShift;
}

export function ShiftView({ of }: { of: Asking }) {
  const shifted = shiftedIn(of);
  return <div aria-live="polite">{shifted && <Consequence of={shifted} engagement={of.engagement} />}</div>;
}

/** Nothing to show while the new times or the word cannot be read. */
function shiftedIn({ engagement, organisation, call, row, word }: Asking): Shifted | undefined {
  const tariff = engagement.agreement && readTariff(engagement.agreement.written);
  const to = span(plannedOf(row));
  const at = localTime(word.on, word.at, word.zone);
  if (!tariff || refused(tariff) || refused(to) || refused(at)) return undefined;
  const by = word.by === 'nobody' ? undefined : word.by;
  const now = Temporal.Now.zonedDateTimeISO(organisation.zone);
  const terms = { tariff, locale: organisation.locale };
  return shiftOf(factsOf(engagement, organisation), terms, { call, to, at, by }, now);
}

function Consequence({ of, engagement }: { of: Shifted; engagement: EngagementJson }) {
  const { before, after, changes } = of;
  const { currency } = before;
  if (before.total === after.total && changes.length === 0)
    return <p>{say('shiftNothing', { total: sayMoney(toDecimal(before.total, currency), currency) })}</p>;
  // Tax inside the prices is in the lines already.
  const tax = after.total - before.total - changes.reduce((sum, { more }) => sum + more, 0n);
  const speak = new Set(changes.map(({ clause }) => clause));
  const sentences = engagement.agreement?.sentences.filter(({ clause }) => speak.has(clause)) ?? [];
  return (
    <>
      <dl className="engagement-sums">
        <Sum name={say('shiftBefore')} amount={before.total} currency={currency} />
        {changes.map(({ key, what, arithmetic, more }) => (
          <Sum key={key} name={what} told={arithmetic} amount={more} currency={currency} />
        ))}
        {tax !== 0n && <Sum name={say('taxesDiffer')} amount={tax} currency={currency} />}
        <Sum name={say('shiftAfter')} amount={after.total} currency={currency} whole />
      </dl>
      {sentences.map(({ clause, sentence }) => (
        <blockquote key={clause} className="engagement-clause">
          {sentence}
        </blockquote>
      ))}
    </>
  );
}

interface SumProps {
  name: string;
  told?: string;
  amount: bigint;
  currency: Currency;
  whole?: boolean;
}

function Sum({ name, told, amount, currency, whole = false }: SumProps) {
  return (
    <div className={whole ? 'engagement-whole' : undefined}>
      <dt>
        {name}
        {told && <span className="aside engagement-told">{told}</span>}
      </dt>
      <dd>
        <Figure amount={toDecimal(amount, currency)} currency={currency} />
      </dd>
    </div>
  );
}
