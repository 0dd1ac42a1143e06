// The books: opened in a folder or on a server, one code for both.

export type {
  Books,
  EngagementSummary,
  IssuedDocument,
  KeptDocument,
  KeptInvoice,
  KeptJournal,
  KeptTariff,
  Movement,
  Page,
  PageOf,
  Session,
  Store,
} from './books.ts';
export { openStore, type Place } from './open.ts';
export type { Entering } from './posting.ts';
export { Refused } from './refused.ts';
