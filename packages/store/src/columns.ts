// The kinds of column that drizzle does not have: each reads PostgreSQL's own text into the domain's value, on
// both databases, and writes it back. Here alone the two drivers' values become ours.

import { Temporal, type Zone } from '@colla/calendar';
import type { Agreement } from '@colla/engagements';
import type { Currency } from '@colla/money';
import type { AgreedCall, DepositDue, Tariff, Term, UsedFact } from '@colla/rates';
import { sql } from 'drizzle-orm';
import { type AnyPgColumn, check, customType, pgPolicy, pgRole, text, uuid } from 'drizzle-orm/pg-core';
import { storedTariff } from './stored-tariff.ts';

/** Minor units of the currency that stands in the same row. */
export const minorUnits = customType<{ data: bigint; driverData: string }>({
  dataType: () => 'bigint',
  fromDriver: (text) => BigInt(text),
  toDriver: (amount) => amount.toString(),
});

/** A whole number that may pass four bytes, such as thousandths times minutes. */
export const wholeNumber = customType<{ data: number; driverData: string }>({
  dataType: () => 'bigint',
  fromDriver: (text) => Number(text),
  toDriver: (number) => number.toString(),
});

/** Bytes, which go in and out as hexadecimal text. */
export const bytes = customType<{ data: Uint8Array; driverData: string }>({
  dataType: () => 'bytea',
  fromDriver: (text) => new Uint8Array(Buffer.from(text.slice(2), 'hex')),
  toDriver: (bytes) => `\\x${Buffer.from(bytes).toString('hex')}`,
});

/** An instant, kept to the microsecond. The zone of its place stands beside it, in a column of its own. */
export const instant = customType<{ data: Temporal.Instant; driverData: string }>({
  dataType: () => 'timestamp with time zone',
  fromDriver: readInstant,
  toDriver: (at) => at.toString(),
});

/**
 * Reads an instant as PostgreSQL writes it in JSON, `2026-03-14T10:00:00.123456+00:00`. The platform's own reader
 * is ten times as quick as Temporal's, but stops at the millisecond.
 */
function readInstant(text: string): Temporal.Instant {
  const millisecond = Temporal.Instant.fromEpochMilliseconds(Date.parse(text));
  const microseconds = /\.\d{3}(\d{1,3})/.exec(text)?.[1];
  return microseconds ? millisecond.add({ microseconds: Number(microseconds.padEnd(3, '0')) }) : millisecond;
}

/** A day of the calendar. */
export const day = customType<{ data: Temporal.PlainDate; driverData: string }>({
  dataType: () => 'date',
  fromDriver: (text) => Temporal.PlainDate.from(text),
  toDriver: (on) => on.toString(),
});

/** A tariff, kept as it was written and read again by the clauses' own schemas. */
export const tariff = customType<{ data: Tariff; driverData: string }>({
  dataType: () => 'jsonb',
  fromDriver: storedTariff,
  toDriver: ({ written }) => JSON.stringify(written),
});

/** The sentences of a tariff as they were read when it was agreed. */
export const sentences = customType<{
  data: readonly { readonly clause: string; readonly sentence: string }[];
  driverData: string;
}>({
  dataType: () => 'jsonb',
  fromDriver: (text) => JSON.parse(text) as { clause: string; sentence: string }[],
  toDriver: (said) => JSON.stringify(said),
});

/** The calls of an agreement, frozen as they were planned that day, and its deposit. */
export const agreedThen = customType<{ data: Pick<Agreement, 'calls' | 'deposit'>; driverData: string }>({
  dataType: () => 'jsonb',
  fromDriver: (text) => readAgreed(JSON.parse(text) as WrittenCall[] | WrittenAgreed),
  toDriver: ({ calls, deposit }) =>
    JSON.stringify({
      calls: calls.map(writeCall),
      ...(deposit ? { deposit: { ...deposit, amount: String(deposit.amount) } } : {}),
    }),
});

interface WrittenAgreed {
  readonly calls: readonly WrittenCall[];
  readonly deposit?: Omit<DepositDue, 'amount'> & { readonly amount: string };
}

