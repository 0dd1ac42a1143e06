// Undoing: a payment that bounced, or an entry made by mistake. Nothing is deleted; a further record takes it back.

import { Temporal } from '@colla/calendar';
import type { Journal } from '@colla/ledger';
import { type OrRefusal, Refusal } from '@colla/refusal';

/** The records that can be taken back. A document is not: it is answered by a credit note. */
export const UNDOABLE = [
  'payment',
  'deposit',
  'deposit applied',
  'deposit returned',
  'credit applied',
  'refund',
  'write-off',
  'late interest',
] as const;
export type Undoable = (typeof UNDOABLE)[number];

/** The record that takes another back, and why. */
export interface Undo {
  readonly id: string;
  readonly of: { readonly kind: Undoable; readonly id: string };
  readonly on: Temporal.PlainDate;
  readonly because: 'bounced' | 'entered by mistake';
  readonly note?: string;
}

/**
 * Takes a record back, given its journal and whether it was taken back before. Refuses to do so twice, a day before
 * the record, and that something bounced which no bank was asked to carry.
 */
export function undo(of: Undo, { journal, undone }: { journal: Journal; undone: boolean }): OrRefusal<Undo> {
  if (undone) {
    return new Refusal(
      'invoicing/undone-already',
      'This was taken back before. Its money is where it was before it was entered.',
      { id: of.of.id },
    );
  }
  if (Temporal.PlainDate.compare(of.on, journal.on) < 0) {
    return new Refusal(
      'invoicing/undone-too-early',
      `This was entered for ${journal.on}, and cannot be taken back before that. Correct the day.`,
      { on: journal.on.toString() },
      '/on',
    );
  }
  if (
    of.because === 'bounced' &&
    !['payment', 'deposit', 'refund', 'deposit returned'].includes(of.of.kind)
  ) {
    return new Refusal(
      'invoicing/nothing-to-bounce',
      'No bank carried this, so it cannot have bounced. Say that it was entered by mistake.',
      { kind: of.of.kind },
      '/because',
    );
  }
  return of;
}
