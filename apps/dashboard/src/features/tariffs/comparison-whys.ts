// Why two tariffs come to what they come to on one engagement, clause by clause.

import { type Currency, fromDecimal, toDecimal } from '@colla/money';
import type { Statement, Tariff } from '@colla/rates';
import { granted } from '@colla/refusal';
import { tariffs as say } from '../../catalogue/tariffs.ts';
import { sayFact, summed, takenOff, type Why } from '../../ui/index.ts';
import { aboveBy } from './changes.ts';
import type { Charged, ComparedRow } from './comparison.ts';

export function nameOf({ name, version }: Pick<Tariff, 'name' | 'version'>): string {
  return `${name} (${version})`;
}

/** What one clause charges: its sentence, and line by line the facts and the arithmetic. */
export function chargedWhy({ title, sentence, amount, parts }: Charged, currency: Currency): Why {
  const of = parts.map(
    (part): Why => ({
      what: 'what' in part ? part.what : part.name,
      amount: toDecimal(part.amount, currency),
      currency,
      facts: 'facts' in part ? part.facts.map(sayFact) : [],
      arithmetic: part.arithmetic,
    }),
  );
  const total = { what: title, amount: toDecimal(amount, currency), currency };
  return summed({ ...total, sentence }, of);
}

interface Side {
  readonly tariff: Tariff;
  readonly statement: Statement | undefined;
}

/** What a tariff comes to: what its clauses charge. */
export function totalWhy(
  rows: readonly ComparedRow[],
  side: 'one' | 'other',
  { tariff, statement }: Side,
): Why {
  const { currency } = tariff;
  const parts = rows.flatMap((row) => {
    const charged = row[side];
    return charged?.amount ? [chargedWhy(charged, currency)] : [];
  });
  const total = { what: nameOf(tariff), amount: toDecimal(statement?.total ?? 0n, currency), currency };
  return summed(total, parts);
}

/** By how much the other is above the one; a clause that charges nothing counts as nought. */
export function differenceWhy(one: Why | undefined, other: Why | undefined, currency: Currency): Why {
  const [first, second] = [one, other].map((why) => (why ? granted(fromDecimal(why.amount, currency)) : 0n));
  const difference = {
    what: say('difference'),
    amount: aboveBy(second ?? 0n, first ?? 0n, currency),
    currency,
  };
  const parts = [other, one && takenOff(one)].filter((why) => why !== undefined);
  return summed(difference, parts);
}
