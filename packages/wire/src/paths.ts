// Where each route is: its method, and its path below `/api` with `:name` for a parameter. Apart from the schemas, so
// that a browser that only asks need not load what answers are checked by. Whatever is not read by `get` is kept, unless
// `keeps` says otherwise.

export const paths = {
  getOrganisation: { method: 'get', path: '/organisation' },
  changeOrganisation: { method: 'patch', path: '/organisation' },
  openExample: { method: 'post', path: '/example' },
  listParties: { method: 'get', path: '/parties' },
  addParty: { method: 'post', path: '/parties' },
  getParty: { method: 'get', path: '/parties/:id' },
  changeParty: { method: 'patch', path: '/parties/:id' },
  listTariffs: { method: 'get', path: '/tariffs' },
  addTariff: { method: 'post', path: '/tariffs' },
  getTariff: { method: 'get', path: '/tariffs/:id' },
  addTariffVersion: { method: 'post', path: '/tariffs/:id/versions' },
  listEngagements: { method: 'get', path: '/engagements' },
  addEngagement: { method: 'post', path: '/engagements' },
  getEngagement: { method: 'get', path: '/engagements/:id' },
  changeEngagement: { method: 'patch', path: '/engagements/:id' },
  quoteEngagement: { method: 'post', path: '/engagements/:id/quote' },
  agreeEngagement: { method: 'post', path: '/engagements/:id/agree' },
  declineEngagement: { method: 'post', path: '/engagements/:id/decline' },
  lapseEngagement: { method: 'post', path: '/engagements/:id/lapse' },
  cancelEngagement: { method: 'post', path: '/engagements/:id/cancel' },
  settleEngagement: { method: 'post', path: '/engagements/:id/settle' },
  addCall: { method: 'post', path: '/engagements/:id/calls' },
  changeCall: { method: 'patch', path: '/engagements/:id/calls/:call' },
  releaseCall: { method: 'delete', path: '/engagements/:id/calls/:call' },
  agreeCall: { method: 'post', path: '/engagements/:id/calls/:call/agree' },
  playCall: { method: 'post', path: '/engagements/:id/calls/:call/play' },
  cancelCall: { method: 'post', path: '/engagements/:id/calls/:call/cancel' },
  missCall: { method: 'post', path: '/engagements/:id/calls/:call/miss' },
  liftBlock: { method: 'post', path: '/engagements/:id/calls/:call/lift' },
  reopenCall: { method: 'post', path: '/engagements/:id/calls/:call/reopen' },
  setProgramme: { method: 'put', path: '/engagements/:id/programme' },
  addLeg: { method: 'post', path: '/engagements/:id/legs' },
  removeLeg: { method: 'delete', path: '/engagements/:id/legs/:leg' },
  addCost: { method: 'post', path: '/engagements/:id/costs' },
  removeCost: { method: 'delete', path: '/engagements/:id/costs/:cost' },
  getStatement: { method: 'get', path: '/engagements/:id/statement' },
  previewStatement: { method: 'post', path: '/statements/preview', keeps: false },
  getAgreement: { method: 'get', path: '/agreements/:id' },
  listInvoices: { method: 'get', path: '/invoices' },
  issueInvoice: { method: 'post', path: '/engagements/:id/invoices' },
  getInvoice: { method: 'get', path: '/invoices/:id' },
  addPayment: { method: 'post', path: '/invoices/:id/payments' },
  listPayments: { method: 'get', path: '/payments' },
  listSeasons: { method: 'get', path: '/seasons' },
  addSeason: { method: 'post', path: '/seasons' },
  getSeasonScore: { method: 'get', path: '/seasons/:id/score' },
} as const;

/** The address that names a kind of problem, from the code of its refusal: `invoicing/more-than-owed`. */
export function problemType(code: string): string {
  return `/api/problems/${code}`;
}
