// A credit note: the difference where the statement now says less than was invoiced, or an invoice taken back whole.
// Issued once, numbered, never altered; its lines count when the next difference is found, as those of invoices do.

import { Temporal } from '@colla/calendar';
import type { Agreed, Cancelled, Organisation, Party, Settled } from '@colla/engagements';
import { type Currency, toDecimal } from '@colla/money';
import type { Statement } from '@colla/rates';
import { type OrRefusal, Refusal, refused } from '@colla/refusal';
import { type Allocation, allocated, fill, type OpenInvoice, oldestFirst } from './allocation.ts';
import { type Asked, type Billable, billable, type InvoiceLine, type InvoiceTax } from './billable.ts';
import { addressed, daysOf, letterheadOf, mayIssue, nobodyPays } from './draft.ts';
import { dated, type Invoice, type Named } from './invoice.ts';
import { writeNumber } from './number.ts';

/** A draft of a credit note: all but its number. What it credits is below nothing, as the difference is. */
export interface CreditNoteDraft {
  readonly engagement: string;
  readonly title: string;
  readonly currency: Currency;
  readonly billable: Billable;
  readonly from: Named;
  readonly to: Named & { readonly party: string };
  readonly days: Readonly<Record<string, Temporal.PlainDate>>;
  readonly note?: string;
  readonly issuedOn: Temporal.PlainDate;
  /** The invoices it stands against, with what of each it settles, above nothing. */
  readonly against: readonly Allocation[];
  /** What is left of it once they are settled, above nothing: kept as the payer's credit. */
  readonly credit: bigint;
  /** The invoice it takes back whole, where it does. */
  readonly takesBack?: string;
}

/** Lines, taxes and sums are as the difference has them: below nothing where something is given back. */
export interface CreditNote {
  readonly id: string;
  readonly series: string;
  /** Place in its series: 1, 2, 3 … without a gap. */
  readonly ordinal: number;
  readonly number: string;
  readonly engagement: string;
  readonly title: string;
  readonly currency: Currency;
  readonly payer: string;
  readonly from: Named;
  readonly to: Named & { readonly party: string };
  readonly lines: readonly InvoiceLine[];
  readonly taxes: readonly InvoiceTax[];
  readonly net: bigint;
  readonly tax: bigint;
  readonly total: bigint;
  readonly note?: string;
  readonly issuedOn: Temporal.PlainDate;
  readonly against: readonly Allocation[];
  readonly credit: bigint;
  readonly takesBack?: string;
}

/** What a credit note is made from. `invoices` are all of this payer and engagement, paid ones too. */
export interface Crediting {
  readonly engagement: Agreed | Settled | Cancelled;
  readonly statement: Statement;
  readonly payer: string;
  readonly to: Party | undefined;
  /** Invoices and credit notes issued before. */
  readonly earlier: readonly Asked[];
  readonly invoices: readonly OpenInvoice[];
  readonly organisation: Organisation;
  readonly issuedOn: Temporal.PlainDate;
  readonly note?: string;
}

/**
 * The credit note for what one payer was asked too much. It settles what is open, the latest invoice first: what
 * changed was billed last, and a debt that was due before stays due. Refuses where nothing is to be given back, more
 * than was ever asked for, a last invoice addressed to somebody else, and a day before it or after the statement's.
 */
export function draftCreditNote(of: Crediting): OrRefusal<CreditNoteDraft> {
  const { engagement, statement, payer, to, organisation, issuedOn } = of;
  if (to === undefined) return nobodyPays(payer);
  const left = billable(statement, payer, of.earlier);
  const may = creditable(left, { ...of, currency: statement.currency });
  if (refused(may)) return may;
  const day = mayIssue(of);
  if (refused(day)) return day;
  const latestFirst = oldestFirst(of.invoices).reverse();
  const [last] = latestFirst;
  if (last && last.party !== to.id) return otherPayer(last, to);
  const against = fill(
    -left.total,
    latestFirst.filter(({ party }) => party === to.id),
  );
  return {
    engagement: engagement.id,
    title: engagement.title,
    currency: statement.currency,
    billable: left,
    from: letterheadOf(organisation),
    to: { party: to.id, ...addressed(to) },
    days: daysOf(engagement, left),
    ...(of.note === undefined ? {} : { note: of.note }),
    issuedOn,
    against,
    credit: -left.total - allocated(against),
  };
}

/** What takes one invoice back whole. */
export interface TakingBack {
  /** As the ledger has it: what is still owed on it. */
  readonly open: OpenInvoice;
  /** Invoices and credit notes of its engagement issued before, this invoice among them. */
  readonly earlier: readonly Asked[];
  /** Whether a credit note took it back before. */
  readonly taken: boolean;
  readonly issuedOn: Temporal.PlainDate;
  readonly note?: string;
}

