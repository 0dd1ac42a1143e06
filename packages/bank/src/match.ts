// Which open invoices the money that came in is for: proposed with the reason, for somebody to confirm.

import { Temporal } from '@colla/calendar';
import type { BankEntry } from './entry.ts';
import {
  byName,
  byNumber,
  byReference,
  bySum,
  byWrittenReference,
  type Match,
  type Way,
} from './match-ways.ts';
import { type OpenInvoice, OpenInvoices } from './open-invoices.ts';

/**
 * Proposes invoices for the entries that came in: by the reference that the bank carried through, by one in the payer's
 * words, by an invoice's number, by the payer's name and an exact sum, and by a sum that only one invoice is owed. Each
 * way is tried on all entries, the oldest first, before the next one is, so that no likeness takes an invoice from a
 * surer one. Never beyond what an invoice is owed, never another currency, never for a payment that came back.
 */
export function matchEntries(entries: readonly BankEntry[], invoices: readonly OpenInvoice[]): Match[] {
  const open = new OpenInvoices(invoices);
  const incoming = entries.filter(({ amount, reversal }) => amount > 0n && !reversal).toSorted(byDay);
  const matches = new Map<string, Match>();
  for (const way of WAYS) {
    for (const entry of incoming.filter(({ identity }) => !matches.has(identity))) {
      const match = way(entry, open);
      if (!match) continue;
      open.take(match.shares);
      matches.set(entry.identity, match);
    }
  }
  return entries.flatMap(({ identity }) => matches.get(identity) ?? []);
}

const WAYS: readonly Way[] = [byReference, byWrittenReference, byNumber, byName, bySum];

function byDay(one: BankEntry, other: BankEntry): number {
  return Temporal.PlainDate.compare(one.on, other.on) || (one.identity < other.identity ? -1 : 1);
}
