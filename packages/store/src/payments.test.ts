// Payments: what came in, what it was for, and never more than was asked.

import { type Payment, receive } from '@colla/invoicing';
import { granted } from '@colla/refusal';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { agreed, day, draft, GBP, inquiry, newBooks, newId, TODAY } from '../trial/cast.ts';
import { databases, type Trial } from '../trial/databases.ts';

describe.each(databases)('$name', (database) => {
  let trial: Trial;
  beforeAll(async () => {
    trial = await database.begin();
  });
  afterAll(() => trial.end());

  /** Books with one invoice of 180.00. */
  async function owed() {
    const cast = await newBooks(trial.store);
    const engagement = agreed(inquiry(cast));
    const invoice = await trial.store.within(cast.home.id, async (books) => {
      await books.saveEngagement(engagement);
      return books.issueInvoice(draft(engagement, cast), { id: newId(), series: '2026' }, TODAY);
    });
    return { ...cast, engagement, invoice };
  }
  type Owed = Awaited<ReturnType<typeof owed>>;

  const payment = ({ invoice, soloist }: Owed, amount: bigint, changes: Partial<Payment> = {}): Payment => ({
    id: newId(),
    party: soloist.id,
    receivedOn: day('2026-04-01'),
    amount,
    currency: GBP,
    method: 'bank transfer',
    allocations: [{ invoice: invoice.id, amount }],
    credit: 0n,
    ...changes,
  });

  test('payments come back as they were kept, and are summed on their invoice', async () => {
    const books = await owed();
    const first = payment(books, 10_000n, { reference: '2026-0001 “first half”' });
    const second = payment(books, 9_000n, {
      method: 'cash',
      receivedOn: day('2026-04-02'),
      allocations: [{ invoice: books.invoice.id, amount: 8_000n }],
      credit: 1_000n,
    });
    await trial.store.within(books.home.id, async (kept) => {
      await kept.savePayment(first, TODAY);
      await kept.savePayment(second, TODAY);
      expect((await kept.payments({ limit: 10 })).items).toStrictEqual([second, first]);
      expect(await kept.paymentsOf(books.engagement.id)).toStrictEqual([first, second]);
      expect(await kept.paymentsOf(newId())).toEqual([]);
      expect(await kept.invoice(books.invoice.id)).toStrictEqual({ invoice: books.invoice, paid: 18_000n });
    });
  });

  test('two payments at once cannot both fill an invoice: the second sees what the first left', async () => {
    const { home, invoice, soloist } = await owed();
    const pay = () =>
      trial.store.within(home.id, async (books) => {
        const found = await books.lockInvoice(invoice.id);
        const left = { invoice: invoice.id, number: invoice.number, currency: GBP, party: soloist.id };
        const received = { id: newId(), receivedOn: day('2026-04-01'), amount: 15_000n, currency: GBP };
        const against = { ...left, owed: invoice.total - (found?.paid ?? 0n) };
        const how = { keepCredit: true, today: received.receivedOn };
        const kept = granted(receive({ ...received, method: 'card' }, against, how));
        await books.savePayment(kept, TODAY);
        return kept.credit;
      });
    const credits = await Promise.all([pay(), pay()]);
    // 180.00 owed and 150.00 paid twice: 30.00 for the invoice from the second, 120.00 kept as credit.
    expect(credits.sort()).toEqual([0n, 12_000n]);
    const kept = await trial.store.within(home.id, (books) => books.invoice(invoice.id));
    expect(kept?.paid).toBe(18_000n);
  });

  const turnedDown: [string, (of: Owed) => Payment, RegExp][] = [
    ['more than the invoice asks for', (of) => payment(of, 18_001n), /more than there is/],
    ['a sum that is not shared out in full', (of) => payment(of, 100n, { credit: 50n }), /not shared out/],
    ['nothing', (of) => payment(of, 0n, { allocations: [] }), /payments_amount/],
    [
      'an invoice that is not there',
      (of) => payment(of, 1n, { allocations: [{ invoice: newId(), amount: 1n }] }),
      /foreign key/,
    ],
  ];
  test.each(turnedDown)('a payment of %s is turned down by the books themselves', async (_, made, why) => {
    const of = await owed();
    const saving = trial.store.within(of.home.id, (books) => books.savePayment(made(of), TODAY));
    await expect(saving).rejects.toThrow(why);
    const kept = await trial.store.within(of.home.id, (books) => books.payments({ limit: 1 }));
    expect(kept.items).toEqual([]);
  });
});
