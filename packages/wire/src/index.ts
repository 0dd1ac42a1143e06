// What api and dashboard say to each other.

export * from './engagements.ts';
export * from './invoices.ts';
export * from './organisations.ts';
export * from './problem.ts';
export * from './routes.ts';
export * from './seasons.ts';
export * from './statements.ts';
export * from './tariffs.ts';
