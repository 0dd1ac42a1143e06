// A statement put in order for a reader: by who pays, each line with its why.

import type { StatementJson, StatementLineJson } from '@colla/wire';
import { statements as say } from '../../catalogue/statements.ts';
import { sayHours } from '../../locale.ts';

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

/** How much of the hours covered is used, in hundredths of the whole, for a bar. */
export function usedShare({ granted, used }: { granted: number; used: number }): number {
  return granted === 0 ? 0 : Math.min(100, Math.round((used * 100) / granted));
}

type Drawn = StatementJson['entitlements'][number];

/** Each call that drew on hours covered, and how much of them. */
export function drawsOf({ draws }: Pick<Drawn, 'draws'>, { callNames }: Reckoned): string[] {
  if (draws.length === 0) return [say('drawnByNone')];
  return draws.map(({ call, minutes }) =>
    say('draw', { call: callNames[call] ?? call, hours: sayHours(minutes) }),
  );
}

/** The whole account of hours covered, as plain sentences. */
export function coveredText(drawn: Drawn, of: Reckoned): string {
  const told = (['granted', 'used', 'left', 'lapsed'] as const).map(
    (part) => `${say(part)}: ${sayHours(drawn[part])} h.`,
  );
  const lost = drawn.lost === undefined ? [] : [say('lost', { why: drawn.lost })];
  const sentence = sentenceFor(drawn.clause, of) ?? '';
  return [sentence, ...told, ...lost, ...drawsOf(drawn, of)].filter(Boolean).join('\n');
}
