// The books of one organisation, inside one transaction: what can be loaded and saved, noun by noun.

import type { Season, Temporal } from '@colla/calendar';
import type { Agreement, Engagement, Organisation, Party, Stage } from '@colla/engagements';
import type { CallKind } from '@colla/hours';
import type {
  Asked,
  Invoice,
  InvoiceDraft,
  MoneyEvent,
  NumberedKind,
  OpenInvoice,
  Payment,
} from '@colla/invoicing';
import type { Balance, Journal, Posted, Which } from '@colla/ledger';
import type { Tariff } from '@colla/rates';
import type { Entering } from './posting.ts';

/**
 * A page of a list, and the cursor of the next. Cursors are opaque: one that is not of this list is refused by
 * throwing `Refused` (`store/bad-cursor`).
 */
export interface Page<Item> {
  readonly items: readonly Item[];
  readonly next?: string;
}
export interface PageOf {
  readonly after?: string | undefined;
  readonly limit: number;
}

/** A tariff's versions, oldest first; at least one. */
export interface KeptTariff {
  readonly id: string;
  readonly versions: readonly [Tariff, ...Tariff[]];
}

/** A call that is still to come, as a list names it. */
export interface NextCall {
  readonly kind: CallKind;
  readonly label?: string;
  readonly start: Temporal.ZonedDateTime;
}

/** One line of the list of engagements, read without loading them whole. */
export interface EngagementSummary {
  readonly id: string;
  readonly title: string;
  readonly stage: Stage;
  readonly soloist?: string;
  readonly institution?: string;
  readonly calls: number;
  readonly first?: Temporal.ZonedDateTime;
  readonly last?: Temporal.ZonedDateTime;
  /** The first call, held or agreed, that begins after the instant asked for; none of what has ended. */
  readonly next?: NextCall;
  readonly partsWanted: number;
}

/** An invoice with what of its total is no longer owed by the ledger, in minor units: paid, credited or given up. */
export interface KeptInvoice {
  readonly invoice: Invoice;
  readonly paid: bigint;
}

/** A journal, what was said of it that is no figure, and whether another took it back. */
export interface KeptJournal {
  readonly journal: Journal;
  readonly said: Readonly<Record<string, string>>;
  readonly takenBack: boolean;
}

/** Whose journals are asked for: one of these, or all. */
export interface JournalsOf {
  readonly invoice?: string | undefined;
  readonly party?: string | undefined;
  readonly engagement?: string | undefined;
}

/** What happens to money without a document, and is no payment. */
export type Movement = Exclude<MoneyEvent, { kind: 'invoice' | 'credit note' | 'payment' }>;

/** A document as it was issued. */
export interface IssuedDocument {
  readonly kind: NumberedKind;
  /** The record it is the document of. */
  readonly of: string;
  readonly series: string;
  readonly ordinal: number;
  readonly number: string;
  readonly bytes: Uint8Array;
  readonly issuedAt: Temporal.Instant;
}
export interface KeptDocument extends IssuedDocument {
  /** SHA-256 of the bytes, in hexadecimal. */
  readonly sha256: string;
}

/** A request that may be sent again: its key, and a hash of what it asks. */
export interface Repeatable {
  readonly key: string;
  readonly asked: string;
}

/**
 * Where the books say no they throw `Refused`, and the transaction is undone. An id that is none, or that nobody
 * has, finds nothing. Instants are kept to the microsecond.
 */
export interface Books {
  organisation(): Promise<Organisation>;
  /** The same, locked until the transaction ends, so that of two changes at once neither is lost. */
  lockOrganisation(): Promise<Organisation>;
  changeOrganisation(to: Organisation): Promise<void>;

  party(id: string): Promise<Party | undefined>;
  /** The same, locked until the transaction ends. */
  lockParty(id: string): Promise<Party | undefined>;
  parties(page: PageOf): Promise<Page<Party>>;
  /** The names of parties by id; an id that nobody has is left out. */
  partyNames(ids: readonly string[]): Promise<ReadonlyMap<string, string>>;
  /** The same of everybody an engagement names: soloist, institution, payers. */
  partyNamesOf(engagement: string): Promise<ReadonlyMap<string, string>>;
  saveParty(party: Party): Promise<void>;

  tariff(id: string): Promise<KeptTariff | undefined>;
  tariffs(page: PageOf): Promise<Page<KeptTariff>>;
  /** Keeps one more version; the first makes the tariff. Versions are never altered. */
  addTariffVersion(id: string, tariff: Tariff): Promise<void>;

