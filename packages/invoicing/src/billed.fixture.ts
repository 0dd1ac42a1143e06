// Invoices and credit notes for the tests of this room, issued from an engagement and numbered in order.

import type { Temporal } from '@colla/calendar';
import type { Engagement, Party } from '@colla/engagements';
import type { WrittenClause } from '@colla/rates';
import { granted, type OrRefusal } from '@colla/refusal';
import type { Asked } from './billable.ts';
import {
  type Crediting,
  type CreditNote,
  type CreditNoteDraft,
  draftCreditNote,
  issueCreditNote,
} from './credit-note.ts';
import { draftInvoice } from './draft.ts';
import { BY_THE_HOUR, day, engaged, mara, organisation, statementOfAll } from './engaged.fixture.ts';
import { type Invoice, issue } from './invoice.ts';

/** An agreed rehearsal and audition of an hour each, 120.00 together, under the clauses given besides the hour. */
export function twoHours(more: readonly WrittenClause[] = [], but: Parameters<typeof engaged>[2] = {}) {
  return engaged(
    [...BY_THE_HOUR, ...more],
    [
      ['c1', 'rehearsal', '02-02T10:00'],
      ['c2', 'audition', '02-09T10:00'],
    ],
    but,
  );
}

/** The invoice of all that is left to ask of a payer. */
export function invoiced(
  engagement: Engagement,
  on: string,
  { id = 'i1', ordinal = 1, earlier = [], payer = 'payer', to = mara }: Partial<Billing> = {},
): Invoice {
  const draft = draftInvoice({ ...drafting(engagement, on), payer, to, earlier });
  return issue(granted(draft), { id, series: '2026', ordinal });
}

interface Billing {
  readonly id: string;
  readonly ordinal: number;
  readonly earlier: readonly Asked[];
  readonly payer: string;
  readonly to: Party;
}

/** A draft of the credit note of what was asked too much, or why there is none. */
export function creditDraft(
  engagement: Engagement,
  on: string,
  but: Pick<Crediting, 'earlier' | 'invoices'> & Partial<Crediting>,
): OrRefusal<CreditNoteDraft> {
  return draftCreditNote({ ...drafting(engagement, on), payer: 'payer', to: mara, ...but });
}

/** The credit note itself. */
export function numbered(draft: CreditNoteDraft, id = 'k1', ordinal = 1): CreditNote {
  return issueCreditNote(draft, { id, series: 'C2026', ordinal });
}

function drafting(engagement: Engagement, on: string) {
  if (!('agreement' in engagement)) throw new Error('nothing is agreed');
  const issuedOn: Temporal.PlainDate = day(on);
  return { engagement, statement: statementOfAll(engagement), organisation, issuedOn };
}
