// Why each answer to “what if?” is what it is: the statement that was made for it, and what lies between two.

import { toDecimal } from '@colla/money';
import type { LateCharge } from '@colla/rates';
import { headWord } from '../../catalogue/engagements.ts';
import { whatIf as say } from '../../catalogue/what-if.ts';
import { summed, takenOff, type Why } from '../../ui/index.ts';
import type { Case } from './what-if.ts';
import { partsOf } from './what-if-moments.ts';

/** How the page explains a whole statement; features do not know one another. */
export type WholeWhy = (of: Case['statement']) => Why;

export function sayCase({ name, at, days }: Case): string {
  const when = at ? partsOf(at) : {};
  return say(name, days === undefined ? when : { ...when, count: days });
}

/** What it comes to: the statement, and what is charged on top for paying late. */
export function caseWhy(of: Case, whole: WholeWhy, sentenceOf: (clause: string) => string | undefined): Why {
  const what = sayCase(of);
  const facts = of.charges.length > 0 ? [] : of.why.map(headWord);
  const statement = { ...whole(of.statement), facts };
  if (of.charges.length === 0) return { ...statement, what };
  const { currency } = of.statement;
  const charges = of.charges.map((charge) => chargeWhy(charge, currency, sentenceOf(charge.clause)));
  const parts = [{ ...statement, what: say('statement') }, ...charges];
  const total = { what, amount: toDecimal(of.total, currency), currency };
  return summed(total, parts);
}

function chargeWhy(
  { total, days, arithmetic }: LateCharge,
  currency: Case['statement']['currency'],
  sentence: string | undefined,
): Why {
  return {
    what: say('latePayment', { count: days }),
    amount: toDecimal(total, currency),
    currency,
    sentence,
    facts: [say('daysLate', { count: days })],
    arithmetic,
  };
}

/** What a case costs more, or less, than if all goes as agreed. */
export function differenceWhy(of: Case, stands: Case, whyOf: (of: Case) => Why): Why {
  const { currency } = of.statement;
  const difference = {
    what: say('differenceOf', { what: sayCase(of) }),
    amount: toDecimal(of.total - stands.total, currency),
    currency,
  };
  return summed(difference, [whyOf(of), takenOff(whyOf(stands))]);
}
