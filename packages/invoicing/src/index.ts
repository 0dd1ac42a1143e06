// What was asked for and what came in.

export {
  type Asked,
  type Billable,
  billable,
  type InvoiceLine,
  type InvoiceTax,
  leftToInvoice,
  payersOf,
} from './billable.ts';
export { type Drafting, draftInvoice, dueDay } from './draft.ts';
export { type Block, blockOf, type Gated, mayLift, mayPlay } from './gate.ts';
export {
  type Invoice,
  type InvoiceDraft,
  type InvoiceStanding,
  issuable,
  issue,
  type Named,
  standingOf,
  USUAL_DAYS,
} from './invoice.ts';
export { fileName, invoiceSeries, writeNumber } from './number.ts';
export {
  type Allocation,
  METHODS,
  type Method,
  type Owed,
  type Payment,
  type Received,
  receive,
} from './payment.ts';
export {
  type Mark,
  type Owing,
  type SeasonFacts,
  type SeasonScore,
  type Stave,
  type StaveMoney,
  seasonScore,
  type Week,
} from './season-score.ts';
export { hoursByWeek, type WeekOfHours } from './season-weeks.ts';
