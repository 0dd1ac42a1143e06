// The ledger in the books: what is issued and received is posted with it, and the database holds every journal to its sums.

import type { Payment } from '@colla/invoicing';
import { balances, type Posted, trialBalance, trialBalanceOf } from '@colla/ledger';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { agreed, day, draft, EUR, GBP, inquiry, newBooks, newId, TODAY } from '../trial/cast.ts';
import { databases, type Trial } from '../trial/databases.ts';

describe.each(databases)('$name', (database) => {
  let trial: Trial;
  beforeAll(async () => {
    trial = await database.begin();
  });
  afterAll(() => trial.end());

  /** Books with one invoice of 180.00, VAT of 30.00 within it, issued on 20 March. */
  async function billed() {
    const cast = await newBooks(trial.store);
    const engagement = agreed(inquiry(cast));
    const issue = () =>
      trial.store.within(cast.home.id, (books) =>
        books.issueInvoice(draft(engagement, cast), { id: newId(), series: '2026' }, TODAY),
      );
    await trial.store.within(cast.home.id, (books) => books.saveEngagement(engagement));
    return { ...cast, engagement, invoice: await issue(), issue };
  }
  type Billed = Awaited<ReturnType<typeof billed>>;

  const payment = ({ soloist, invoice }: Billed, amount: bigint, credit: bigint): Payment => ({
    ...{ id: newId(), party: soloist.id, receivedOn: day('2026-04-01'), currency: GBP, credit },
    ...{ amount, method: 'bank transfer', allocations: [{ invoice: invoice.id, amount: amount - credit }] },
  });

  const pay = async (of: Billed, amount: bigint, credit: bigint) => {
    const received = payment(of, amount, credit);
    await trial.store.within(of.home.id, (books) => books.savePayment(received, TODAY));
    return received;
  };

  test('an invoice and a payment on it are journals, each with the id of its record', async () => {
    const of = await billed();
    const received = await pay(of, 20_000n, 2_000n);
    const [issued, came, none] = await trial.store.reading(of.home.id, (books) =>
      Promise.all([books.journal(of.invoice.id), books.journal(received.id), books.journal(newId())]),
    );
    const owed = { purpose: 'receivable', party: of.soloist.id, invoice: of.invoice.id };
    expect([issued?.journal.event, came?.journal.event, none]).toEqual([
      'invoice issued',
      'payment received',
      undefined,
    ]);
    // By hand: 60.00 of rehearsal, 90.00 of a recital by the hour, 30.00 VAT.
    expect(issued?.journal.transfers.map(({ from, to, amount }) => [from, to, amount])).toEqual([
      [{ purpose: 'income', kind: 'rehearsal' }, owed, 6_000n],
      [{ purpose: 'income', kind: 'performance' }, owed, 9_000n],
      [{ purpose: 'tax collected', tax: 'VAT' }, owed, 3_000n],
    ]);
    expect(came?.journal.transfers.map(({ from, to, amount }) => [from, to, amount])).toEqual([
      [owed, { purpose: 'bank' }, 18_000n],
      [{ purpose: 'credit held', party: of.soloist.id }, { purpose: 'bank' }, 2_000n],
    ]);
  });

  test('the database sums balances as the ledger does, for every question and as at any day', async () => {
    const of = await billed();
    await of.issue();
    await pay(of, 20_000n, 2_000n);
    const questions = [
      {},
      { asAt: day('2026-03-19') },
      { asAt: day('2026-03-20') },
      { purpose: 'receivable' as const, party: of.soloist.id },
      { invoice: of.invoice.id, currency: GBP },
      { party: of.soloist.id, asAt: day('2026-03-31') },
      { engagement: of.engagement.id },
      { kind: 'rehearsal' as const },
      { source: of.invoice.id },
    ];
    const asked = await trial.store.reading(of.home.id, async (books) => {
      const all = await books.posted({});
      const each = questions.map(async (which) => [
        inOrder(await books.balances(which)),
        inOrder(balances(all, which)),
      ]);
      return { all, each: await Promise.all(each) };
    });
    for (const [summed, reckoned] of asked.each) expect(summed).toEqual(reckoned);
    // 360.00 asked for and 200.00 received: 180.00 owed, 20.00 credit.
    expect(trialBalance(asked.all).total).toBe(38_000n);
    const held = await trial.store.reading(of.home.id, (books) => books.balances({}));
    expect(trialBalanceOf(held)).toEqual(trialBalance(asked.all));
  });

  const inOrder = (held: readonly Pick<Posted, 'account'>[]) =>
    held.toSorted((a, b) => (JSON.stringify(a.account) < JSON.stringify(b.account) ? -1 : 1));

  test('an invoice is paid by what the ledger says', async () => {
    const of = await billed();
    await pay(of, 10_000n, 0n);
    const kept = await trial.store.reading(of.home.id, (books) => books.invoice(of.invoice.id));
    expect(kept?.paid).toBe(10_000n);
  });

  test('nothing is posted to a closed year, and the record is not kept either', async () => {
    const of = await billed();
    await trial.store.within(of.home.id, async (books) => {
      const home = await books.lockOrganisation();
      await books.changeOrganisation({ ...home, closedThrough: day('2026-04-01') });
    });
    await expect(pay(of, 100n, 0n)).rejects.toThrow(
      'The books are closed up to 2026-04-01, and 2026-04-01 is within that. Give a day from 2026-04-02 on.',
    );
    await expect(of.issue()).rejects.toThrow(/closed up to/);
    await trial.store.reading(of.home.id, async (books) => {
      expect((await books.payments({ limit: 5 })).items).toEqual([]);
      expect((await books.invoices({ limit: 5 })).items).toHaveLength(1);
    });
  });

  test('a foreign invoice is posted in both currencies, and without its rate it is not issued', async () => {
    const of = await billed();
    await trial.store.within(of.home.id, async (books) => {
      await books.changeOrganisation({ ...(await books.lockOrganisation()), currency: EUR });
    });
    await expect(of.issue()).rejects.toThrow(/The books are kept in EUR, and this is in GBP/);
    const rate = { from: GBP, to: EUR, rate: '1.15', on: day('2026-03-20'), source: 'the bank of the place' };
    const invoice = await trial.store.within(of.home.id, (books) =>
      books.issueInvoice(draft(of.engagement, of), { id: newId(), series: '2026' }, { ...TODAY, rate }),
    );
    const issued = await trial.store.reading(of.home.id, (books) => books.journal(invoice.id));
    expect(issued?.journal.rate).toEqual(rate);
    // By hand: 180.00 GBP at 1.15 are 207.00 EUR.
    expect(issued?.journal.transfers.reduce((sum, { book }) => sum + book, 0n)).toBe(20_700n);
  });

  describe('whoever writes to it', () => {
    const journal = (id: string, but = '') => `insert into journals
      (organisation_id, id, on_day, event, source_kind, currency, book_currency)
      values ('${of.home.id}', '${id}', '2026-03-20', 'told', 'refund', 'GBP', ${but || "'GBP'"})`;
    const posting = (id: string, position: number, purpose: string, amount: number, book = amount) =>
      `insert into postings (organisation_id, journal_id, position, on_day, currency, purpose, amount, book)
        values ('${of.home.id}', '${id}', ${position}, '2026-03-20', 'GBP', '${purpose}', ${amount}, ${book})`;
    let of: Billed;
    beforeAll(async () => {
      of = await billed();
    });

    const [id, other] = [newId(), newId()];
    const turnedDown: [string, () => string[], RegExp][] = [
      ['a journal without postings', () => [journal(id)], /does not balance/],
      ['a journal of one side', () => [journal(id), posting(id, 0, 'bank', 5)], /does not balance/],
      [
        'a journal that does not balance',
        () => [journal(id), posting(id, 0, 'bank', 5), posting(id, 1, 'cash', -4)],
        /does not balance/,
      ],
      [
        'a journal that does not balance in the book',
        () => [journal(id, "'EUR'"), posting(id, 0, 'bank', 5, 6), posting(id, 1, 'cash', -5, -5)],
        /does not balance/,
      ],
      [
        'two figures in one currency',
        () => [journal(id), posting(id, 0, 'bank', 5, 6), posting(id, 1, 'cash', -5, -6)],
        /does not balance/,
      ],
      [
        'a posting added once its journal was looked at',
        () => [
          journal(id),
          posting(id, 0, 'bank', 5),
          posting(id, 1, 'cash', -5),
          'set constraints all immediate',
          posting(id, 2, 'bank', 5),
        ],
        /does not balance/,
      ],
      [
        'a posting of no journal',
        () => [posting(other, 0, 'bank', 5), posting(other, 1, 'cash', -5)],
        /postings_journal/,
      ],
      [
        'an addition to what was posted',
        () => [posting(of.invoice.id, 90, 'bank', 5), posting(of.invoice.id, 91, 'cash', -5)],
        /never added to/,
      ],
      [
        'a debt of nobody',
        () => [journal(id), posting(id, 0, 'receivable', 5), posting(id, 1, 'cash', -5)],
        /postings_account/,
      ],
      [
        'a change of what was posted',
        () => ['update postings set amount = amount'],
        /never altered or removed/,
      ],
      ['a change of a journal', () => ["update journals set event = 'other'"], /never altered or removed/],
      ['taking a posting out', () => ['delete from postings'], /never altered or removed/],
      ['taking a journal out', () => ['delete from journals'], /never altered or removed/],
      ['emptying the ledger', () => ['truncate journals cascade'], /never altered or removed/],
      [
        'more paid on an invoice than it asks for',
        () => [
          journal(id),
          posting(id, 0, 'bank', 18_001),
          posting(id, 1, 'receivable', -18_001).replace(
            /\(organisation_id(.*)\)\s+values \((.*)\)$/s,
            `(party_id, invoice_id, organisation_id$1) values ('${of.soloist.id}', '${of.invoice.id}', $2)`,
          ),
        ],
        /more would be paid/,
      ],
    ];
    test.each(turnedDown)('%s is turned down by the database itself', async (_, statements, why) => {
      await trial.asOwner(async (owner) => {
        const writing = async () => {
          await owner.run(`begin; select set_config('colla.organisation', '${of.home.id}', true)`);
          for (const statement of statements()) await owner.run(statement);
          await owner.run('commit');
        };
        await expect(writing()).rejects.toThrow(why);
        await owner.run('rollback');
      });
    });
  });
});
