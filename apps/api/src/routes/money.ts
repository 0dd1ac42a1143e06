import { readDay } from '@colla/calendar';
import type { Organisation } from '@colla/engagements';
import {
  type Against,
  applyCredit,
  type Means,
  receiveFor,
  refund,
  UNDOABLE,
  type Undoable,
  undo,
  writeOff,
} from '@colla/invoicing';
import { type Currency, currency, fromDecimal } from '@colla/money';
import { Refusal } from '@colla/refusal';
import type { Books, Entering, Movement } from '@colla/store';
import { type AgainstSent, type JournalJson, present, showJournal, showPayment } from '@colla/wire';
import type { Handlers } from '../answer.ts';
import { enteringAt } from '../entering.ts';
import { found, must, refuse } from '../refusals.ts';
import { settleIfDone } from '../settling.ts';

export const money = {
  addPartyPayment: async ({ params: { id: party }, body, books, now, newId }) => {
    const home = await payer(party, books);
    const of = currencyOr(body.currency, home);
    const entering = enteringAt(now, home, { rate: body.rate, currency: of });
    const open = await books.openInvoices({ party });
    const received = {
      ...{ id: newId(), method: body.method, currency: of },
      receivedOn: must(readDay(body.receivedOn), '/receivedOn'),
      amount: must(fromDecimal(body.amount, of), '/amount'),
      ...present({ reference: body.reference }),
    };
    const against = againstOf(body.against, of);
    const how = { keepCredit: body.keepCredit, today: entering.today };
    const payment = must(receiveFor(received, { party, open, against }, how));
    await books.savePayment(payment, entering);
    await settleAll(payment.allocations, { books, now });
    return showPayment(payment);
  },

  useCredit: async ({ params: { id: party }, body, books, now, newId }) => {
    const home = await payer(party, books);
    const of = currencyOr(body.currency, home);
    const [means, open] = await Promise.all([creditOf(party, of, books), books.openInvoices({ party })]);
    const on = must(readDay(body.on), '/on');
    const record = must(
      applyCredit({ id: newId(), on }, means, { open, against: againstOf(body.against, of) }),
    );
    const entering = enteringAt(now, home, { currency: of });
    const shown = await entered({ kind: 'credit applied', record }, { books, entering });
    await settleAll(record.allocations, { books, now });
    return shown;
  },

  refundCredit: async ({ params: { id: party }, body, books, now, newId }) => {
    const home = await payer(party, books);
    const of = currencyOr(body.currency, home);
    const { method, reference, rate } = body;
    const record = must(
      refund(
        {
          ...{ id: newId(), on: must(readDay(body.on), '/on'), method },
          amount: must(fromDecimal(body.amount, of), '/amount'),
          ...present({ reference }),
        },
        await creditOf(party, of, books),
      ),
    );
    const entering = enteringAt(now, home, { rate, currency: of });
    return entered({ kind: 'refund', record }, { books, entering });
  },

  writeOff: async ({ params: { id }, body, books, now, newId }) => {
    const { invoice } = found(await books.lockInvoice(id), 'invoice');
    const [home, open] = await Promise.all([
      books.organisation(),
      books.openInvoices({ party: invoice.to.party }),
    ]);
    const nothing = { ...invoice, invoice: id, party: invoice.to.party, owed: 0n };
    const owed = open.find((of) => of.invoice === id) ?? nothing;
    const { reason, note } = body;
    const record = must(
      writeOff(
        {
          ...{ id: newId(), on: must(readDay(body.on), '/on'), reason },
          amount:
            body.amount === undefined ? owed.owed : must(fromDecimal(body.amount, owed.currency), '/amount'),
          ...present({ note }),
        },
        owed,
      ),
    );
    const entering = enteringAt(now, home, { currency: invoice.currency });
    const shown = await entered({ kind: 'write-off', record }, { books, entering });
    await settleIfDone(invoice.engagement, books, now);
    return shown;
  },

  takeBack: async ({ params: { id }, body, books, now, newId }) => {
    await lockBehind(id, books);
    const { journal, takenBack } = found(await books.journal(id), 'journal');
    const { kind } = journal.source;
    if (!isUndoable(kind)) return refuse(notToTakeBack(journal.event));
    const { because, note } = body;
    const of = {
      id: newId(),
      of: { kind, id },
      on: must(readDay(body.on), '/on'),
      because,
      ...present({ note }),
    };
    const record = must(undo(of, { journal, undone: takenBack }));
    const entering = enteringAt(now, await books.organisation(), { currency: journal.currency });
    return entered({ kind: 'undo', record, journals: [journal] }, { books, entering });
  },
} satisfies Partial<Handlers>;

/** Locks the money of a payer, and says whose books these are. */
async function payer(party: string, books: Books): Promise<Organisation> {
  await books.lockMoneyOf(party);
  found(await books.party(party), 'party');
  return books.organisation();
}

function currencyOr(text: string | undefined, { currency: usual }: Organisation): Currency {
  return text === undefined ? usual : must(currency(text), '/currency');
}

/** Locks the money of whoever a journal is about. */
async function lockBehind(id: string, books: Books): Promise<void> {
  const { journal } = found(await books.journal(id), 'journal');
  const accounts = journal.transfers.flatMap(({ from, to }) => [from, to]);
  const [party] = accounts.flatMap((account) => ('party' in account ? [account.party] : []));
  if (party !== undefined) await books.lockMoneyOf(party);
}

/** What is kept as a payer's credit, by the ledger. */
async function creditOf(party: string, of: Currency, books: Books): Promise<Means> {
  const [credit] = await books.balances({ purpose: 'credit held', party, currency: of });
  return { party, currency: of, amount: credit?.amount ?? 0n };
}

function againstOf(sent: AgainstSent, of: Currency): Against {
  if (sent === 'oldest first') return sent;
  return sent.map(({ invoice, amount }, at) => ({
    invoice,
    amount: must(fromDecimal(amount, of), `/against/${at}/amount`),
  }));
}

async function entered(
  event: Movement,
  { books, entering }: { books: Books; entering: Entering },
): Promise<JournalJson> {
  await books.enter(event, entering);
  return showJournal(found(await books.journal(event.record.id), 'journal'));
}

/** Settles each engagement of which nothing is open any more. */
async function settleAll(
  allocations: readonly { readonly invoice: string }[],
  { books, now }: { books: Books; now: Parameters<typeof settleIfDone>[2] },
): Promise<void> {
  const invoices = await Promise.all(allocations.map(({ invoice }) => books.invoice(invoice)));
  const engagements = invoices.flatMap((kept) => (kept ? [kept.invoice.engagement] : []));
  for (const engagement of [...new Set(engagements)].sort()) await settleIfDone(engagement, books, now);
}

function isUndoable(kind: string): kind is Undoable {
  return UNDOABLE.some((of) => of === kind);
}

function notToTakeBack(event: string): Refusal {
  return new Refusal(
    'invoicing/not-to-take-back',
    `“${event}” cannot be taken back: a document is answered by a credit note, and what was taken back is entered anew.`,
  );
}
