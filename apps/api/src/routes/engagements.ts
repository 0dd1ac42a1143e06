import { readDay, type Temporal } from '@colla/calendar';
import { agree, cameBy, cancel, decline, heard, lapse, quote } from '@colla/engagements';
import { blockOf, standingOf } from '@colla/invoicing';
import { type OrRefusal, Refusal, refused } from '@colla/refusal';
import type { Books } from '@colla/store';
import {
  type MomentInput,
  readEngagementChange,
  readInquiry,
  readMoment,
  readWord,
  showBlock,
  showEngagement,
  showEngagementSummary,
  showInvoice,
  showPage,
  showPayment,
} from '@colla/wire';
import type { Handlers } from '../answer.ts';
import { change, houseOf, move } from '../move.ts';
import { found, must, refuse } from '../refusals.ts';
import { settledBy } from '../settling.ts';
import { versionFor } from '../tariff-versions.ts';

export const engagements = {
  listEngagements: async ({ query, books, now }) =>
    showPage(await books.engagements({ ...query, now }), showEngagementSummary),

  addEngagement: async ({ body, books, now, newId }) => {
    const organisation = await books.organisation();
    const { currency, zone } = organisation;
    const askedAt = now.toZonedDateTimeISO(zone);
    const inquiry = must(readInquiry(body, { newId, currency, askedAt }));
    must(cameBy(inquiry.programme, askedAt.toPlainDate()), '/programme');
    await mustKnowParties(inquiry, books);
    await books.saveEngagement(inquiry);
    return showEngagement(inquiry, await houseOf(inquiry, { organisation, books }));
  },

  getEngagement: async ({ params: { id }, books, now }) => {
    const [organisation, kept, names, invoices, payments] = await Promise.all([
      books.organisation(),
      books.engagement(id),
      books.partyNamesOf(id),
      books.invoicesOf([id]),
      books.paymentsOf(id),
    ]);
    const engagement = found(kept, 'engagement');
    const at = now.toZonedDateTimeISO(organisation.zone);
    const today = at.toPlainDate();
    const block =
      engagement.stage === 'agreed' ? blockOf({ engagement, invoices, house: organisation }, at) : undefined;
    return {
      ...showEngagement(engagement, await houseOf(engagement, { organisation, books })),
      ...(block ? { block: showBlock(block) } : {}),
      parties: Object.fromEntries(names),
      invoices: invoices.map(({ invoice, paid }) => showInvoice(invoice, standingOf(invoice, paid, today))),
      payments: payments.map(showPayment),
    };
  },

  changeEngagement: async (ask) => {
    await mustKnowParties(ask.body, ask.books);
    return change(ask, (open) => readEngagementChange(open, ask.body));
  },

  quoteEngagement: async (ask) => {
    const { tariff: id, version, choices, validUntil } = ask.body;
    const { versions } = found(await ask.books.tariff(id), 'tariff', '/tariff');
    return move(ask, (engagement, { organisation, at }) => {
      const tariff = versionFor(versions, engagement, version);
      if (refused(tariff)) return tariff;
      const day = readDay(validUntil);
      if (refused(day)) return day.at('/validUntil');
      return quote(engagement, { tariff, choices, at, validUntil: lastInstant(day, organisation.zone) });
    });
  },

  agreeEngagement: async (ask) =>
    move(ask, async (engagement, { organisation, at: now }) => {
      const { books, body, newId } = ask;
      const at = saidAt(body.said, now);
      if (refused(at)) return at.at('/said');
      const house = await houseOf(engagement, { organisation, books });
      return agree(engagement, { ...house, id: newId(), at, acceptedBy: body.acceptedBy });
    }),

  declineEngagement: async (ask) => move(ask, (engagement, { at }) => decline(engagement, at)),

  lapseEngagement: async (ask) => move(ask, (engagement, { at }) => lapse(engagement, at)),

  cancelEngagement: async (ask) =>
    move(ask, (engagement, { at }) => {
      const word = heard(readWord(ask.body), at);
      return refused(word) ? word : cancel(engagement, word);
    }),

  settleEngagement: async (ask) =>
    move(ask, (engagement, beside) => settledBy(ask.books, engagement, beside)),
} satisfies Partial<Handlers>;

/** When somebody said something: now where they do not tell, and not ahead. */
function saidAt(
  moment: MomentInput | undefined,
  now: Temporal.ZonedDateTime,
): OrRefusal<Temporal.ZonedDateTime> {
  const at = moment ? readMoment(moment) : now;
  if (refused(at) || at.epochMilliseconds <= now.epochMilliseconds) return at;
  return new Refusal(
    'engagements/word-ahead',
    'That moment is still ahead, and nobody can have said yes at it. Correct the day or the time.',
    { today: now.toPlainDate().toString(), on: at.toPlainDate().toString() },
    '/on',
  );
}

/** A quote stands until its last day is over. Clocks tell no less than a millisecond. */
function lastInstant(day: Temporal.PlainDate, zone: string): Temporal.ZonedDateTime {
  return day.add({ days: 1 }).toZonedDateTime(zone).subtract({ milliseconds: 1 });
}

interface Parties {
  readonly soloistParty?: string | null | undefined;
  readonly institutionParty?: string | null | undefined;
  readonly payers?: Readonly<Record<string, string>> | undefined;
}

/** The parties an engagement names, by the field that names them. */
function partiesOf({
  soloistParty,
  institutionParty,
  payers = {},
}: Parties): [field: string, party: string][] {
  const payersByField = Object.entries(payers).map(([role, party]) => [`/payers/${role}`, party] as const);
  const named = [
    ['/soloistParty', soloistParty],
    ['/institutionParty', institutionParty],
    ...payersByField,
  ] as const;
  return named.flatMap(([field, party]) => (party ? [[field, party]] : []));
}

async function mustKnowParties(of: Parties, books: Books): Promise<void> {
  const parties = partiesOf(of);
  const names = await books.partyNames(parties.map(([, party]) => party));
  const unknown = parties.find(([, party]) => !names.has(party));
  if (unknown) refuse(nobody.at(unknown[0]));
}

const nobody = new Refusal(
  'engagements/unknown-party',
  'Nobody of this id is entered. Enter them as a party first, or choose one who is.',
);
