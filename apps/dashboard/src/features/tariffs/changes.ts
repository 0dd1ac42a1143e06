// What sets one version of a tariff apart from another: clause by clause in its sentences, and in what it comes to.

import { type Currency, money, subtract, toDecimal } from '@colla/money';
import { PAYER, sentenceOf, type Tariff } from '@colla/rates';
import { tariffs as say } from '../../catalogue/tariffs.ts';

/** A clause that says something else than before; `was` is missing where it is new, `is` where it has gone. */
export interface Change {
  readonly clause: string;
  readonly how: 'added' | 'changed' | 'removed';
  readonly was?: string;
  readonly is?: string;
}

/** What changed, in the order of the tariff as it is now; clauses that have gone stand last. */
export function changesBetween(before: Tariff, now: Tariff, locale: string): Change[] {
  const was = sentencesBy(before, locale);
  const is = sentencesBy(now, locale);
  const stands = [...is].flatMap(([clause, sentence]): Change[] => {
    const earlier = was.get(clause);
    if (earlier === undefined) return [{ clause, how: 'added', is: sentence }];
    return earlier === sentence ? [] : [{ clause, how: 'changed', was: earlier, is: sentence }];
  });
  const gone = [...was]
    .filter(([clause]) => !is.has(clause))
    .map(([clause, was]): Change => ({ clause, how: 'removed', was }));
  return [...stands, ...gone];
}

/** Sentences by clause; who pays belongs to what a clause says. */
function sentencesBy(tariff: Tariff, locale: string): Map<string, string> {
  return new Map(
    tariff.clauses.map((clause) => {
      const sentence = sentenceOf(clause, { locale, currency: tariff.currency });
      const { payer } = clause;
      return [clause.id, payer === PAYER ? sentence : say('sentencePaid', { sentence, payer })];
    }),
  );
}

/** What one amount is above another, as decimal text; below it, with a minus. */
export function aboveBy(now: bigint, before: bigint, currency: Currency): string {
  return toDecimal(subtract(money(now, currency), money(before, currency)).amount, currency);
}
