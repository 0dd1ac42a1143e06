// A manuscript: all the words of a document in order, before they are set. Every document of the family is one.

import type { Temporal } from '@colla/calendar';

/** A few words and what they are called: `Due`, `14 April 2026`. */
export interface Labelled {
  readonly label: string;
  readonly text: string;
}

/** A short passage under a label of its own, one paragraph a string. */
export interface Passage {
  readonly label: string;
  readonly lines: readonly string[];
}

/** A column of the table. Figures stand against the right; one column at most `grows` into the space left. */
export interface Column {
  readonly head: string;
  readonly figures?: boolean;
  readonly grows?: boolean;
}

/** A row has a cell for each column; `small` stands under the cell of the column that grows. */
export interface Row {
  readonly cells: readonly string[];
  readonly small?: string;
}

/** An amount under the table. `mark` is a currency's sign that follows the figure. */
export interface Sum {
  readonly label: string;
  readonly figure: string;
  readonly mark?: string;
  /** Said large, as what the page is about. */
  readonly great?: boolean;
}

/** Reasons under one label: each a sentence of the terms, and what was worked out by it. */
export interface Reasons {
  readonly label: string;
  readonly of: readonly { readonly sentence?: string; readonly worked: readonly string[] }[];
}

export interface Manuscript {
  /** What the file calls itself. */
  readonly title: string;
  readonly language: string;
  readonly madeOn: Temporal.PlainDate;
  /** Whose paper it is, and in one line where they are found. */
  readonly masthead: { readonly name: string; readonly whereabouts: string };
  readonly heading: string;
  readonly subject: string;
  readonly to: Passage;
  readonly facts: readonly Labelled[];
  readonly table: { readonly columns: readonly Column[]; readonly rows: readonly Row[] };
  readonly sums: readonly Sum[];
  /** Said under the sums in small type. */
  readonly asides: readonly string[];
  /** How the amounts came about, in small type below the sums. */
  readonly why?: Reasons;
  /** At the foot of the last page, side by side. */
  readonly imprint: readonly Passage[];
  /** Said across the page above the imprint. */
  readonly note?: Passage;
  /** The running foot of a document of several pages. */
  readonly foot: (page: number, pages: number) => string;
}
