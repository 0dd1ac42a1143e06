// A tariff while it is being written: its clauses as typed, in their order.

import { KINDS, type Kind, menu, PAYER, type WrittenTariff } from '@colla/rates';
import type { RequestOf } from '@colla/wire';
import { selectorParameters, termsParameters } from './clause-parameters.ts';
import { typeFields } from './shown.ts';
import { type Fields, type Reader, type Slip, writeFields } from './typed.ts';

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
  const key = Math.max(-1, ...draft.clauses.map((clause) => clause.key)) + 1;
  const { terms, for: selector } = menu[kind].examples[0];
  const clause = openClause({ id: freeName(kind, draft), kind, for: selector, terms }, key, reader);
  return { ...draft, clauses: [...draft.clauses, clause] };
}

function freeName(kind: Kind, { clauses }: TariffDraft): string {
  const taken = new Set(clauses.map(({ id }) => id));
  const names = [kind, ...clauses.map((_, index) => `${kind}-${index + 2}`)];
  return names.find((name) => !taken.has(name)) ?? kind;
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

/** The draft as the books would keep it, and what in it cannot be read as it is typed. */
export function writeDraft(draft: TariffDraft, reader: Reader): { written: WrittenDraft; slips: Slip[] } {
  const slips: Slip[] = [];
  const clauses = draft.clauses.map(({ id, kind, selector, payer, terms }, index) => {
    const pointer = `/clauses/${index}`;
    const to = writeFields(selectorParameters, selector, `${pointer}/for`, reader);
    const by = writeFields(termsParameters(kind, reader), terms, `${pointer}/terms`, reader);
    slips.push(...to.slips, ...by.slips);
    return {
      id: id.trim(),
      kind,
      ...(Object.keys(to.value).length > 0 ? { for: to.value } : {}),
      ...(payer.trim() === '' || payer.trim() === PAYER ? {} : { payer: payer.trim() }),
      terms: by.value,
    };
  });
  const note = draft.note.trim();
  const written = {
    name: draft.name.trim(),
    currency: draft.currency,
    from: draft.from,
    ...(note === '' ? {} : { note }),
    clauses,
  };
  return { written, slips };
}
