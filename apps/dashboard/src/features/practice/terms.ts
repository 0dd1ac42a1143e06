// The terms into which a place divides its year, while they are written down; and what is wrong with them.
import { practice } from '../../catalogue/practice.ts';
import { sayDay } from '../../locale.ts';

export interface TermRow {
  readonly key: number;
  readonly name: string;
  readonly from: string;
  readonly to: string;
}

/** One sentence, and the field it is about. */
export interface TermSlip {
  readonly pointer: string;
  readonly detail: string;
}

export function emptyTerm(terms: readonly TermRow[]): TermRow {
  return { key: Math.max(-1, ...terms.map(({ key }) => key)) + 1, name: '', from: '', to: '' };
}

/** Everything that keeps them from being kept; pointers as the server would give them. */
export function slipsInTerms(terms: readonly TermRow[]): TermSlip[] {
  return terms.flatMap((term, index) => {
    const slip = slipIn(term) ?? slipAmong(term, terms.slice(0, index));
    return slip ? [{ pointer: `/terms/${index}/${slip.field}`, detail: slip.detail }] : [];
  });
}

interface Slip {
  readonly field: 'name' | 'from' | 'to';
  readonly detail: string;
}

function slipIn({ name, from, to }: TermRow): Slip | undefined {
  if (name.trim() === '') return { field: 'name', detail: practice('termNameless') };
  if (from === '') return { field: 'from', detail: practice('termDay') };
  if (to === '') return { field: 'to', detail: practice('termDay') };
  return to < from ? { field: 'to', detail: practice('termEnds', { name: name.trim() }) } : undefined;
}

/** A day belongs to one term, or a clause would not know which week of which term it is. Every year may have its “spring”. */
function slipAmong(term: TermRow, before: readonly TermRow[]): Slip | undefined {
  const other = before.find((other) => slipIn(other) === undefined && overlaps(term, other));
  if (!other) return undefined;
  const [early, late] = term.from < other.from ? [term, other] : [other, term];
  const said = { name: late.name.trim(), other: early.name.trim(), day: sayDay(late.from) };
  return { field: 'from', detail: practice('termsOverlap', said) };
}

function overlaps(one: TermRow, other: TermRow): boolean {
  return one.from <= other.to && other.from <= one.to;
}
