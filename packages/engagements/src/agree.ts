// The payer says yes: what was accepted is frozen from then on.

import { Temporal } from '@colla/calendar';
import type { Call } from '@colla/hours';
import { type AgreedCall, sentencesOf } from '@colla/rates';
import { type OrRefusal, Refusal, refused } from '@colla/refusal';
import {
  type Agreed,
  type Agreement,
  allowed,
  type Engagement,
  type EngagementFacts,
  type Quote,
} from './engagement.ts';
import { hasLapsed, holdLapsed, isOffered, taken } from './hold.ts';
import { type House, statementUnder } from './statement.ts';

/** Who says yes and when, and what is known that day of the place and of the payer's other engagements. */
interface Yes extends House {
  readonly id: string;
  readonly at: Temporal.ZonedDateTime;
  readonly acceptedBy: string;
}

/**
 * The payer says yes: the tariff version, its sentences, the calls, the deposit, holidays and terms are frozen, and every
 * call that is offered without a condition is agreed. Refuses a quote that has lapsed, and a hold that has.
 */
export function agree(engagement: Engagement, yes: Yes): OrRefusal<Agreed> {
  const open = allowed(engagement, 'agree', 'quoted');
  if (refused(open)) return open;
  const { quote, ...facts } = open;
  if (Temporal.ZonedDateTime.compare(yes.at, quote.validUntil) > 0) {
    const day = quote.validUntil.toPlainDate().toString();
    return new Refusal(
      'engagements/quote-lapsed',
      `The quote stood until ${day}. Quote again to agree on today's terms.`,
      { validUntil: day },
    );
  }
  const gone = facts.calls.find((call) => isOffered(call) && hasLapsed(call, yes.at));
  if (gone) return holdLapsed(gone);
  const calls = facts.calls.map(taken);
  const agreement = agreementOf({ ...facts, calls }, quote, yes);
  return { ...facts, calls, stage: 'agreed', agreement };
}

/** The deposit is reckoned once, on the fee of that day: what changes later changes nothing of it. */
function agreementOf(facts: EngagementFacts, { tariff }: Quote, yes: Yes): Agreement {
  const agreement: Agreement = {
    id: yes.id,
    tariff,
    sentences: sentencesOf(tariff, yes.locale),
    calls: facts.calls.filter(({ standing }) => standing.is === 'agreed').map(asAgreed),
    holidays: yes.holidays,
    terms: yes.terms,
    ...(yes.soFar === undefined ? {} : { soFar: yes.soFar }),
    agreedAt: yes.at,
    acceptedBy: yes.acceptedBy,
  };
  const { deposit } = statementUnder(facts, agreement, yes.at, yes);
  return deposit ? { ...agreement, deposit } : agreement;
}

function asAgreed({ id, kind, label, planned }: Call): AgreedCall {
  return { id, kind, ...(label === undefined ? {} : { label }), planned };
}