/**
 * The credit note that takes an invoice back whole, line for line, so that its difference can be asked for anew: it
 * went to the wrong address, or says the wrong name. It settles that invoice only; what was paid on it becomes credit.
 * Refuses to do so twice, and where credit notes have left less than it asked for.
 */
export function takeBackInvoice(invoice: Invoice, of: TakingBack): OrRefusal<CreditNoteDraft> {
  const { engagement, title, currency, from, to } = invoice;
  if (of.taken) return takenBack(invoice);
  const whole = opposite(invoice);
  const may = creditable(whole, { ...of, payer: invoice.payer, invoices: [of.open], currency });
  if (refused(may)) return may;
  const against = fill(-whole.total, [of.open]);
  return {
    ...{ engagement, title, currency, billable: whole, from, to, days: {} },
    ...(of.note === undefined ? {} : { note: of.note }),
    issuedOn: of.issuedOn,
    against,
    credit: -whole.total - allocated(against),
    takesBack: invoice.id,
  };
}

function takenBack({ number, id }: Invoice): Refusal {
  return new Refusal(
    'invoicing/taken-back-already',
    `Invoice ${number} was taken back before. Its lines can be invoiced anew.`,
    { invoice: id },
  );
}

function opposite({ payer, lines, taxes, net, tax, total }: Invoice): Billable {
  return {
    payer,
    lines: lines.map((line) => ({
      ...line,
      what: `${line.what}, taken back`,
      rate: -line.rate,
      amount: -line.amount,
      arithmetic: 'the invoice is taken back',
      facts: [],
    })),
    taxes: taxes.map((of) => ({ ...of, base: -of.base, amount: -of.amount })),
    net: -net,
    tax: -tax,
    total: -total,
  };
}

/** What must be true of anything that is credited. */
function creditable(
  { total }: Billable,
  of: Pick<Crediting, 'payer' | 'earlier' | 'invoices' | 'issuedOn'> & { readonly currency: Currency },
): OrRefusal<true> {
  if (total >= 0n) return nothingToCredit(of.payer);
  const asked = of.earlier
    .filter(({ payer }) => payer === of.payer)
    .reduce((sum, one) => sum + totalOf(one), 0n);
  if (asked + total < 0n) return beyondInvoiced(asked, -total, of.currency);
  const last = oldestFirst(of.invoices).at(-1);
  if (last && Temporal.PlainDate.compare(of.issuedOn, last.issuedOn) < 0) return tooEarly(last);
  return true;
}

/** What a document asked for, or gave back: its lines and the taxes on top of them. */
function totalOf({ lines, taxes }: Asked): bigint {
  const onTop = taxes.filter(({ inside }) => !inside);
  return [...lines, ...onTop].reduce((sum, { amount }) => sum + amount, 0n);
}

function nothingToCredit(payer: string): Refusal {
  return new Refusal(
    'invoicing/nothing-to-credit',
    'The statement says as much as was invoiced, or more. There is nothing to give back.',
    { payer },
  );
}

function beyondInvoiced(asked: bigint, credited: bigint, currency: Currency): Refusal {
  const [most, wanted] = [toDecimal(asked, currency), toDecimal(credited, currency)];
  return new Refusal(
    'invoicing/beyond-invoiced',
    `A credit note of ${wanted} would give back more than the ${most} that invoices still ask for. Credit at most ${most}.`,
    { invoiced: most, credited: wanted },
  );
}

function otherPayer({ number, invoice }: OpenInvoice, { name }: Party): Refusal {
  return new Refusal(
    'invoicing/other-payer',
    `Invoice ${number} was not addressed to ${name}, who pays now. Take that invoice back, and invoice anew.`,
    { invoice },
    '/payer',
  );
}

function tooEarly({ number, issuedOn }: OpenInvoice): Refusal {
  return new Refusal(
    'invoicing/credited-too-early',
    `Invoice ${number} was issued on ${issuedOn}, and no credit note comes before it. Correct the day of issue.`,
    { issued: issuedOn.toString() },
    '/issuedOn',
  );
}

/** The credit note itself, under the next number of its series. */
export function issueCreditNote(
  draft: CreditNoteDraft,
  as: { id: string; series: string; ordinal: number },
): CreditNote {
  const { billable, days, ...kept } = draft;
  const { payer, taxes, net, tax, total } = billable;
  if (total >= 0n) throw new Error('a credit note of nothing was to be issued');
  const lines = dated(billable.lines, days);
  return { ...kept, ...as, number: writeNumber(as), payer, lines, taxes, net, tax, total };
}
