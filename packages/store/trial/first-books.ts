// Books as the first version of the program kept them: its tables, and an agreed engagement with its invoice and a payment.

import { readMigrationFiles } from 'drizzle-orm/migrator';
import type { Connection } from '../src/connection.ts';
import { migrationsFolder } from '../src/migrate.ts';

const id = (number: number) => `10000000-0000-4000-8000-${String(number).padStart(12, '0')}`;

/** Who is who in them. */
export const firstBooks = {
  organisation: id(1),
  soloist: id(2),
  engagement: id(3),
  rehearsal: id(4),
  work: id(5),
  agreement: id(6),
  invoice: id(7),
  payment: id(8),
} as const;

/** Takes a database back to the first version, with what was kept then. */
export async function makeFirstBooks(owner: Connection): Promise<void> {
  const [first] = readMigrationFiles({ migrationsFolder });
  if (!first) throw new Error('there is no first migration');
  await owner.run(EMPTY);
  await owner.run(first.sql.join(';\n'));
  await owner.run(`insert into drizzle.__drizzle_migrations (hash, created_at)
    values ('${first.hash}', ${first.folderMillis})`);
  await owner.run(KEPT);
}

const EMPTY = `drop schema public cascade; drop schema drizzle cascade; create schema public; create schema drizzle;
  create table drizzle.__drizzle_migrations (id serial primary key, hash text not null, created_at bigint)`;

/** As the tariff of the agreement is kept: hours at 60.00 with 20 % VAT. */
export const firstTariff = {
  name: 'House tariff',
  currency: 'GBP',
  version: 1,
  from: '2026-01-01',
  clauses: [
    { id: 'rehearsal', kind: 'hourly', terms: { price: '60.00' } },
    { id: 'vat', kind: 'tax', terms: { name: 'VAT', rate: 2000 } },
  ],
};

const { organisation, soloist, engagement, rehearsal, work, agreement, invoice, payment } = firstBooks;
const call = {
  id: rehearsal,
  kind: 'rehearsal',
  start: '2026-03-12T10:00:00+00:00[Europe/London]',
  end: '2026-03-12T11:00:00+00:00[Europe/London]',
};

const KEPT = `
  select set_config('colla.organisation', '${organisation}', false);
  insert into organisations (id, name, address, pay_to, currency, zone, locale, paper, weekly_limit, holidays) values
    ('${organisation}', 'Wren Halloway, piano', '{}', '{}', 'GBP', 'Europe/London', 'en-GB', 'A4', 1800, '{2026-12-25}');
  insert into parties (id, name, filed_as, address) values ('${soloist}', 'Odalys Brandt', 'odalys brandt', '{}');
  insert into engagements (id, revision, title, stage, currency, soloist_party, soloist_level, sharers, circumstances,
      asked_at, asked_zone, call_count, first_at, first_zone, last_at, last_zone, parts_wanted) values
    ('${engagement}', 4, 'Spring recital', 'agreed', 'GBP', '${soloist}', 'grade 8', 1, '{}', '2026-02-01 09:15Z',
      'Europe/London', 1, '2026-03-12 10:00Z', 'Europe/London', '2026-03-12 10:00Z', 'Europe/London', 0);
  insert into payers (engagement_id, role, position, party_id) values ('${engagement}', 'payer', 0, '${soloist}');
  insert into calls (engagement_id, id, position, kind, place, starts_at, ends_at, zone, on_day, standing) values
    ('${engagement}', '${rehearsal}', 0, 'rehearsal', 'Hall', '2026-03-12 10:00Z', '2026-03-12 11:00Z',
      'Europe/London', '2026-03-12', 'agreed');
  insert into works (engagement_id, id, position, composer, title, minutes, requested, part_state, part_permission) values
    ('${engagement}', '${work}', 0, '', 'Three songs', 12, false, 'ready', 'not needed');
  insert into agreements (id, engagement_id, tariff, sentences, calls, holidays, agreed_at, agreed_zone, accepted_by) values
    ('${agreement}', '${engagement}', '${JSON.stringify(firstTariff)}', '[]', '${JSON.stringify([call])}', '{2026-12-25}',
      '2026-02-05 12:00Z', 'Europe/London', 'Odalys Brandt');
  insert into series (series, last) values ('2026', 1);
  insert into invoices (id, series, ordinal, number, engagement_id, title, currency, payer, from_name, from_address,
      to_party, to_name, to_address, pay_to, net, tax, total, issued_on, due_on) values
    ('${invoice}', '2026', 1, '2026-0001', '${engagement}', 'Spring recital', 'GBP', 'payer', 'Wren Halloway, piano', '{}',
      '${soloist}', 'Odalys Brandt', '{}', '{}', 6000, 1200, 7200, '2026-03-01', '2026-03-31');
  insert into invoice_lines (invoice_id, position, key, clause, category, what, calls, quantity_count, quantity_of, unit,
      rate, amount, currency, arithmetic) values
    ('${invoice}', 0, 'rehearsal:${rehearsal}', 'rehearsal', 'rehearsal', 'Rehearsal', '{${rehearsal}}', 60, 60, 'hour',
      6000, 6000, 'GBP', '1 × 60.00 = 60.00');
  insert into invoice_taxes (invoice_id, position, name, rate, code, inside, base, amount, currency) values
    ('${invoice}', 0, 'VAT', 2000, 'S', false, 6000, 1200, 'GBP');
  insert into payments (id, party_id, received_on, amount, currency, method, credit) values
    ('${payment}', '${soloist}', '2026-03-10', 5000, 'GBP', 'cash', 500);
  insert into allocations (payment_id, invoice_id, position, amount, currency) values
    ('${payment}', '${invoice}', 0, 4500, 'GBP');
  select set_config('colla.organisation', '', false)`;