/** Books from before deposits were kept have the calls alone. */
function readAgreed(written: readonly WrittenCall[] | WrittenAgreed): Pick<Agreement, 'calls' | 'deposit'> {
  if (!('calls' in written)) return { calls: written.map(readCall) };
  const { calls, deposit } = written;
  return {
    calls: calls.map(readCall),
    ...(deposit ? { deposit: { ...deposit, amount: BigInt(deposit.amount) } } : {}),
  };
}

type WrittenCall = Omit<AgreedCall, 'planned'> & { readonly start: string; readonly end: string };

function writeCall({ planned: { start, end }, ...call }: AgreedCall): WrittenCall {
  return { ...call, start: start.toString(), end: end.toString() };
}

function readCall({ start, end, ...call }: WrittenCall): AgreedCall {
  return {
    ...call,
    planned: { start: Temporal.ZonedDateTime.from(start), end: Temporal.ZonedDateTime.from(end) },
  };
}

/** The terms of a place, in the order in which they were entered. */
export const terms = customType<{ data: readonly Term[]; driverData: string }>({
  dataType: () => 'jsonb',
  fromDriver: (text) => (JSON.parse(text) as WrittenTerm[]).map(readTerm),
  toDriver: (terms) => JSON.stringify(terms.map(writeTerm)),
});

type WrittenTerm = { readonly name: string; readonly from: string; readonly to: string };

function writeTerm({ name, from, to }: Term): WrittenTerm {
  return { name, from: from.toString(), to: to.toString() };
}

function readTerm({ name, from, to }: WrittenTerm): Term {
  return { name, from: Temporal.PlainDate.from(from), to: Temporal.PlainDate.from(to) };
}

/** Minutes by the clause of an entitlement. */
export const minutesByClause = customType<{
  data: Readonly<Record<string, number>>;
  driverData: string;
}>({
  dataType: () => 'jsonb',
  fromDriver: (text) => JSON.parse(text) as Record<string, number>,
  toDriver: (minutes) => JSON.stringify(minutes),
});

/** What an amount was reckoned from, as it was said when the invoice was issued. */
export const usedFacts = customType<{ data: readonly UsedFact[]; driverData: string }>({
  dataType: () => 'jsonb',
  fromDriver: (text) => JSON.parse(text) as UsedFact[],
  toDriver: (facts) => JSON.stringify(facts),
});

/** Text in the order of its letters' code points: the same order on every database. */
export const filed = customType<{ data: string; driverData: string }>({
  dataType: () => 'text COLLATE "C"',
});

/** An ISO 4217 code: whatever is kept went through `currency`. */
export const currencyCode = (name = 'currency') => text(name).$type<Currency>().notNull();

/** An IANA zone name: whatever is kept went through `zone`. */
export const zoneName = (name: string) => text(name).$type<Zone>();

const current = sql`nullif(current_setting('colla.organisation', true), '')::uuid`;

/** Whose row it is: the organisation of the transaction, which row-level security holds it to. */
export const organisationId = () => uuid('organisation_id').notNull().default(current);

/** The role that every transaction of the books runs as. It owns nothing and cannot pass row-level security by. */
export const booksRole = pgRole('colla_books').existing();

/** The role that finds the organisation of a session, and the list of organisations: it can read that and no more. */
export const doorRole = pgRole('colla_door').existing();

/** Rows of one organisation only, to read and to write. */
export const ofItsOrganisation = (column: AnyPgColumn) =>
  pgPolicy('of_its_organisation', {
    for: 'all',
    to: booksRole,
    using: sql`${column} = ${current}`,
    withCheck: sql`${column} = ${current}`,
  });

/** The door role finds rows of any organisation: the grant says which columns. */
export const atTheDoor = () => pgPolicy('at_the_door', { for: 'select', to: doorRole, using: sql`true` });

/** A column that holds one of the domain's words. */
export const oneOf = (name: string, column: AnyPgColumn, words: readonly string[]) =>
  check(name, sql`${column} in (${sql.raw(words.map((word) => `'${word}'`).join(', '))})`);

/** An instant and its zone are both there or both not. */
export const zoneBeside = (name: string, at: AnyPgColumn, zone: AnyPgColumn) =>
  check(name, sql`(${at} is null) = (${zone} is null)`);
