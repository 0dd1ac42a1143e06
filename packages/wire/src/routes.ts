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
  quoteInput,
  spanInput,
  wordInput,
  workInput,
} from './engagements.ts';
import { invoice, invoiceInput, payment, paymentInput } from './invoices.ts';
import { organisation, organisationChange, party, partyInput } from './organisations.ts';
import { season, seasonInput, seasonScore } from './seasons.ts';
import { previewAnswer, previewInput, statementAnswer } from './statements.ts';
import { tariff, tariffInput, tariffWhole } from './tariffs.ts';
import { instant, page, pageQuery } from './words.ts';

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
}

export const routes = {
  getOrganisation: {
    method: 'get',
    path: '/organisation',
    tag: 'organisations',
    summary: 'Whoever keeps these books',
    answer: organisation,
  },
  changeOrganisation: {
    method: 'patch',
    path: '/organisation',
    tag: 'organisations',
    summary: 'Change how the books are kept',
    body: organisationChange,
    answer: organisation,
  },
  openExample: {
    method: 'post',
    path: '/example',
    tag: 'organisations',
    summary: 'Fill an empty book with a worked example season',
    answer: season,
    status: 201,
  },

  listParties: {
    method: 'get',
    path: '/parties',
    tag: 'parties',
    summary: 'Soloists, institutions, payers by name',
    query: pageQuery,
    answer: page(party),
  },
  addParty: {
    method: 'post',
    path: '/parties',
    tag: 'parties',
    summary: 'Enter somebody',
    body: partyInput,
    answer: party,
    status: 201,
  },
  getParty: { method: 'get', path: '/parties/:id', tag: 'parties', summary: 'One party', answer: party },
  changeParty: {
    method: 'patch',
    path: '/parties/:id',
    tag: 'parties',
    summary: 'Change a name, address or reference',
    body: partyInput.partial(),
    answer: party,
  },

  listTariffs: {
    method: 'get',
    path: '/tariffs',
    tag: 'tariffs',
    summary: 'Tariffs by name, each with its newest version',
    query: pageQuery,
    answer: page(tariff),
  },
  addTariff: {
    method: 'post',
    path: '/tariffs',
    tag: 'tariffs',
    summary: 'Keep a new tariff',
    body: tariffInput,
    answer: tariffWhole,
    status: 201,
  },
  getTariff: {
    method: 'get',
    path: '/tariffs/:id',
    tag: 'tariffs',
    summary: 'One tariff with all its versions',
    answer: tariffWhole,
  },
  addTariffVersion: {
    method: 'post',
    path: '/tariffs/:id/versions',
    tag: 'tariffs',
    summary: 'Begin a new version on a day; what is agreed keeps its own',
    body: tariffInput,
    answer: tariffWhole,
    status: 201,
  },

  listEngagements: {
    method: 'get',
    path: '/engagements',
    tag: 'engagements',
    summary: 'Engagements, the newest asked for first',
    query: pageQuery.extend({ stage: z.enum(STAGES).optional() }),
    answer: engagementPage,
  },
  addEngagement: {
    method: 'post',
    path: '/engagements',
    tag: 'engagements',
    summary: 'Enter an inquiry',
    body: engagementInput,
    answer: engagement,
    status: 201,
  },
  getEngagement: {
    method: 'get',
    path: '/engagements/:id',
    tag: 'engagements',
    summary: 'One engagement whole: calls, programme, agreement, invoices, payments',
    answer: engagementWhole,
  },
  changeEngagement: {
    method: 'patch',
    path: '/engagements/:id',
    tag: 'engagements',
    summary: 'Change its title, people or facts',
    body: engagementChange,
    answer: engagement,
  },
  quoteEngagement: {
    method: 'post',
    path: '/engagements/:id/quote',
    tag: 'engagements',
    summary: 'Put a tariff version to the payer',
    body: quoteInput,
    answer: engagement,
  },
  agreeEngagement: {
    method: 'post',
    path: '/engagements/:id/agree',
    tag: 'engagements',
    summary: 'The payer says yes: terms are frozen',
    body: agreeInput,
    answer: engagement,
  },
  declineEngagement: {
    method: 'post',
    path: '/engagements/:id/decline',
    tag: 'engagements',
    summary: 'Either side says no before it is agreed',
    answer: engagement,
  },
  lapseEngagement: {
    method: 'post',
    path: '/engagements/:id/lapse',
    tag: 'engagements',
    summary: 'Nobody said yes in time',
    answer: engagement,
  },
  cancelEngagement: {
    method: 'post',
    path: '/engagements/:id/cancel',
    tag: 'engagements',
    summary: 'The whole falls',
    body: wordInput,
    answer: engagement,
  },
  settleEngagement: {
    method: 'post',
    path: '/engagements/:id/settle',
    tag: 'engagements',
    summary: 'Everything is played, invoiced and paid',
    answer: engagement,
  },

  addCall: {
    method: 'post',
    path: '/engagements/:id/calls',
    tag: 'calls',
    summary: 'Keep a call free',
    body: callInput,
    answer: engagement,
    status: 201,
  },
  changeCall: {
    method: 'patch',
    path: '/engagements/:id/calls/:call',
    tag: 'calls',
    summary: 'Move a call, or name it otherwise',
    body: callChange,
    answer: engagement,
  },
  releaseCall: {
    method: 'delete',
    path: '/engagements/:id/calls/:call',
    tag: 'calls',
    summary: 'Release a hold',
    answer: engagement,
  },
  agreeCall: {
    method: 'post',
    path: '/engagements/:id/calls/:call/agree',
    tag: 'calls',
    summary: 'A call kept free is agreed',
    answer: engagement,
  },
  playCall: {
    method: 'post',
    path: '/engagements/:id/calls/:call/play',
    tag: 'calls',
    summary: 'A call took place, with its real times',
    body: spanInput,
    answer: engagement,
  },
  cancelCall: {
    method: 'post',
    path: '/engagements/:id/calls/:call/cancel',
    tag: 'calls',
    summary: 'Word came that a call will not take place',
    body: wordInput,
    answer: engagement,
  },
  missCall: {
    method: 'post',
    path: '/engagements/:id/calls/:call/miss',
    tag: 'calls',
    summary: 'No word came and somebody was not there',
    body: wordInput.pick({ by: true, reason: true }),
    answer: engagement,
  },
  reopenCall: {
    method: 'post',
    path: '/engagements/:id/calls/:call/reopen',
    tag: 'calls',
    summary: 'Take back what was said of a call',
    answer: engagement,
  },
  setProgramme: {
    method: 'put',
    path: '/engagements/:id/programme',
    tag: 'programme',
    summary: 'The works in order, with the state of each part',
    body: z.strictObject({ works: z.array(workInput).max(200) }),
    answer: engagement,
  },
  addLeg: {
    method: 'post',
    path: '/engagements/:id/legs',
    tag: 'legs',
    summary: 'Enter a journey',
    body: legInput,
    answer: engagement,
    status: 201,
  },
  removeLeg: {
    method: 'delete',
    path: '/engagements/:id/legs/:leg',
    tag: 'legs',
    summary: 'Take a journey out',
    answer: engagement,
  },
  addCost: {
    method: 'post',
    path: '/engagements/:id/costs',
    tag: 'costs',
    summary: 'Enter money spent',
    body: costInput,
    answer: engagement,
    status: 201,
  },
  removeCost: {
    method: 'delete',
    path: '/engagements/:id/costs/:cost',
    tag: 'costs',
    summary: 'Take a cost out',
    answer: engagement,
  },

  getStatement: {
    method: 'get',
    path: '/engagements/:id/statement',
    tag: 'statements',
    summary: 'What it costs at an instant, and why',
    query: z.object({ asOf: instant.optional() }),
    answer: statementAnswer,
  },
  previewStatement: {
    method: 'post',
    path: '/statements/preview',
    tag: 'statements',
    summary: 'A tariff and an engagement in, a statement out; nothing is kept',
    body: previewInput,
    answer: previewAnswer,
  },
  getAgreement: {
    method: 'get',
    path: '/agreements/:id',
    tag: 'agreements',
    summary: 'Terms as agreed, frozen',
    answer: agreement,
  },

  listInvoices: {
    method: 'get',
    path: '/invoices',
    tag: 'invoices',
    summary: 'Invoices, the newest first',
    query: pageQuery,
    answer: page(invoice),
  },
  issueInvoice: {
    method: 'post',
    path: '/engagements/:id/invoices',
    tag: 'invoices',
    summary: 'Ask a payer for what is not invoiced yet',
    body: invoiceInput,
    answer: invoice,
    status: 201,
  },
  getInvoice: {
    method: 'get',
    path: '/invoices/:id',
    tag: 'invoices',
    summary: 'One invoice and how it stands',
    answer: invoice,
  },
  addPayment: {
    method: 'post',
    path: '/invoices/:id/payments',
    tag: 'payments',
    summary: 'Record money received for an invoice',
    body: paymentInput,
    answer: payment,
    status: 201,
  },
  listPayments: {
    method: 'get',
    path: '/payments',
    tag: 'payments',
    summary: 'Payments, the newest first',
    query: pageQuery,
    answer: page(payment),
  },

  listSeasons: {
    method: 'get',
    path: '/seasons',
    tag: 'seasons',
    summary: 'Seasons, the newest first',
    query: pageQuery,
    answer: page(season),
  },
  addSeason: {
    method: 'post',
    path: '/seasons',
    tag: 'seasons',
    summary: 'Name a span of days',
    body: seasonInput,
    answer: season,
    status: 201,
  },
  getSeasonScore: {
    method: 'get',
    path: '/seasons/:id/score',
    tag: 'seasons',
    summary: 'The season: calls by institution, hours by week, money owed',
    answer: seasonScore,
  },
} as const satisfies Record<string, Route>;

export type Routes = typeof routes;
export type RouteName = keyof Routes;
