// Taxes, worked out together: which charges each is on, and what it comes to for each payer.

import type { TaxSum } from './findings.ts';
import { CATEGORIES } from './line.ts';
import { baseOf, type Charged, idOf, type Levy, sayHow, taxOn } from './tax-amount.ts';
import type { Voice } from './voice.ts';

/** What each tax comes to for each payer, in the order of the taxes: each payer gets a document of their own. */
export function taxSums(levies: readonly Levy[], voice: Voice): TaxSum[] {
  const taxes = eachItsOwn(levies);
  return taxes.flatMap((levy) =>
    [...new Set(levy.charges.map(({ line }) => line.payer))].map((payer) => {
      const theirs = levy.charges.filter(({ line }) => line.payer === payer);
      return taxSum(levy, theirs, payer, { taxes, voice });
    }),
  );
}

/** Of several rates of one tax no two are on the same: the closer takes its charges, and leaves the others the rest. */
function eachItsOwn(levies: readonly Levy[]): readonly Levy[] {
  if (new Set(levies.map(({ name }) => name.toLowerCase())).size === levies.length) return levies;
  const taken = new Set<string>();
  const settled = new Map<string, Levy>();
  for (const levy of levies.toSorted((one, other) => one.closeness - other.closeness)) {
    const markOf = (charge: Charged) => `${levy.name.toLowerCase()} ${idOf(charge)}`;
    const charges = levy.charges.filter((charge) => !taken.has(markOf(charge)));
    for (const charge of charges) taken.add(markOf(charge));
    settled.set(levy.clause, {
      ...levy,
      limited: levy.limited || charges.length < levy.charges.length,
      charges,
    });
  }
  return levies.map((levy) => settled.get(levy.clause) ?? levy);
}

/** All taxes of the statement, and who reads of them. */
interface Round {
  readonly taxes: readonly Levy[];
  readonly voice: Voice;
}

function taxSum(levy: Levy, charges: readonly Charged[], payer: string, round: Round): TaxSum {
  const amount = taxOn(levy, charges, round.taxes);
  const { clause, name, rate, code, inside, wording } = levy;
  return {
    ...{ clause, name, rate, code, inside, payer },
    ...(wording === undefined ? {} : { wording }),
    ...(levy.limited
      ? { not: CATEGORIES.filter((kind) => !charges.some(({ line }) => line.category === kind)) }
      : {}),
    on: charges.map(({ line: { key }, amount }) => ({ key, amount })),
    base: baseOf(levy, charges, round.taxes),
    amount,
    arithmetic: `${sayHow(levy, charges, round)} = ${round.voice.money(amount)}`,
  };
}