  engagement(id: string): Promise<Engagement | undefined>;
  /** The same, locked until the transaction ends, so that of two changes at once neither is lost. */
  lockEngagement(id: string): Promise<Engagement | undefined>;
  /** The newest inquiry first; `now` says which call is the next. */
  engagements(
    page: PageOf & { now: Temporal.Instant; stage?: Stage | undefined },
  ): Promise<Page<EngagementSummary>>;
  /** Engagements with a call between two days (both included), whole. */
  engagementsBetween(from: Temporal.PlainDate, to: Temporal.PlainDate): Promise<Engagement[]>;
  saveEngagement(engagement: Engagement): Promise<void>;
  /**
   * How many other engagements that share a payer with this one are agreed in the season of its first call (the latest
   * such season where there are several); none outside every season. Those called off as a whole do not count.
   */
  agreedSoFar(engagement: string): Promise<number>;
  agreement(id: string): Promise<{ agreement: Agreement; engagement: string } | undefined>;

  invoice(id: string): Promise<KeptInvoice | undefined>;
  invoices(page: PageOf): Promise<Page<KeptInvoice>>;
  invoicesOf(engagements: readonly string[]): Promise<KeptInvoice[]>;
  /** What was asked for before on an engagement, for the difference. */
  askedOf(engagement: string): Promise<Asked[]>;
  /** Takes the next number of the series, keeps the invoice and posts it, in this transaction: no number is lost or doubled. */
  issueInvoice(draft: InvoiceDraft, as: { id: string; series: string }, entering: Entering): Promise<Invoice>;

  payments(page: PageOf): Promise<Page<Payment>>;
  paymentsOf(engagement: string): Promise<Payment[]>;
  /** Locks the money of an invoice's payer until the transaction ends, so that two payments at once cannot both fill it. */
  lockInvoice(id: string): Promise<KeptInvoice | undefined>;
  /** Keeps a payment and posts it. */
  savePayment(payment: Payment, entering: Entering): Promise<void>;

  /** Whether anything is posted. */
  begun(): Promise<boolean>;
  /** Postings by their days, and on one day as they were posted. */
  posted(which: Which): Promise<Posted[]>;
  /** The balances of the accounts that postings touch, summed by the database; accounts that hold nothing are left out. */
  balances(which: Which): Promise<Balance[]>;
  /** The journal of a record. */
  journal(record: string): Promise<KeptJournal | undefined>;
  /** Journals, the latest first: all of them, or those of an invoice, of a party, or of an engagement. */
  journals(of: JournalsOf, page: PageOf): Promise<Page<KeptJournal>>;
  /** Invoices on which something is owed, or was at the end of a day; those issued first come first. */
  openInvoices(of: { party?: string; asAt?: Temporal.PlainDate }): Promise<OpenInvoice[]>;
  /** Locks the money of a party until the transaction ends, so that nothing of it is used twice. */
  lockMoneyOf(party: string): Promise<void>;
  /** Posts what has no document and is no payment; its journal is its record. */
  enter(event: Movement, entering: Entering): Promise<void>;

  /** The document of a record, as it was issued. */
  document(of: string): Promise<KeptDocument | undefined>;
  /** Keeps a document; a second one of the same record changes nothing. */
  keepDocument(document: IssuedDocument): Promise<void>;

  /**
   * The answer that was kept for a request, if it was asked before. Throws `Refused` where it is being answered at this
   * moment, or where its key was another request's.
   */
  answered(request: Repeatable): Promise<string | undefined>;
  /** Keeps the answer to a request for some days. */
  keepAnswer(answer: Repeatable & { answer: string; keptAt: Temporal.Instant }): Promise<void>;

  season(id: string): Promise<Season | undefined>;
  seasons(page: PageOf): Promise<Page<Season>>;
  saveSeason(season: Season): Promise<void>;
}

/** Whose books a browser was let into, and until when. */
export interface Session {
  readonly organisation: string;
  readonly until: Temporal.Instant;
}

/** An open database. Everything but organisations and sessions is reached through the books of one organisation. */
export interface Store {
  /**
   * Runs `work` in one transaction, as the role that row-level security binds, for one organisation. The books are
   * of no use afterwards. One is not begun inside another: the embedded database has one connection, and would wait.
   */
  within<Answer>(organisation: string, work: (books: Books) => Promise<Answer>): Promise<Answer>;
  /** The same for work that only reads: the database lets it change nothing, and nobody waits for its end. */
  reading<Answer>(organisation: string, work: (books: Books) => Promise<Answer>): Promise<Answer>;
  /** The organisations of this database, oldest first. */
  organisations(): Promise<string[]>;
  addOrganisation(organisation: Organisation): Promise<void>;
  /** Keeps a session by the hash of its token, until an instant. */
  addSession(session: { organisation: string; tokenHash: string; until: Temporal.Instant }): Promise<void>;
  /** The session of a token that has not ended, or undefined. */
  session(tokenHash: string, now: Temporal.Instant): Promise<Session | undefined>;
  close(): Promise<void>;
}
