// Invoices: numbered without a gap, kept as they were issued, and never altered.

import type { Invoice } from '@colla/invoicing';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { agreed, day, draft, inquiry, newBooks, newId, TODAY } from '../trial/cast.ts';
import { databases, type Trial } from '../trial/databases.ts';

describe.each(databases)('$name', (database) => {
  let trial: Trial;
  beforeAll(async () => {
    trial = await database.begin();
  });
  afterAll(() => trial.end());

  /** Books with an engagement that is agreed and can be invoiced. */
  async function billed() {
    const cast = await newBooks(trial.store);
    const engagement = agreed(inquiry(cast));
    await trial.store.within(cast.home.id, (books) => books.saveEngagement(engagement));
    const issue = (series = '2026', meanwhile: () => Promise<void> = async () => undefined) =>
      trial.store.within(cast.home.id, async (books) => {
        const invoice = await books.issueInvoice(draft(engagement, cast), { id: newId(), series }, TODAY);
        await meanwhile();
        return invoice;
      });
    const load = (id: string) => trial.store.within(cast.home.id, (books) => books.invoice(id));
    return { ...cast, engagement, issue, load };
  }

  test('an invoice comes back as it was issued, and nothing is paid on it', async () => {
    const { issue, load } = await billed();
    const invoice = await issue();
    expect(await load(invoice.id)).toStrictEqual({ invoice, paid: 0n });
    // By hand: an hour at 60.00 and an hour and a half at 60.00 are 150.00; a fifth of it is 30.00 VAT.
    expect([invoice.net, invoice.tax, invoice.total]).toEqual([15_000n, 3_000n, 18_000n]);
    expect([invoice.number, invoice.dueOn.toString()]).toEqual(['2026-0001', '2026-04-03']);
  });

  test('an invoice without terms, notes and references comes back without them', async () => {
    const { home, soloist, engagement, load } = await billed();
    const { terms: _, note: __, ...bare } = draft(engagement, { home, soloist });
    const invoice = await trial.store.within(home.id, (books) =>
      books.issueInvoice(bare, { id: newId(), series: 'A' }, TODAY),
    );
    expect(await load(invoice.id)).toStrictEqual({ invoice, paid: 0n });
  });

  test('amounts beyond the exact range of a floating number come back to the cent', async () => {
    const { home, soloist, engagement, load } = await billed();
    const one = draft(engagement, { home, soloist });
    const [line] = one.billable.lines;
    if (!line) throw new Error('nothing is on the invoice');
    const huge = 9_007_199_254_740_993n;
    const whole = { ...line, rate: huge, amount: huge, quantity: { count: 1, of: 1 } };
    const billable = { ...one.billable, lines: [whole], taxes: [], net: huge, tax: 0n, total: huge };
    const invoice = await trial.store.within(home.id, (books) =>
      books.issueInvoice({ ...one, billable }, { id: newId(), series: '2026' }, TODAY),
    );
    expect((await load(invoice.id))?.invoice).toStrictEqual(invoice);
  });

  test('a tax of 9.975 % comes back as finely, with what has to be said beside it', async () => {
    const { home, soloist, engagement, load } = await billed();
    const one = draft(engagement, { home, soloist });
    const [tax] = one.billable.taxes;
    if (!tax) throw new Error('no tax is on the invoice');
    // 9.975 % of 150.00 is 14.9625, so 14.96
    const fine = { ...tax, rate: 997.5, amount: 1496n, wording: 'As the law of the place asks' };
    const billable = { ...one.billable, taxes: [fine], tax: 1496n, total: one.billable.net + 1496n };
    const invoice = await trial.store.within(home.id, (books) =>
      books.issueInvoice({ ...one, billable }, { id: newId(), series: '2026' }, TODAY),
    );
    expect((await load(invoice.id))?.invoice.taxes).toStrictEqual([fine]);
  });

  test('fifty who issue at once get one to fifty without a gap, although every fifth thinks better of it', async () => {
    const { issue, home } = await billed();
    const asks = Array.from({ length: 62 }, (_, n) =>
      issue('2026', async () => {
        if (n % 5 === 4) throw new Error('thought better of it');
      }),
    );
    const ends = await Promise.allSettled(asks);
    const issued = ends.flatMap((end) => (end.status === 'fulfilled' ? [end.value] : []));
    const ordinals = issued.map(({ ordinal }) => ordinal).sort((a, b) => a - b);
    expect(ordinals).toEqual(Array.from({ length: 50 }, (_, n) => n + 1));
    const kept = await trial.store.within(home.id, (books) => books.invoices({ limit: 100 }));
    expect(kept.items.map(({ invoice }) => invoice.ordinal).sort((a, b) => a - b)).toEqual(ordinals);
  });

  test('each series and each organisation counts for itself', async () => {
    const [one, other] = [await billed(), await billed()];
    const numbers = [
      await one.issue('2026'),
      await one.issue('2027'),
      await one.issue('2026'),
      await other.issue('2026'),
    ];
    expect(numbers.map(({ number }) => number)).toEqual(['2026-0001', '2027-0001', '2026-0002', '2026-0001']);
  });

  test('what was asked for before on an engagement is told in the order it was issued', async () => {
    const { home, engagement, issue } = await billed();
    const first = await issue();
    const second = await issue();
    const [asked, kept] = await trial.store.within(home.id, (books) =>
      Promise.all([books.askedOf(engagement.id), books.invoicesOf([engagement.id, newId()])]),
    );
    const told = ({ payer, lines, taxes }: Invoice) => ({ payer, lines, taxes });
    expect(asked).toStrictEqual([told(first), told(second)]);
    expect(kept.map(({ invoice }) => invoice.id)).toEqual([first.id, second.id]);
  });

  test('invoices are listed with the latest first', async () => {
    const { home, soloist, engagement } = await billed();
    const days = ['2026-03-20', '2026-05-01', '2026-04-01'];
    const listed = await trial.store.within(home.id, async (books) => {
      for (const on of days) {
        const dates = { issuedOn: day(on), dueOn: day('2026-06-01') };
        await books.issueInvoice(
          draft(engagement, { home, soloist }, dates),
          { id: newId(), series: 'x' },
          { today: day(on) },
        );
      }
      return books.invoices({ limit: 10 });
    });
    expect(listed.items.map(({ invoice }) => invoice.issuedOn.toString())).toEqual([
      '2026-05-01',
      '2026-04-01',
      '2026-03-20',
    ]);
  });

  test('an invoice whose lines do not come to its total is turned down when the transaction ends', async () => {
    const { home, soloist, engagement } = await billed();
    const one = draft(engagement, { home, soloist });
    const wrong = { ...one.billable, net: 1n, tax: 0n, total: 1n };
    const issuing = trial.store.within(home.id, (books) =>
      books.issueInvoice({ ...one, billable: wrong }, { id: newId(), series: '2026' }, TODAY),
    );
    await expect(issuing).rejects.toThrow(/does not add up/);
  });
});
