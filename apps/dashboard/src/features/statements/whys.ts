// Why each amount of a statement is what it is.

import type { StatementJson, StatementLineJson } from '@colla/wire';
import { statements as say } from '../../catalogue/statements.ts';
import { sayDay, sayFigure } from '../../locale.ts';
import { sayFact, summed, takenOff, type Why } from '../../ui/index.ts';
import { namedCalls, type PayerPart, partsOf, type Reckoned, sentenceFor } from './reckoning.ts';

/** A line: its clause, its calls, the facts it used, its arithmetic. */
export function lineWhy(line: StatementLineJson, of: Reckoned): Why {
  return {
    what: line.what,
    amount: line.amount,
    currency: of.statement.currency,
    sentence: sentenceFor(line.clause, of),
    about: line.on === undefined ? namedCalls(line.calls, of) : [sayDay(line.on)],
    facts: line.facts.map(sayFact),
    arithmetic: line.arithmetic,
  };
}

/** Some lines of the statement, by their keys. */
export function linesWhy(of: Reckoned, keys: ReadonlySet<string>): Why[] {
  return of.statement.lines.filter(({ key }) => keys.has(key)).map((line) => lineWhy(line, of));
}

type Tax = StatementJson['taxes'][number];

export function taxWhy(tax: Tax, of: Reckoned): Why {
  const { currency } = of.statement;
  return {
    what: say(tax.inside ? 'inside' : 'added', { name: tax.name }),
    amount: tax.amount,
    currency,
    sentence: sentenceFor(tax.clause, of),
    facts: [say('taxWhy', { base: sayFigure(tax.base, currency) })],
    arithmetic: tax.arithmetic,
  };
}

/** What is left of the lines without the tax inside them. */
export function netWhy(part: PayerPart, of: Reckoned): Why {
  const inside = part.taxes.filter((tax) => tax.inside).map((tax) => takenOff(taxWhy(tax, of)));
  return summed(totalOf(say('net'), part.net, of), [
    ...part.lines.map((line) => lineWhy(line, of)),
    ...inside,
  ]);
}

/** Everything one payer owes: their lines, and the tax added to them. */
export function payerWhy(part: PayerPart, of: Reckoned): Why {
  const added = part.taxes.filter((tax) => !tax.inside).map((tax) => taxWhy(tax, of));
  return summed(totalOf(say('total'), part.total, of), [
    ...part.lines.map((line) => lineWhy(line, of)),
    ...added,
  ]);
}

/** The whole statement; where several pay, payer by payer. */
export function statementWhy(of: Reckoned): Why {
  const payers = partsOf(of);
  const [only, ...others] = payers;
  if (only && others.length === 0) return payerWhy(only, of);
  const parts = payers.map((part) => ({
    ...payerWhy(part, of),
    what: say('payer', { name: part.name }),
  }));
  return summed(totalOf(say('totalOfAll'), of.statement.total, of), parts);
}

export function depositWhy(deposit: NonNullable<StatementJson['deposit']>, of: Reckoned): Why {
  return {
    what: say(of.over ? 'depositWas' : 'deposit'),
    amount: deposit.amount,
    currency: of.statement.currency,
    sentence: sentenceFor(deposit.clause, of),
    facts: isShare(deposit.arithmetic) ? [say('depositBase')] : [],
    arithmetic: deposit.arithmetic,
  };
}

/** A share is worked out from a base; a sum that the clause names has none. */
function isShare(arithmetic: string): boolean {
  return arithmetic.includes(' × ');
}

export function cancelledWhy({ total, lines }: NonNullable<StatementJson['ifCancelled']>, of: Reckoned): Why {
  const parts = lines.map((line) => lineWhy(line, of));
  return { ...summed(totalOf(say('ifCancelled'), total, of), parts), facts: [say('ifCancelledFacts')] };
}

/** What cancelling everything would leave; where nothing can be cancelled any more, the statement as it is. */
export function ifCancelledWhy(of: Reckoned): Why {
  const { ifCancelled } = of.statement;
  return ifCancelled ? cancelledWhy(ifCancelled, of) : statementWhy(of);
}

/** The parts in which one payer owes it, month by month or on days of their own: each is explained by the whole that it is a part of. */
export function instalmentsWhy(part: PayerPart, of: Reckoned): Why | undefined {
  const { payment, currency } = of.statement;
  const instalments = payment?.instalments.filter(({ payer }) => payer === part.payer) ?? [];
  if (!payment || instalments.length === 0) return undefined;
  const parts = instalments.map(({ ordinal, amount }) => ({
    what: say('instalment', { number: ordinal }),
    amount,
    currency,
  }));
  const what = say('instalments', { count: parts.length });
  return { ...summed(totalOf(what, part.total, of), parts), sentence: sentenceFor(payment.clause, of) };
}

function totalOf(what: string, amount: string, { statement: { currency } }: Reckoned): Why {
  return { what, amount, currency };
}
