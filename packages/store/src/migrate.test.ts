// Books that an earlier version of the program kept open under this one, and say what they said.

import { statementOf } from '@colla/engagements';
import { trialBalanceOf } from '@colla/ledger';
import { readTariff } from '@colla/rates';
import { granted } from '@colla/refusal';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { at } from '../trial/cast.ts';
import { databases, type Trial } from '../trial/databases.ts';
import { firstBooks, firstTariff, makeFirstBooks } from '../trial/first-books.ts';

describe.each(databases)('books of the first version, $name', (database) => {
  let trial: Trial;
  beforeAll(async () => {
    trial = await database.begin();
    await trial.asOwner(makeFirstBooks);
  });
  afterAll(() => trial.end());

  const reading = <Answer>(work: Parameters<typeof trial.store.reading<Answer>>[1]) =>
    trial.store.reading(firstBooks.organisation, work);

  test('the practice has no terms yet', async () => {
    const organisation = await reading((books) => books.organisation());
    expect(organisation).toMatchObject({ name: 'Wren Halloway, piano', holidays: ['2026-12-25'], terms: [] });
  });

  test('an agreed engagement is what it was, and of what was never asked nothing is said', async () => {
    const { rehearsal, work, soloist, agreement, engagement } = firstBooks;
    const planned = { start: at('2026-03-12', '10:00'), end: at('2026-03-12', '11:00') };
    const call = { id: rehearsal, kind: 'rehearsal' as const, planned };
    expect(await reading((books) => books.engagement(engagement))).toStrictEqual({
      stage: 'agreed',
      id: engagement,
      title: 'Spring recital',
      currency: 'GBP',
      soloistParty: soloist,
      payers: { payer: soloist },
      calls: [{ ...call, place: 'Hall', standing: { is: 'agreed' } }],
      programme: [
        {
          ...{ id: work, composer: '', title: 'Three songs', minutes: 12, requested: false },
          part: { state: 'ready', permission: 'not needed' },
        },
      ],
      legs: [],
      costs: [],
      moves: [],
      rolledOver: {},
      soloist: { level: 'grade 8' },
      sharers: 1,
      circumstances: [],
      askedAt: at('2026-02-01', '09:15'),
      agreement: {
        id: agreement,
        tariff: granted(readTariff(firstTariff)),
        sentences: [],
        calls: [call],
        holidays: ['2026-12-25'],
        terms: [],
        agreedAt: at('2026-02-05', '12:00'),
        acceptedBy: 'Odalys Brandt',
      },
    });
  });

  test('it comes to what it came to, whatever terms are entered since', async () => {
    const kept = await reading((books) => books.engagement(firstBooks.engagement));
    const house = { locale: 'en-GB', holidays: [], terms: [], soFar: 3 };
    const total = kept && statementOf(kept, at('2026-03-20', '10:00'), house)?.total;
    // an hour at 60.00 and 20 % VAT
    expect(total).toBe(7200n);
  });

  test('an invoice keeps its sums, and says no more of its lines than it did', async () => {
    const kept = await reading((books) => books.invoice(firstBooks.invoice));
    expect(kept?.invoice.total).toBe(7200n);
    expect(kept?.invoice.lines).toMatchObject([
      { amount: 6000n, facts: [], arithmetic: '1 × 60.00 = 60.00' },
    ]);
    expect(kept?.invoice.taxes).toStrictEqual([
      { name: 'VAT', rate: 2000, code: 'S', inside: false, base: 6000n, amount: 1200n },
    ]);
  });

  test('its invoice and its payment are posted, and the books balance', async () => {
    const { invoice, payment, soloist } = firstBooks;
    const [held, issued, paid, owed] = await reading((books) =>
      Promise.all([
        books.balances({}),
        books.journal(invoice),
        books.journal(payment),
        books.invoice(invoice),
      ]),
    );
    // 72.00 asked for, of which 12.00 are VAT; 50.00 came in cash, 45.00 of it for the invoice.
    expect(trialBalanceOf(held)).toEqual({
      rows: [
        { purpose: 'receivable', debit: 2700n, credit: 0n },
        { purpose: 'cash', debit: 5000n, credit: 0n },
        { purpose: 'credit held', debit: 0n, credit: 500n },
        { purpose: 'income', of: 'rehearsal', debit: 0n, credit: 6000n },
        { purpose: 'tax collected', of: 'VAT', debit: 0n, credit: 1200n },
      ],
      total: 7700n,
    });
    expect([issued?.journal.event, issued?.journal.on.toString()]).toEqual(['invoice issued', '2026-03-01']);
    expect([paid?.journal.event, paid?.journal.on.toString()]).toEqual(['payment received', '2026-03-10']);
    expect(owed?.paid).toBe(4500n);
    expect(held.find(({ account }) => account.purpose === 'credit held')?.account).toEqual({
      purpose: 'credit held',
      party: soloist,
    });
  });

  test('they are posted once, however often the books are opened', async () => {
    await trial.reopen();
    expect(await reading((books) => books.posted({}))).toHaveLength(8);
  });

  test('what is kept from now on says everything', async () => {
    await trial.store.within(firstBooks.organisation, async (books) => {
      const kept = await books.lockEngagement(firstBooks.engagement);
      if (!kept) throw new Error('it is not there');
      const { calls, programme } = kept;
      const lifted = { at: at('2026-03-12', '09:30'), reason: 'She pays on Friday.' };
      const told = {
        ...kept,
        calls: calls.map((call) => ({ ...call, lifted })),
        programme: programme.map((work) => ({ ...work, difficulty: 'hard', pages: 24 })),
        soloist: { level: 'grade 8', membership: 'guild' },
        rolledOver: { covered: 45 },
      };
      await books.saveEngagement(told);
      expect(await books.engagement(kept.id)).toStrictEqual(told);
    });
  });
});
