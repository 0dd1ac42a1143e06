// What was asked for and what came in.

export {
  type AccountEntry,
  type AccountSpan,
  type AccountStatement,
  accountStatement,
} from './account-statement.ts';
export { AGES, type Age, type Aged, aged, ageing, ageOf } from './ageing.ts';
export {
  type Against,
  type Allocation,
  allocated,
  type Means,
  type OpenInvoice,
  type Owed,
  oldestFirst,
  setAgainst,
} from './allocation.ts';
export {
  type Asked,
  type Billable,
  billable,
  type InvoiceLine,
  type InvoiceTax,
  leftToInvoice,
  payersOf,
} from './billable.ts';
export { BILLING_PLANS, type BillingPlan, invoiceable, type Planned } from './billing-plan.ts';
export { applyCredit, type CreditApplied, type Refund, refund } from './credit.ts';
export {
  type Crediting,
  type CreditNote,
  type CreditNoteDraft,
  draftCreditNote,
  issueCreditNote,
  type TakingBack,
  takeBackInvoice,
} from './credit-note.ts';
export {
  applyDeposit,
  type Deposit,
  type DepositApplied,
  type DepositNext,
  type DepositReturned,
  depositNext,
  type HeldDeposit,
  receiveDeposit,
  returnDeposit,
} from './deposit.ts';
export {
  type DepositAsking,
  type DepositRequest,
  type DepositRequestDraft,
  draftDepositRequest,
  issueDepositRequest,
} from './deposit-request.ts';
export { type Drafting, draftInvoice, dueDay } from './draft.ts';
export { type DuePart, duePartsOf } from './due-parts.ts';
export { EVENT_WORDS, type Happened, happened, type MoneyEvent } from './event.ts';
export { type Block, blockOf, type Gated, mayLift, mayPlay } from './gate.ts';
export { type DocumentSums, documentSums, gather, issueGathered } from './gathered.ts';
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
export {
  chargeLateInterest,
  type LateInterest,
  type Lateness,
  type LateProposal,
  proposeLateInterest,
} from './late-interest.ts';
export { fileName, invoiceSeries, type NumberedKind, seriesOf, writeNumber } from './number.ts';
export {
  METHODS,
  type Method,
  type Payment,
  type Received,
  type Receiving,
  receive,
  receiveFor,
} from './payment.ts';
export { type BooksBefore, post } from './posting.ts';
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
export { touched } from './touched.ts';
export { UNDOABLE, type Undo, type Undoable, undo } from './undo.ts';
export {
  shortBy,
  WRITE_OFF_REASONS,
  type WriteOff,
  type WriteOffReason,
  writeOff,
} from './write-off.ts';
