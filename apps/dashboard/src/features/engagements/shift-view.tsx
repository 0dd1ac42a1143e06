// Whose wish it is that an agreed call moves, and what that would come to, before it is kept.
import { localTime, span, Temporal } from '@colla/calendar';
import { toDecimal } from '@colla/money';
import { readTariff, type Tariff } from '@colla/rates';
import { refused } from '@colla/refusal';
import type { EngagementWholeJson, OrganisationJson } from '@colla/wire';
import type { ReactNode } from 'react';
import { engagements as say } from '../../catalogue/engagements.ts';
import { sayMoney } from '../../locale.ts';
import { DayField, Figure, Options, TimeField } from '../../ui/index.ts';
import { type CallRow, plannedOf } from './call-row.ts';
import './engagement.css';
import { StatementAmount, type Under } from './explaining.tsx';
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
  engagement: EngagementWholeJson;
  organisation: OrganisationJson;
  call: string;
  row: CallRow;
  word: WordOfShift;
}

export function ShiftView({ of }: { of: Asking }) {
  const { engagement, organisation } = of;
  const read = engagement.agreement && readTariff(engagement.agreement.written);
  const tariff = read && !refused(read) ? read : undefined;
  const shifted = tariff && shiftedIn(of, tariff);
  return (
    <div aria-live="polite">
      {shifted && <Consequence of={shifted} under={{ tariff, engagement, organisation }} />}
    </div>
  );
}

/** Nothing to show while the new times or the word cannot be read. */
function shiftedIn(
  { engagement, organisation, call, row, word }: Asking,
  tariff: Tariff,
): Shifted | undefined {
  const to = span(plannedOf(row));
  const at = localTime(word.on, word.at, word.zone);
  if (refused(to) || refused(at)) return undefined;
  const by = word.by === 'nobody' ? undefined : word.by;
  const now = Temporal.Now.zonedDateTimeISO(organisation.zone);
  const terms = { tariff, locale: organisation.locale };
  return shiftOf(factsOf(engagement, organisation), terms, { call, to, at, by }, now);
}

function Consequence({ of, under }: { of: Shifted; under: Under }) {
  const { before, after, changes } = of;
  const { currency } = before;
  if (before.total === after.total && changes.length === 0)
    return <p>{say('shiftNothing', { total: sayMoney(toDecimal(before.total, currency), currency) })}</p>;
  const speak = new Set(changes.map(({ clause }) => clause));
  const sentences = under.engagement.agreement?.sentences.filter(({ clause }) => speak.has(clause)) ?? [];
  return (
    <>
      <dl className="engagement-sums">
        <Sum name={say('shiftBefore')}>
          <StatementAmount what={say('shiftBefore')} of={before} under={under} />
        </Sum>
        {changes.map(({ key, what, arithmetic, more }) => (
          <Sum key={key} name={what} told={arithmetic}>
            <Figure amount={toDecimal(more, currency)} currency={currency} />
          </Sum>
        ))}
        <TaxSum of={of} />
        <Sum name={say('shiftAfter')} whole>
          <StatementAmount what={say('shiftAfter')} of={after} under={under} />
        </Sum>
      </dl>
      {sentences.map(({ clause, sentence }) => (
        <blockquote key={clause} className="engagement-clause">
          {sentence}
        </blockquote>
      ))}
    </>
  );
}

/** Tax inside the prices is in the lines already. */
function TaxSum({ of: { before, after, changes } }: { of: Shifted }) {
  const tax = after.total - before.total - changes.reduce((sum, { more }) => sum + more, 0n);
  if (tax === 0n) return null;
  return (
    <Sum name={say('taxesDiffer')}>
      <Figure amount={toDecimal(tax, before.currency)} currency={before.currency} />
    </Sum>
  );
}

interface SumProps {
  name: string;
  told?: string;
  whole?: boolean;
  children: ReactNode;
}

function Sum({ name, told, whole = false, children }: SumProps) {
  return (
    <div className={whole ? 'engagement-whole' : undefined}>
      <dt>
        {name}
        {told && <span className="aside engagement-told">{told}</span>}
      </dt>
      <dd>{children}</dd>
    </div>
  );
}
