// A tariff while it is being written: its clauses as typed, in their order.

import { KINDS, type Kind, menu, PAYER, type WrittenTariff } from '@colla/rates';
import type { RequestOf } from '@colla/wire';
import { adopted } from './adopted.ts';
import { withoutChosen } from './beginning.ts';
import { selectorParameters, termsParameters } from './clause-parameters.ts';
import { type Path, valueAt, withAt } from './leaves.ts';
import { typeFields } from './shown.ts';
import { type Fields, type Reader, type Slip, type Typed, writeFields } from './typed.ts';

export interface ClauseDraft {
  /** Its row on the screen, whatever it is called. */
  readonly key: number;
  readonly id: string;
  readonly kind: Kind;
  readonly selector: Fields;
  readonly payer: string;
  readonly terms: Fields;
}

export interface TariffDraft {
  readonly name: string;
  readonly currency: string;
  readonly from: string;
  readonly note: string;
  readonly clauses: readonly ClauseDraft[];
}

/** A tariff as the editor hands it on: the server gives the version its number. */
export type WrittenDraft = RequestOf<'addTariff'>['body'];
type WrittenClauseDraft = WrittenDraft['clauses'][number];

/** A tariff as written, opened for writing. Clauses of a kind this program does not know are left out. */
export function openDraft(written: WrittenTariff, reader: Reader): TariffDraft {
  const clauses = written.clauses.filter(({ kind }) => KINDS.includes(kind as Kind));
  return {
    name: written.name,
    currency: written.currency,
    from: written.from,
    note: written.note ?? '',
    clauses: clauses.map((clause, key) => openClause({ ...clause, kind: clause.kind as Kind }, key, reader)),
  };
}

function openClause(
  clause: { id: string; kind: Kind; for?: unknown; payer?: string | undefined; terms: unknown },
  key: number,
  reader: Reader,
): ClauseDraft {
  return {
    key,
    id: clause.id,
    kind: clause.kind,
    selector: typeFields(selectorParameters, clause.for, reader),
    payer: clause.payer ?? '',
    terms: typeFields(termsParameters(clause.kind, reader), clause.terms, reader),
  };
}

/** Adds a clause of a kind at the end; it starts from the first worked example of its kind. */
export function addClause(draft: TariffDraft, kind: Kind, reader: Reader): TariffDraft {
  const { terms, for: selector } = menu[kind].examples[0];
  const parts = termsParameters(kind, reader);
  const named = { id: freeName(kind, draft), kind, for: selector, terms };
  const clause = openClause(named, freeKey(draft), reader);
  const began = withoutChosen(parts, clause.terms);
  const ours = { ...clause, terms: adopted(parts, began, namesFor(kind, draft)) };
  return { ...draft, clauses: [...draft.clauses, ours] };
}

/** The names of the clauses, first of those like the ones that the example speaks of. */
function namesFor(kind: Kind, { clauses }: TariffDraft): string[] {
  const { terms, with: others = [] } = menu[kind].examples[0];
  const spokenOf = others.filter(({ id }) => JSON.stringify(terms).includes(JSON.stringify(id)));
  const isLike = (clause: ClauseDraft) => spokenOf.some((other) => other.kind === clause.kind);
  return [...clauses.filter(isLike), ...clauses.filter((clause) => !isLike(clause))].map(({ id }) => id);
}

function freeKey({ clauses }: TariffDraft): number {
  return Math.max(-1, ...clauses.map(({ key }) => key)) + 1;
}

/** The name itself, or with the first number that makes it one of its own: `fee-2`. */
function freeName(name: string, { clauses }: TariffDraft): string {
  const taken = new Set(clauses.map(({ id }) => id));
  const stem = name.replace(/-\d+$/, '');
  const names = [name, ...clauses.map((_, index) => `${stem}-${index + 2}`)];
  return names.find((name) => !taken.has(name)) ?? name;
}

export function removeClause(draft: TariffDraft, key: number): TariffDraft {
  return { ...draft, clauses: draft.clauses.filter((clause) => clause.key !== key) };
}

export function changeClause(draft: TariffDraft, key: number, to: Partial<ClauseDraft>): TariffDraft {
  return {
    ...draft,
    clauses: draft.clauses.map((clause) => (clause.key === key ? { ...clause, ...to } : clause)),
  };
}

/** Moves a clause up (−1) or down (1) by one; at either end nothing changes. */
export function moveClause(draft: TariffDraft, key: number, by: -1 | 1): TariffDraft {
  const from = draft.clauses.findIndex((clause) => clause.key === key);
  const moved = draft.clauses[from];
  const other = draft.clauses[from + by];
  if (!moved || !other) return draft;
  const clauses = draft.clauses.map((clause) =>
    clause === moved ? other : clause === other ? moved : clause,
  );
  return { ...draft, clauses };
}

/** A clause once more, right below itself and under a name of its own. */
export function duplicateClause(draft: TariffDraft, key: number): TariffDraft {
  const clauses = draft.clauses.flatMap((clause) =>
    clause.key === key
      ? [clause, { ...clause, key: freeKey(draft), id: freeName(clause.id, draft) }]
      : [clause],
  );
  return { ...draft, clauses };
}

/** What stands in the form for a part of a clause. */
export function typedAt({ selector, terms, payer }: ClauseDraft, path: Path): Typed {
  return valueAt({ for: selector, terms, payer }, path) as Typed;
}

/** What of a clause is other when something else stands there. */
export function typeAt(
  { selector, terms, payer }: ClauseDraft,
  path: Path,
  typed: Typed,
): Partial<ClauseDraft> {
  const next = withAt({ for: selector, terms, payer }, path, typed);
  return { selector: next.for, terms: next.terms, payer: next.payer };
}

/** A clause as the books would keep it, and what in it cannot be read as it is typed. */
export function writeClause(
  { id, kind, selector, payer, terms }: ClauseDraft,
  pointer: string,
  reader: Reader,
): { written: WrittenClauseDraft; slips: Slip[] } {
  const to = writeFields(selectorParameters, selector, `${pointer}/for`, reader);
  const by = writeFields(termsParameters(kind, reader), terms, `${pointer}/terms`, reader);
  const written = {
    id: id.trim(),
    kind,
    ...(Object.keys(to.value).length > 0 ? { for: to.value } : {}),
    ...(payer.trim() === '' || payer.trim() === PAYER ? {} : { payer: payer.trim() }),
    terms: by.value,
  };
  return { written, slips: [...to.slips, ...by.slips] };
}

/** The draft as the books would keep it, and what in it cannot be read as it is typed. */
export function writeDraft(draft: TariffDraft, reader: Reader): { written: WrittenDraft; slips: Slip[] } {
  const clauses = draft.clauses.map((clause, index) => writeClause(clause, `/clauses/${index}`, reader));
  const note = draft.note.trim();
  const written = {
    name: draft.name.trim(),
    currency: draft.currency,
    from: draft.from,
    ...(note === '' ? {} : { note }),
    clauses: clauses.map(({ written }) => written),
  };
  return { written, slips: clauses.flatMap(({ slips }) => slips) };
}
