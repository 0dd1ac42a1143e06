// The ways in which an entry is found to be for an invoice, the surest first.

import { Temporal } from '@colla/calendar';
import { creditorReferencesIn } from './creditor-reference.ts';
import type { BankEntry } from './entry.ts';
import { exactSums } from './exact-sum.ts';
import { namedReason, nameReason, sumReason, togetherReason } from './match-reasons.ts';
import { nameWords } from './names.ts';
import type { OpenInvoice, OpenInvoices, Share } from './open-invoices.ts';

/**
 * `certain`: the payer names the invoices and pays them to the cent. `likely`: the invoice is named, or the payer is and
 * the sum is exact. `possible`: it may well be another.
 */
export type Strength = 'certain' | 'likely' | 'possible';

/** What is proposed for one entry. */
export interface Match {
  /** The entry's identity. */
  readonly entry: string;
  /** The one payer whose invoices these are. */
  readonly party: string;
  readonly shares: readonly Share[];
  /** What of the entry is beyond what is owed, in minor units: it would be the payer's credit. */
  readonly rest: bigint;
  readonly strength: Strength;
  /** Why, in a sentence. */
  readonly reason: string;
}

/** Proposes what one entry is for, or nothing. */
export type Way = (entry: BankEntry, open: OpenInvoices) => Match | undefined;

/** The creditor reference that the payer's bank carried through. */
export const byReference: Way = (entry, open) => {
  const found = open.referredTo(entry.references.flatMap(creditorReferencesIn));
  return named(entry, open, { found, says: 'It carries the reference of', otherwise: 'likely' });
};

/** A creditor reference among the payer's words. */
export const byWrittenReference: Way = (entry, open) => {
  const found = open.referredTo(writtenIn(entry).flatMap(creditorReferencesIn));
  return named(entry, open, { found, says: 'Its words have the reference of', otherwise: 'likely' });
};

/** An invoice's number in anything that the payer wrote. */
export const byNumber: Way = (entry, open) => {
  const found = open.numberedIn([...entry.references, ...writtenIn(entry)]);
  return named(entry, open, { found, says: 'Its words name', otherwise: 'possible' });
};

function writtenIn({ words, endToEnd = '' }: BankEntry): string[] {
  return [words, endToEnd];
}

interface Found {
  readonly found: readonly OpenInvoice[];
  readonly says: string;
  /** How strong it is where the sum is another, and the payer's name too. */
  readonly otherwise: Strength;
}

/** The invoices found, of the payer whose name is alike or who is found first, and others of theirs if these fit exactly. */
function named(entry: BankEntry, open: OpenInvoices, { found, says, otherwise }: Found): Match | undefined {
  const payable = found.filter(({ currency }) => currency === entry.currency);
  const like = payable.find(({ party }) => isFrom(entry, party, open));
  const party = (like ?? payable[0])?.party;
  if (party === undefined) return undefined;
  const invoices = payable.filter((invoice) => invoice.party === party);
  const owed = invoices.reduce((sum, invoice) => sum + open.owedOn(invoice), 0n);
  const others = open.of(party, entry.currency).filter((invoice) => !invoices.includes(invoice));
  const choices = exactly(entry.amount - owed, others, open);
  const [besides = []] = choices;
  const shares = fill(entry.amount, [...invoices, ...besides], open);
  const rest = entry.amount - shares.reduce((sum, { amount }) => sum + amount, 0n);
  const strength = entry.amount === owed ? 'certain' : like || choices.length === 1 ? 'likely' : otherwise;
  const reason = namedReason({ entry, says, invoices, owed, besides, rest });
  return { entry: entry.identity, party, shares, rest, strength, reason };
}

/** The payer's name, or that name in the words, and exactly what is owed: on one invoice, else on several together. */
export const byName: Way = (entry, open) => {
  const issued = open.owing(entry.amount, entry.currency).filter((invoice) => isIssued(invoice, entry));
  const like = issued.filter(({ party }) => isFrom(entry, party, open) || isInWords(entry, party, open));
  const [oldest] = like;
  if (!oldest) return together(entry, open);
  if (like.some(({ party }) => party !== oldest.party)) return undefined;
  const name = isFrom(entry, oldest.party, open) ? 'alike' : 'in words';
  return inFull(
    { entry, invoices: [oldest], open },
    { strength: 'likely', reason: nameReason(entry, like, name) },
  );
};

/** Several invoices of the one payer of that name; the oldest ones where several choices come to the sum. */
function together(entry: BankEntry, open: OpenInvoices): Match | undefined {
  const payers = open.partiesLike(nameWords(entry.name ?? '')).map((party) => {
    const issued = open.of(party, entry.currency).filter((invoice) => isIssued(invoice, entry));
    return exactly(entry.amount, issued, open);
  });
  const [choices = [], ...others] = payers.filter((choices) => choices.length > 0);
  const [invoices] = choices;
  if (!invoices || others.length > 0) return undefined;
  const strength = choices.length === 1 ? 'likely' : 'possible';
  return inFull(
    { entry, invoices, open },
    { strength, reason: togetherReason(entry, invoices, choices.length) },
  );
}

/** A sum that is owed on one invoice alone. */
export const bySum: Way = (entry, open) => {
  const issued = open.owing(entry.amount, entry.currency).filter((invoice) => isIssued(invoice, entry));
  const [only] = issued;
  if (!only || issued.length > 1) return undefined;
  return inFull({ entry, invoices: [only], open }, { strength: 'possible', reason: sumReason(entry, only) });
};

/** Nobody pays an invoice before it is issued, unless they name it. */
function isIssued({ issuedOn }: OpenInvoice, { on }: BankEntry): boolean {
  return Temporal.PlainDate.compare(issuedOn, on) <= 0;
}

function isFrom({ name = '' }: BankEntry, party: string, open: OpenInvoices): boolean {
  return open.isLike(party, nameWords(name));
}

function isInWords({ words }: BankEntry, party: string, open: OpenInvoices): boolean {
  return open.isLike(party, nameWords(words));
}

/** Choices of invoices that come to a sum exactly: one if there is but one, else two. */
function exactly(amount: bigint, invoices: readonly OpenInvoice[], open: OpenInvoices): OpenInvoice[][] {
  const owed = invoices.map((invoice) => open.owedOn(invoice));
  return exactSums(owed, amount, 2).map((places) => places.flatMap((place) => invoices[place] ?? []));
}

/** As much for each invoice as it is owed, in the order given, until the money is used up. */
function fill(amount: bigint, invoices: readonly OpenInvoice[], open: OpenInvoices): Share[] {
  let left = amount;
  return invoices.flatMap((invoice) => {
    const owed = open.owedOn(invoice);
    const filled = owed <= left;
    const part = filled ? owed : left;
    if (part <= 0n) return [];
    left -= part;
    return [{ invoice: invoice.invoice, amount: part }];
  });
}

interface Full {
  readonly entry: BankEntry;
  readonly invoices: readonly OpenInvoice[];
  readonly open: OpenInvoices;
}

/** All that is owed on invoices which come to the entry exactly. */
function inFull({ entry, invoices, open }: Full, why: Pick<Match, 'strength' | 'reason'>): Match {
  const shares = fill(entry.amount, invoices, open);
  return { entry: entry.identity, party: invoices[0]?.party ?? '', shares, rest: 0n, ...why };
}
