// Every route of the API, once: the server answers by this table, OpenAPI and the client are read from it.

import { STAGES } from '@colla/engagements';
import { z } from 'zod';
import {
  agreeInput,
  agreement,
  callChange,
  callInput,
  costInput,
  engagement,
  engagementChange,
  engagementInput,
  engagementPage,
  engagementWhole,
  legInput,
  liftInput,
  quoteInput,
  spanInput,
  wordInput,
  workInput,
} from './engagements.ts';
import { invoice, invoiceInput, payment, paymentInput } from './invoices.ts';
import {
  accountStatement,
  ageing,
  creditUse,
  journal,
  partyPaymentInput,
  refundInput,
  trialBalance,
  undoInput,
  writeOffInput,
} from './money.ts';
import { organisation, organisationChange, party, partyChange, partyInput } from './organisations.ts';
import { paths } from './paths.ts';
import { season, seasonInput, seasonScore } from './seasons.ts';
import { previewAnswer, previewInput, statementAnswer } from './statements.ts';
import { tariff, tariffInput, tariffWhole } from './tariffs.ts';
import { currencyCode, day, id, instant, page, pageQuery } from './words.ts';

/** One route. `path` is below `/api`; `:name` stands for a parameter. */
export interface Route {
  readonly method: 'get' | 'post' | 'put' | 'patch' | 'delete';
  readonly path: string;
  readonly summary: string;
  readonly tag: string;
  readonly query?: z.ZodType;
  readonly body?: z.ZodType;
  readonly answer: z.ZodType;
  readonly status?: 200 | 201;
  /** False where nothing is kept, although something is sent. */
  readonly keeps?: false;
}

