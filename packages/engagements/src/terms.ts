// The terms into which a place divides its year.

import { season, Temporal } from '@colla/calendar';
import type { Term } from '@colla/rates';
import { type OrRefusal, Refusal, refused } from '@colla/refusal';

/**
 * The same terms, where each ends after it begins and none reaches into another. A name may come again, year after
 * year: a tariff that speaks of “autumn” means every one.
 */
export function termsApart(terms: readonly Term[]): OrRefusal<readonly Term[]> {
  for (const [index, term] of terms.entries()) {
    const whole = season({ id: '', ...term });
    if (refused(whole)) return whole.at(`/${index}`);
    const other = terms.slice(0, index).find((earlier) => meet(earlier, term));
    if (other) return overlap(other, term).at(`/${index}`);
  }
  return terms;
}

function meet(one: Term, other: Term): boolean {
  return !isBefore(one.to, other.from) && !isBefore(other.to, one.from);
}

function isBefore(one: Temporal.PlainDate, other: Temporal.PlainDate): boolean {
  return Temporal.PlainDate.compare(one, other) < 0;
}

function overlap(one: Term, other: Term): Refusal {
  const day = (isBefore(one.from, other.from) ? other.from : one.from).toString();
  return new Refusal(
    'organisations/terms-overlap',
    `“${one.name}” and “${other.name}” both hold ${day}, and a day is of one term only. Let one end before the other begins.`,
    { one: one.name, other: other.name, day },
    '/from',
  );
}
