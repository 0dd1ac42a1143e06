// What api and dashboard say to each other.

export * from './deposit.ts';
export * from './engagements.ts';
export * from './exchange-rate.ts';
export * from './invoices.ts';
export * from './misread.ts';
export * from './money.ts';
export { openApi } from './openapi.ts';
export * from './organisations.ts';
export { problemType } from './paths.ts';
export * from './problem.ts';
export * from './read.ts';
export * from './read-engagement.ts';
export * from './read-organisation.ts';
export * from './read-preview.ts';
export * from './routes.ts';
export * from './seasons.ts';
export * from './show.ts';
export * from './statements.ts';
export * from './tariffs.ts';
