// The walls between organisations: drawn by the database itself, so that a mistake above it cannot pass them.

import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { agreed, at, draft, inquiry, newBooks, newId, party, TODAY, tariff } from '../trial/cast.ts';
import { databases, type Trial } from '../trial/databases.ts';
import type { Connection } from './connection.ts';

describe.each(databases)('$name', (database) => {
  let trial: Trial;
  let ours: Awaited<ReturnType<typeof newBooks>>;
  let theirs: Awaited<ReturnType<typeof newBooks>>;
  const kept = { engagement: '', invoice: '', tariff: newId(), payment: newId(), season: newId() };

  beforeAll(async () => {
    trial = await database.begin();
    ours = await newBooks(trial.store);
    theirs = await newBooks(trial.store);
    const engagement = agreed(inquiry(theirs));
    await trial.store.within(theirs.home.id, async (books) => {
      await books.addTariffVersion(kept.tariff, tariff());
      await books.saveEngagement(engagement);
      const invoice = await books.issueInvoice(
        draft(engagement, theirs),
        { id: newId(), series: '2026' },
        TODAY,
      );
      Object.assign(kept, { engagement: engagement.id, invoice: invoice.id });
      await books.savePayment(
        {
          id: kept.payment,
          party: theirs.soloist.id,
          receivedOn: invoice.issuedOn,
          amount: 100n,
          currency: invoice.currency,
          method: 'cash',
          allocations: [{ invoice: invoice.id, amount: 100n }],
          credit: 0n,
        },
        TODAY,
      );
      await books.saveSeason({ id: kept.season, name: 'Theirs', from: invoice.issuedOn, to: invoice.dueOn });
    });
  });
  afterAll(() => trial.end());

  test('the books of one organisation show nothing of another, by id or in a list', async () => {
    const [agreement] = await trial.store.within(theirs.home.id, async (books) => {
      const found = await books.engagement(kept.engagement);
      return found?.stage === 'agreed' ? [found.agreement.id] : [];
    });
    await trial.store.within(ours.home.id, async (books) => {
      expect((await books.organisation()).id).toBe(ours.home.id);
      expect(await books.party(theirs.soloist.id)).toBeUndefined();
      expect(await books.partyNames([theirs.soloist.id])).toEqual(new Map());
      expect(await books.tariff(kept.tariff)).toBeUndefined();
      expect(await books.engagement(kept.engagement)).toBeUndefined();
      expect(await books.lockEngagement(kept.engagement)).toBeUndefined();
      expect(await books.agreement(agreement ?? '')).toBeUndefined();
      expect(await books.invoice(kept.invoice)).toBeUndefined();
      expect(await books.lockInvoice(kept.invoice)).toBeUndefined();
      expect(await books.invoicesOf([kept.engagement])).toEqual([]);
      expect(await books.askedOf(kept.engagement)).toEqual([]);
      expect(await books.paymentsOf(kept.engagement)).toEqual([]);
      expect(await books.season(kept.season)).toBeUndefined();
      const page = { limit: 100 };
      const now = at('2026-02-10', '10:00').toInstant();
      expect((await books.parties(page)).items.map(({ id }) => id)).toEqual([
        ours.soloist.id,
        ours.school.id,
      ]);
      for (const list of [books.tariffs(page), books.engagements({ ...page, now }), books.invoices(page)]) {
        expect((await list).items).toEqual([]);
      }
      expect((await books.payments(page)).items).toEqual([]);
      expect((await books.seasons(page)).items).toEqual([]);
    });
  });

  test('an engagement cannot name a party of another organisation', async () => {
    const saving = trial.store.within(ours.home.id, (books) => books.saveEngagement(inquiry(theirs)));
    await expect(saving).rejects.toThrow(/foreign key/);
  });

  test('a party of the same id in two organisations is two parties', async () => {
    await trial.store.within(ours.home.id, (books) =>
      books.saveParty({ ...party('Namesake'), id: theirs.soloist.id }),
    );
    const there = await trial.store.within(theirs.home.id, (books) => books.party(theirs.soloist.id));
    expect(there?.name).toBe('Odalys Brandt');
  });

  describe('in the bare database', () => {
    let owner: Connection;
    beforeAll(async () => {
      owner = await trial.bare();
    });
    afterAll(() => owner.close());

    /** What a statement comes to for a role, with the setting of one organisation or none; nothing of it is kept. */
    async function as(role: string, statement: string, organisation?: string) {
      await owner.run(`begin; set local role ${role}`);
      if (organisation) await owner.run(`select set_config('colla.organisation', '${organisation}', true)`);
      const answer = await owner.query(statement, []).catch((reason: Error) => reason.message);
      await owner.run('rollback');
      return answer;
    }

    test('a row for another organisation is turned down', async () => {
      const insert = `insert into parties (organisation_id, id, name, filed_as, address)
        values ('${theirs.home.id}', '${newId()}', 'x', 'x', '{}')`;
      expect(await as('colla_books', insert, ours.home.id)).toMatch(/row-level security/);
      const move = `update parties set organisation_id = '${theirs.home.id}' where id = '${ours.school.id}'`;
      expect(await as('colla_books', move, ours.home.id)).toMatch(/row-level security/);
    });

    test('where no organisation is set nothing is seen and nothing can be entered', async () => {
      for (const table of ['organisations', 'parties', 'engagements', 'invoices', 'sessions']) {
        expect(await as('colla_books', `select * from ${table}`)).toEqual([]);
      }
      const insert = `insert into parties (id, name, filed_as, address) values ('${newId()}', 'x', 'x', '{}')`;
      expect(await as('colla_books', insert)).toMatch(/row-level security|null value/);
    });

    test('what was issued, agreed or received can be neither altered nor removed', async () => {
      const issued = [
        'invoices',
        'invoice_lines',
        'invoice_taxes',
        'payments',
        'allocations',
        'journals',
        'postings',
        'documents',
      ];
      for (const table of [...issued, 'agreements', 'tariff_versions']) {
        const alter = `update ${table} set organisation_id = organisation_id`;
        expect(await as('colla_books', alter, theirs.home.id)).toMatch(/permission denied/);
        expect(await as('colla_books', `delete from ${table}`, theirs.home.id)).toMatch(/permission denied/);
      }
    });

    test('nothing is added to an invoice afterwards', async () => {
      const tax = `insert into invoice_taxes (invoice_id, position, name, rate, code, inside, base, amount, currency)
        values ('${kept.invoice}', 9, 'x', 0, 'S', false, 0, 0, 'GBP')`;
      expect(await as('colla_books', tax, theirs.home.id)).toMatch(/never added to/);
    });

    test('the roles own nothing, cannot log in, and cannot pass the walls by', async () => {
      const roles = await owner.query(
        `select rolname::text, rolcanlogin, rolsuper, rolbypassrls, rolcreaterole, rolcreatedb,
           (select count(*)::integer from pg_class where relowner = pg_roles.oid)
         from pg_roles where rolname in ('colla_books', 'colla_door') order by rolname`,
        [],
      );
      expect(roles).toEqual([
        ['colla_books', false, false, false, false, false, 0],
        ['colla_door', false, false, false, false, false, 0],
      ]);
    });

    test('every table of the books has its walls, and they bind its owner too', async () => {
      const tables = await owner.query(
        `select relname::text, relrowsecurity and relforcerowsecurity from pg_class
         where relkind = 'r' and relnamespace = 'public'::regnamespace`,
        [],
      );
      expect(tables).toHaveLength(24);
      expect(tables.filter(([, walled]) => !walled)).toEqual([]);
    });

    test('every primary key begins with the organisation', async () => {
      const keys = await owner.query(
        `select conrelid::regclass::text from pg_constraint join pg_attribute
           on attrelid = conrelid and attnum = conkey[1]
         where contype = 'p' and connamespace = 'public'::regnamespace and attname <> 'organisation_id'`,
        [],
      );
      // An organisation's own id is its primary key.
      expect(keys).toEqual([['organisations']]);
    });

    test('at the door only whose a session is, and which organisations there are, can be read', async () => {
      const both = [[ours.home.id], [theirs.home.id]];
      expect(await as('colla_door', 'select id from organisations order by entered')).toEqual(both);
      expect(await as('colla_door', 'select name from organisations')).toMatch(/permission denied/);
      expect(await as('colla_door', 'select * from parties')).toMatch(/permission denied/);
      const insert = "insert into sessions (token_hash, until) values ('x', now())";
      expect(await as('colla_door', insert)).toMatch(/permission denied/);
    });
  });
});
