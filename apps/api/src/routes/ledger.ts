import { readDay, Temporal } from '@colla/calendar';
import { accountStatement, aged } from '@colla/invoicing';
import { balance, trialBalanceOf } from '@colla/ledger';
import { currency } from '@colla/money';
import { Refusal } from '@colla/refusal';
import type { Books } from '@colla/store';
import { showAccountStatement, showAged, showJournal, showPage, showTrialBalance } from '@colla/wire';
import type { Handlers } from '../answer.ts';
import { found, must, refuse } from '../refusals.ts';

export const ledger = {
  getAccount: async ({ params: { id }, query, books, now }) => {
    const [home, kept] = await Promise.all([books.organisation(), books.party(id)]);
    const { id: party } = found(kept, 'party');
    const of = query.currency === undefined ? home.currency : must(currency(query.currency), '/currency');
    const to = dayOr(query.to, now.toZonedDateTimeISO(home.zone).toPlainDate(), '/to');
    const from = dayOr(query.from, to.with({ month: 1, day: 1 }), '/from');
    if (Temporal.PlainDate.compare(from, to) > 0) refuse(endsEarly);
    const posted = await books.posted({ party, currency: of, asAt: to });
    const credit = balance(posted, { purpose: 'credit held', party, currency: of }).amount;
    return showAccountStatement(accountStatement(posted, { party, currency: of, from, to }), credit);
  },

  listOwed: async ({ query, books, now }) => {
    const asAt = await dayAsked(query.asAt, { books, now });
    const [held, open] = await Promise.all([books.balances({ asAt }), books.openInvoices({ asAt })]);
    const payers = aged(held, open, asAt);
    const names = await books.partyNames(payers.map(({ party }) => party));
    return { asAt: asAt.toString(), payers: payers.map((of) => showAged(of, names.get(of.party) ?? '')) };
  },

  getTrialBalance: async ({ query, books, now }) => {
    const asAt = await dayAsked(query.asAt, { books, now });
    const [held, home] = await Promise.all([books.balances({ asAt }), books.organisation()]);
    return showTrialBalance(trialBalanceOf(held), asAt.toString(), home.currency);
  },

  listJournals: async ({ query: { invoice, party, engagement, ...page }, books }) => {
    if ([invoice, party, engagement].filter((of) => of !== undefined).length > 1) refuse(oneOfThem);
    return showPage(await books.journals({ invoice, party, engagement }, page), showJournal);
  },

  getJournal: async ({ params, books }) => showJournal(found(await books.journal(params.id), 'journal')),
} satisfies Partial<Handlers>;

/** The day that is asked for; today where none is. */
async function dayAsked(
  text: string | undefined,
  { books, now }: { books: Books; now: Temporal.Instant },
): Promise<Temporal.PlainDate> {
  const { zone } = await books.organisation();
  return dayOr(text, now.toZonedDateTimeISO(zone).toPlainDate(), '/asAt');
}

function dayOr(text: string | undefined, otherwise: Temporal.PlainDate, field: string): Temporal.PlainDate {
  return text === undefined ? otherwise : must(readDay(text), field);
}

const endsEarly = new Refusal(
  'ledger/ends-before-it-starts',
  'The statement would end before it begins. Give a last day on or after the first.',
  {},
  '/to',
);

const oneOfThem = new Refusal(
  'ledger/one-of-them',
  'Ask for the journals of an invoice, of a party or of an engagement: of one of them at a time.',
);
