// The terms into which a place divides its year, while they are written down; and what is wrong with them.
import { readDay } from '@colla/calendar';
import { termsApart } from '@colla/engagements';
import { granted, refused } from '@colla/refusal';
import { practice } from '../../catalogue/practice.ts';

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

/** What keeps them from being kept: first what is not said, then what the books would refuse. */
export function slipsInTerms(terms: readonly TermRow[]): TermSlip[] {
  const unsaid = terms.flatMap(unsaidIn);
  if (unsaid.length > 0) return unsaid;
  const apart = termsApart(
    terms.map(({ name, from, to }) => ({
      name: name.trim(),
      from: granted(readDay(from)),
      to: granted(readDay(to)),
    })),
  );
  return refused(apart) ? [{ pointer: `/terms${apart.field ?? ''}`, detail: apart.sentence }] : [];
}

function unsaidIn({ name, from, to }: TermRow, index: number): TermSlip[] {
  const slip = (field: string, detail: string) => [{ pointer: `/terms/${index}/${field}`, detail }];
  if (name.trim() === '') return slip('name', practice('termNameless'));
  if (refused(readDay(from))) return slip('from', practice('termDay'));
  return refused(readDay(to)) ? slip('to', practice('termDay')) : [];
}
