// A statement put in order for a reader: by who pays, each line with its why.

import type { StatementJson, StatementLineJson } from '@colla/wire';

/** A statement with what its lines open to. Calls and payers are named by whoever shows it. */
export interface Reckoned {
  readonly statement: StatementJson;
  readonly sentences: readonly { readonly clause: string; readonly sentence: string }[];
  /** Names by call id, “Rehearsal, Tue 3 Mar”. */
  readonly callNames: Readonly<Record<string, string>>;
  /** Names by the role in which somebody pays. */
  readonly payerNames: Readonly<Record<string, string>>;
  /** How many journeys and costs it was made from; none where nobody says. */
  readonly journeys?: number;
  readonly costs?: number;
  /** The day on which the deposit is due, where it is known. */
  readonly depositDue?: string;
  /** True once nothing more of it will be asked for. */
  readonly over?: boolean;
}

export interface PayerPart {
  readonly payer: string;
  readonly name: string;
  readonly lines: readonly StatementLineJson[];
  readonly taxes: StatementJson['taxes'];
  readonly net: string;
  readonly total: string;
}

/** One part for each payer, in the statement's order; the parts together are the statement. */
export function partsOf({ statement, payerNames }: Reckoned): PayerPart[] {
  return statement.payers.map(({ payer, net, total }) => ({
    payer,
    name: payerNames[payer] ?? payer,
    lines: statement.lines.filter((line) => line.payer === payer),
    taxes: statement.taxes.filter((tax) => tax.payer === payer),
    net,
    total,
  }));
}

/** The sentence of a clause, as the tariff or the agreement says it. */
export function sentenceFor(clause: string, { sentences }: Reckoned): string | undefined {
  return sentences.find((said) => said.clause === clause)?.sentence;
}

/** The calls a line is about, by name; ones that nobody named are left out. */
export function namedCalls(calls: readonly string[], { callNames }: Reckoned): string[] {
  return calls.flatMap((id) => callNames[id] ?? []);
}

/** When the one call of a line was: its name, without the words that the line says already. */
export function whenOf({ what, calls }: Pick<StatementLineJson, 'what' | 'calls'>, of: Reckoned): string {
  const [name, ...others] = namedCalls(calls, of);
  if (name === undefined || others.length > 0) return '';
  const spoken = `${what}, `;
  return name.startsWith(spoken) ? name.slice(spoken.length) : name;
}

/** What was gone and spent, and is charged to nobody by any line. */
export function uncharged({ statement, journeys = 0, costs = 0 }: Reckoned): ('journeys' | 'costs')[] {
  const has = (sought: StatementLineJson['category']) =>
    statement.lines.some(({ category }) => category === sought);
  return [
    ...(journeys > 0 && !has('travel') ? (['journeys'] as const) : []),
    ...(costs > 0 && !has('cost') ? (['costs'] as const) : []),
  ];
}
