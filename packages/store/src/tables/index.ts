// Every table of the books, one file a noun.

export { agreements } from './agreements.ts';
export { allocations } from './allocations.ts';
export { answers } from './answers.ts';
export { calls } from './calls.ts';
export { costs } from './costs.ts';
export { documents } from './documents.ts';
export { engagements } from './engagements.ts';
export { invoiceLines } from './invoice-lines.ts';
export { invoiceTaxes } from './invoice-taxes.ts';
export { invoices } from './invoices.ts';
export { journals } from './journals.ts';
export { legs } from './legs.ts';
export { moves } from './moves.ts';
export { organisations } from './organisations.ts';
export { parties } from './parties.ts';
export { payers } from './payers.ts';
export { payments } from './payments.ts';
export { postings } from './postings.ts';
export { seasons } from './seasons.ts';
export { series } from './series.ts';
export { sessions } from './sessions.ts';
export { tariffs, tariffVersions } from './tariffs.ts';
export { works } from './works.ts';
