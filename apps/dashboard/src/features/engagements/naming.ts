// Whom a name in a field means: people and institutions go by their names, and two of one name are told apart.
import type { PartyJson } from '@colla/wire';

export interface Named {
  readonly id: string;
  readonly name: string;
  /** What stands in a field for this one and no other: the name, or with it what tells namesakes apart. */
  readonly as: string;
}

type Known = Pick<PartyJson, 'id' | 'name' | 'address' | 'email' | 'reference'>;

/** Everybody with what stands for them in a field, in the order given; no two are alike. */
export function toldApart(parties: readonly Known[]): Named[] {
  const taken = new Set(parties.map(({ name }) => name));
  const met = new Map<string, number>();
  return parties.map((party) => {
    const { id, name } = party;
    const turn = (met.get(name) ?? 0) + 1;
    met.set(name, turn);
    const isAlone = parties.every((other) => other.name !== name || other.id === id);
    const as = isAlone ? name : apart(party, turn, taken);
    taken.add(as);
    return { id, name, as };
  });
}

function apart({ name, address, email, reference }: Known, turn: number, taken: ReadonlySet<string>): string {
  const mark = address[0] ?? email ?? reference;
  if (mark !== undefined && !taken.has(`${name} (${mark})`)) return `${name} (${mark})`;
  const numbered = (number: number) => `${name} (${mark === undefined ? number : `${mark}, ${number}`})`;
  let number = turn;
  while (taken.has(numbered(number))) number += 1;
  return numbered(number);
}

/** Whom something typed means: one whom the books know, somebody new, nobody, or one of several who share the name. */
export type Meant =
  | { readonly is: 'known'; readonly id: string }
  | { readonly is: 'new' | 'nobody' | 'several' };

export function meantBy(typed: string, known: readonly Named[]): Meant {
  const name = typed.trim();
  if (name === '') return { is: 'nobody' };
  const one = known.find(({ as }) => as === name);
  if (one) return { is: 'known', id: one.id };
  return { is: known.some((party) => party.name === name) ? 'several' : 'new' };
}