export const routes = {
  getOrganisation: {
    ...paths.getOrganisation,
    tag: 'organisations',
    summary: 'Whoever keeps these books',
    answer: organisation,
  },
  changeOrganisation: {
    ...paths.changeOrganisation,
    tag: 'organisations',
    summary: 'Change how the books are kept',
    body: organisationChange,
    answer: organisation,
  },
  openExample: {
    ...paths.openExample,
    tag: 'organisations',
    summary: 'Fill an empty book with a worked example season',
    answer: season,
    status: 201,
  },

  listParties: {
    ...paths.listParties,
    tag: 'parties',
    summary: 'Soloists, institutions, payers by name',
    query: pageQuery,
    answer: page(party),
  },
  addParty: {
    ...paths.addParty,
    tag: 'parties',
    summary: 'Enter somebody',
    body: partyInput,
    answer: party,
    status: 201,
  },
  getParty: { ...paths.getParty, tag: 'parties', summary: 'One party', answer: party },
  changeParty: {
    ...paths.changeParty,
    tag: 'parties',
    summary: 'Change a name, address or reference',
    body: partyChange,
    answer: party,
  },

  listTariffs: {
    ...paths.listTariffs,
    tag: 'tariffs',
    summary: 'Tariffs by name, each with its newest version',
    query: pageQuery,
    answer: page(tariff),
  },
  addTariff: {
    ...paths.addTariff,
    tag: 'tariffs',
    summary: 'Keep a new tariff',
    body: tariffInput,
    answer: tariffWhole,
    status: 201,
  },
  getTariff: {
    ...paths.getTariff,
    tag: 'tariffs',
    summary: 'One tariff with all its versions',
    answer: tariffWhole,
  },
  addTariffVersion: {
    ...paths.addTariffVersion,
    tag: 'tariffs',
    summary: 'Begin a new version on a day; what is agreed keeps its own',
    body: tariffInput,
    answer: tariffWhole,
    status: 201,
  },

  listEngagements: {
    ...paths.listEngagements,
    tag: 'engagements',
    summary: 'Engagements, the newest asked for first',
    query: pageQuery.extend({ stage: z.enum(STAGES).optional() }),
    answer: engagementPage,
  },
  addEngagement: {
    ...paths.addEngagement,
    tag: 'engagements',
    summary: 'Enter an inquiry',
    body: engagementInput,
    answer: engagement,
    status: 201,
  },
  getEngagement: {
    ...paths.getEngagement,
    tag: 'engagements',
    summary: 'One engagement whole: calls, programme, agreement, invoices, payments',
    answer: engagementWhole,
  },
  changeEngagement: {
    ...paths.changeEngagement,
    tag: 'engagements',
    summary: 'Change its title, people or facts',
    body: engagementChange,
    answer: engagement,
  },
  quoteEngagement: {
    ...paths.quoteEngagement,
    tag: 'engagements',
    summary: 'Put a tariff version to the payer',
    body: quoteInput,
    answer: engagement,
  },
  agreeEngagement: {
    ...paths.agreeEngagement,
    tag: 'engagements',
    summary: 'The payer says yes: terms are frozen',
    body: agreeInput,
    answer: engagement,
  },
  declineEngagement: {
    ...paths.declineEngagement,
    tag: 'engagements',
    summary: 'Either side says no before it is agreed',
    answer: engagement,
  },
  lapseEngagement: {
    ...paths.lapseEngagement,
    tag: 'engagements',
    summary: 'Nobody said yes in time',
    answer: engagement,
  },
  cancelEngagement: {
    ...paths.cancelEngagement,
    tag: 'engagements',
    summary: 'The whole falls',
    body: wordInput,
    answer: engagement,
  },
  settleEngagement: {
    ...paths.settleEngagement,
    tag: 'engagements',
    summary: 'Everything is played, invoiced and paid',
    answer: engagement,
  },

  addCall: {
    ...paths.addCall,
    tag: 'calls',
    summary: 'Keep a call free; a quote is taken back by it, and the engagement is an inquiry again',
    body: callInput,
    answer: engagement,
    status: 201,
  },
  changeCall: {
    ...paths.changeCall,
    tag: 'calls',
    summary: 'Move a call, name it otherwise, or keep it free until another day; a quote is taken back by it',
    body: callChange,
    answer: engagement,
  },
  releaseCall: {
    ...paths.releaseCall,
    tag: 'calls',
    summary: 'Release a hold; a quote is taken back by it',
    answer: engagement,
  },
  agreeCall: {
    ...paths.agreeCall,
    tag: 'calls',
    summary: 'A call kept free is agreed',
    answer: engagement,
  },
  playCall: {
    ...paths.playCall,
    tag: 'calls',
    summary: 'A call took place, with its real times',
    body: spanInput,
    answer: engagement,
  },
  cancelCall: {
    ...paths.cancelCall,
    tag: 'calls',
    summary: 'Word came that a call will not take place; a quote is taken back by it',
    body: wordInput,
    answer: engagement,
  },
  missCall: {
    ...paths.missCall,
    tag: 'calls',
    summary: 'No word came and somebody was not there',
    body: wordInput.pick({ by: true, reason: true }),
    answer: engagement,
  },
  liftBlock: {
    ...paths.liftBlock,
    tag: 'calls',
    summary: 'Play a call though what was to be paid first was not, with the reason',
    body: liftInput,
    answer: engagement,
  },
  reopenCall: {
    ...paths.reopenCall,
    tag: 'calls',
    summary: 'Take back what was said of a call',
    answer: engagement,
  },
  setProgramme: {
    ...paths.setProgramme,
    tag: 'programme',
    summary: 'The works in order, with the state of each part',
    body: z.strictObject({ works: z.array(workInput).max(200) }),
    answer: engagement,
  },
  addLeg: {
    ...paths.addLeg,
    tag: 'legs',
    summary: 'Enter a journey',
    body: legInput,
    answer: engagement,
    status: 201,
  },
  removeLeg: {
    ...paths.removeLeg,
    tag: 'legs',
    summary: 'Take a journey out',
    answer: engagement,
  },
  addCost: {
    ...paths.addCost,
    tag: 'costs',
    summary: 'Enter money spent',
    body: costInput,
    answer: engagement,
    status: 201,
  },
  removeCost: {
    ...paths.removeCost,
    tag: 'costs',
    summary: 'Take a cost out',
    answer: engagement,
  },

  getStatement: {
    ...paths.getStatement,
    tag: 'statements',
    summary: 'What it costs at an instant, and why',
    query: z.object({ asOf: instant.optional() }),
    answer: statementAnswer,
  },
  previewStatement: {
    ...paths.previewStatement,
    tag: 'statements',
    summary: 'A tariff and an engagement in, a statement out; nothing is kept',
    body: previewInput,
    answer: previewAnswer,
  },
  getAgreement: {
    ...paths.getAgreement,
    tag: 'agreements',
    summary: 'Terms as agreed, frozen',
    answer: agreement,
  },

  listInvoices: {
    ...paths.listInvoices,
    tag: 'invoices',
    summary: 'Invoices, the newest first',
    query: pageQuery,
    answer: page(invoice),
  },
  issueInvoice: {
    ...paths.issueInvoice,
    tag: 'invoices',
    summary: 'Ask a payer for what is not invoiced yet',
    body: invoiceInput,
    answer: invoice,
    status: 201,
  },
  getInvoice: {
    ...paths.getInvoice,
    tag: 'invoices',
    summary: 'One invoice and how it stands',
    answer: invoice,
  },
  addPayment: {
    ...paths.addPayment,
    tag: 'payments',
    summary: 'Record money received for an invoice',
    body: paymentInput,
    answer: payment,
    status: 201,
  },
  listPayments: {
    ...paths.listPayments,
    tag: 'payments',
    summary: 'Payments, the newest first',
    query: pageQuery,
    answer: page(payment),
  },
  addPartyPayment: {
    ...paths.addPartyPayment,
    tag: 'payments',
    summary: 'Record money of a payer for several invoices, oldest first or by hand',
    body: partyPaymentInput,
    answer: payment,
    status: 201,
  },
  useCredit: {
    ...paths.useCredit,
    tag: 'credit',
    summary: 'Settle invoices with what is kept as a payer’s credit',
    body: creditUse,
    answer: journal,
    status: 201,
  },
  refundCredit: {
    ...paths.refundCredit,
    tag: 'credit',
    summary: 'Pay a payer’s credit back',
    body: refundInput,
    answer: journal,
    status: 201,
  },
  writeOff: {
    ...paths.writeOff,
    tag: 'invoices',
    summary: 'Give up what is owed on an invoice, with a reason',
    body: writeOffInput,
    answer: journal,
    status: 201,
  },
  takeBack: {
    ...paths.takeBack,
    tag: 'ledger',
    summary: 'Take back what bounced or was entered by mistake; a further journal undoes it',
    body: undoInput,
    answer: journal,
    status: 201,
  },

  getAccount: {
    ...paths.getAccount,
    tag: 'ledger',
    summary:
      'A payer’s statement of account between two days, both included; this year to today where none are named',
    query: z.object({ from: day.optional(), to: day.optional(), currency: currencyCode.optional() }),
    answer: accountStatement,
  },
  listOwed: {
    ...paths.listOwed,
    tag: 'ledger',
    summary: 'What each payer owes, by how late it is, at the end of a day',
    query: z.object({ asAt: day.optional() }),
    answer: ageing,
  },
  getTrialBalance: {
    ...paths.getTrialBalance,
    tag: 'ledger',
    summary: 'What each account holds at the end of a day, in the currency of the books',
    query: z.object({ asAt: day.optional() }),
    answer: trialBalance,
  },
  listJournals: {
    ...paths.listJournals,
    tag: 'ledger',
    summary: 'Journals, the latest first: all, or those behind an invoice, a party or an engagement',
    query: pageQuery.extend({ invoice: id.optional(), party: id.optional(), engagement: id.optional() }),
    answer: page(journal),
  },
  getJournal: {
    ...paths.getJournal,
    tag: 'ledger',
    summary: 'The journal of an invoice, a payment or another record, by its id',
    answer: journal,
  },

  listSeasons: {
    ...paths.listSeasons,
    tag: 'seasons',
    summary: 'Seasons, the newest first',
    query: pageQuery,
    answer: page(season),
  },
  addSeason: {
    ...paths.addSeason,
    tag: 'seasons',
    summary: 'Name a span of days',
    body: seasonInput,
    answer: season,
    status: 201,
  },
  getSeasonScore: {
    ...paths.getSeasonScore,
    tag: 'seasons',
    summary: 'The season: calls by institution, hours by week, money owed',
    answer: seasonScore,
  },
} as const satisfies Record<string, Route>;

export type Routes = typeof routes;
export type RouteName = keyof Routes;

/** The names of the parameters of a path: `'id' | 'call'` of `/engagements/:id/calls/:call`. */
export type ParamsOf<Path extends string> = Path extends `${infer Before}/${infer Rest}`
  ? ParamsOf<Before> | ParamsOf<Rest>
  : Path extends `:${infer Name}`
    ? Name
    : never;

/** What a route is asked with, as it is sent: parameters, query, body. */
export type RequestOf<Name extends RouteName> = WithParams<ParamsOf<Routes[Name]['path']>> &
  WithQuery<Routes[Name]> &
  WithBody<Routes[Name]>;
type WithParams<Param extends string> = [Param] extends [never]
  ? unknown
  : { params: Readonly<Record<Param, string>> };
type WithQuery<Of> = Of extends { query: infer Query extends z.ZodType }
  ? { query?: z.input<Query> }
  : unknown;
type WithBody<Of> = Of extends { body: infer Body extends z.ZodType } ? { body: z.input<Body> } : unknown;

/** What a route answers. */
export type AnswerOf<Name extends RouteName> = z.output<Routes[Name]['answer']>;
