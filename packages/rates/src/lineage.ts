// What is behind a line: the clauses whose charges a cancellation or a limit stands for, and what a share is taken of.

import { apportion } from '@colla/money';
import type { Line } from './line.ts';
import type { Voice } from './voice.ts';

/** What of a line is for one clause, in minor units. */
interface Part {
  readonly clause: string;
  readonly amount: bigint;
}

/** What of a line some clauses charge: all of it, or their parts of one that stands for others too. */
export interface Portion {
  readonly line: Line;
  readonly amount: bigint;
  readonly parts: readonly Part[];
}

export class Lineage {
  /** For a line that is a share of others, by its key: what it is taken of. */
  private readonly bases = new Map<string, readonly Portion[]>();
  /** For a line made of what several clauses charged, by its key: what of it is for which. */
  private readonly parts = new Map<string, readonly Part[]>();

  /** Notes that a line is a share of others. */
  take({ key }: Line, bases: readonly Portion[]): void {
    this.bases.set(key, bases);
  }

  /** The lines that a share is taken of; undefined for a line that is none. */
  basesOf({ key }: Line): readonly Line[] | undefined {
    return this.bases.get(key)?.map(({ line }) => line);
  }

  /** Whether a line takes a share off others: it lessens what their clauses charge. */
  takesOff(line: Line): boolean {
    return line.category === 'discount' && this.bases.has(line.key);
  }

  /** Notes that a line stands for what others charged, in proportion to it. */
  stand(line: Line, forThese: readonly Portion[]): void {
    this.parts.set(line.key, inProportion(line.amount, partsOf(forThese)));
  }

  /** Notes that a line is what became of a portion. */
  become(line: Line, { parts }: Portion): void {
    this.parts.set(line.key, inProportion(line.amount, parts));
  }

  /** All of a line. */
  whole(line: Line): Portion {
    return { line, amount: line.amount, parts: this.partsOf(line) };
  }

  /** What of a line these clauses charge; undefined where it is for none of them. */
  portion(line: Line, named: readonly string[]): Portion | undefined {
    if (named.includes(line.clause)) return this.whole(line);
    const parts = this.partsOf(line).filter(({ clause }) => named.includes(clause));
    return parts.length > 0 ? { line, amount: sumOf(parts), parts } : undefined;
  }

  /** What of a line is left beside a portion of it. */
  rest({ line, amount, parts }: Portion): Portion {
    const taken = new Set(parts.map(({ clause }) => clause));
    const others = this.partsOf(line).filter(({ clause }) => !taken.has(clause));
    return { line, amount: line.amount - amount, parts: others };
  }

  /** What takes a share off others is for their clauses, not for its own. */
  private partsOf(line: Line): readonly Part[] {
    const known = this.parts.get(line.key);
    if (known) return known;
    if (!this.takesOff(line)) return [{ clause: line.clause, amount: line.amount }];
    return inProportion(line.amount, partsOf(this.bases.get(line.key) ?? []));
  }
}

/** A portion as a line of its own, which says for what it is; its key is its own too, however often its line is parted. */
export function alone({ line, amount, parts }: Portion, voice: Voice): Line {
  const clauses = parts.map(({ clause }) => clause);
  const named = voice.list(clauses.map((clause) => `“${clause}”`));
  return {
    ...line,
    key: `${line.key}#${clauses.join('+')}`,
    quantity: { count: 1, of: 1 },
    unit: 'part',
    rate: amount,
    amount,
    arithmetic: `${line.arithmetic}; of it for ${named} ${voice.money(amount)}`,
  };
}

function partsOf(portions: readonly Portion[]): Part[] {
  return portions.flatMap(({ parts }) => parts);
}

/** An amount in proportion to some parts, clause by clause. */
function inProportion(amount: bigint, parts: readonly Part[]): Part[] {
  const byClause = new Map<string, bigint>();
  for (const part of parts) byClause.set(part.clause, (byClause.get(part.clause) ?? 0n) + part.amount);
  const shares = apportion(amount, [...byClause.values()]);
  return [...byClause.keys()].map((clause, index) => ({ clause, amount: shares[index] ?? 0n }));
}

function sumOf(parts: readonly Part[]): bigint {
  return parts.reduce((sum, { amount }) => sum + amount, 0n);
}
