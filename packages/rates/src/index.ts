// Clauses in, statement out: what facts come to under a tariff, and why.

export { menu } from './clauses/index.ts';
export { wantedOn } from './clauses/late-music.ts';
export { type CurveStep, cancellationCurve, costAt } from './curve.ts';
export { dueOn, sayDue } from './due.ts';
export { exportTariff, FORMAT, importTariff, type TariffFile, tariffJsonSchema } from './exchange.ts';
export type { AgreedCall, Cost, Facts, Move, SoloistFacts, Term, WorkFacts } from './facts.ts';
export { type EventDay, eventDaySchema } from './fields.ts';
export type {
  DepositDue,
  Draw,
  Drawn,
  Grant,
  Instalment,
  LatePart,
  LineToOther,
  PaymentDue,
  TaxSum,
} from './findings.ts';
export { type Given, given } from './given.ts';
export { type Debt, type LateCharge, latePayment } from './late.ts';
export { CATEGORIES, type Category, type Line, type Quantity, type UsedFact } from './line.ts';
export { capital, plural } from './phrases.ts';
export { dimensions, type Selector, selectorSchema } from './selector.ts';
export {
  asAgreed,
  type Fallen,
  type PayerSum,
  type Statement,
  statement,
  type Terms,
} from './statement.ts';
export {
  type Clause,
  KINDS,
  type Kind,
  PAYER,
  readClause,
  readTariff,
  sentenceOf,
  sentencesOf,
  type Tariff,
  type WrittenClause,
  type WrittenTariff,
  withChoices,
  writtenTariffSchema,
} from './tariff.ts';
export { versionInForce } from './versions.ts';
export { type Voice, voice } from './voice.ts';
