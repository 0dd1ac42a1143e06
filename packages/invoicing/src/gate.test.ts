import { type Agreed, agreeCall, cancelCall, changeCall, liftBlock, playCall } from '@colla/engagements';
import type { WrittenClause } from '@colla/rates';
import { granted } from '@colla/refusal';
import { describe, expect, it } from 'vitest';
import {
  at,
  BY_THE_HOUR,
  day,
  engaged,
  further,
  lasting,
  organisation,
  POUND,
  type Told,
} from './engaged.fixture.ts';
import { blockOf, type Gated, mayLift, mayPlay } from './gate.ts';

const payment = (due: object[], more: object = {}): WrittenClause => ({
  id: 'pay-first',
  kind: 'payment',
  terms: { due, gate: true, ...more },
});
/** A week before the first call: 26 January. */
const WEEK_BEFORE = payment([{ event: 'first call', days: -7 }]);
/** Three hours at 60.00: 180.00. */
const calls: readonly Told[] = [
  ['c1', 'rehearsal', '02-02T10:00'],
  ['c2', 'rehearsal', '02-09T10:00'],
  ['c3', 'recital', '02-16T19:00'],
];
const agreed = engaged([...BY_THE_HOUR, WEEK_BEFORE], calls);

const blocked = (engagement: Agreed, now: string, invoices: Gated['invoices'] = []) =>
  blockOf({ engagement, invoices, house: organisation }, at(now));
const invoice = (total: bigint, dueOn: string, paid: bigint, payer = 'payer') => ({
  invoice: { payer, total, issuedOn: day('01-06'), dueOn: day(dueOn) },
  paid,
});

describe('not paid, not played', () => {
  it.each([
    ['the day before the money is due', '01-25T23:59', undefined],
    ['the day on which it is due', '01-26T00:00', ['c1', 'c2', 'c3']],
    ['the day of the first call', '02-02T09:00', ['c1', 'c2', 'c3']],
  ])('on %s', (_, now, waiting) => {
    expect(blocked(agreed, now)?.calls).toEqual(waiting);
  });

  it('says by which clause, since when, and how much', () => {
    expect(blocked(agreed, '02-02T09:00')).toEqual({
      clause: 'pay-first',
      sentence: 'Payment is due 7 days before the first call; what is not paid by then is not played.',
      due: day('01-26'),
      owed: 18000n,
      currency: 'GBP',
      calls: ['c1', 'c2', 'c3'],
    });
  });

  it.each<[string, Gated['invoices'], bigint | undefined]>([
    ['nothing of an invoice came', [invoice(18000n, '01-26', 0n)], 18000n],
    ['a part of it came', [invoice(18000n, '01-26', 10000n)], 8000n],
    ['all came, though only a part was invoiced', [invoice(18000n, '01-26', 18000n)], undefined],
    ['the part that was invoiced came', [invoice(6000n, '01-26', 6000n)], 12000n],
  ])('when %s', (_, invoices, owed) => {
    expect(blocked(agreed, '02-02T09:00', invoices)?.owed).toBe(owed);
  });

  it('does not wait for what was played longer since, until that is due by an invoice of its own', () => {
    const longer = granted(playCall(agreed, 'c1', lasting(agreed, 'c1', 90), at('02-02T12:00'))) as Agreed;
    const paid = invoice(18000n, '01-26', 18000n);
    expect(blocked(longer, '02-09T09:00', [paid])).toBeUndefined();
    expect(blocked(longer, '02-09T09:00', [paid, invoice(3000n, '02-08', 0n)])?.owed).toBe(3000n);
  });

  it('does not wait for a cost of a later day', () => {
    const cost = { id: 'x1', what: 'Score', amount: 1250n };
    const clauses: WrittenClause[] = [...BY_THE_HOUR, { id: 'costs', kind: 'cost', terms: {} }, WEEK_BEFORE];
    const paid = [invoice(18000n, '01-26', 18000n)];
    const withCost = (on: string) => engaged(clauses, calls, { costs: [{ ...cost, on: day(on) }] });
    expect(blocked(withCost('02-03'), '02-09T09:00', paid)).toBeUndefined();
    expect(blocked(withCost('01-20'), '02-09T09:00', paid)?.owed).toBe(1250n);
  });

  it('asks no more than is owed once a call has fallen', () => {
    const fallen = granted(
      cancelCall(agreed, 'c3', { at: at('01-27T09:00'), by: 'payer', reason: 'other' }),
    ) as Agreed;
    expect(blocked(fallen, '02-02T09:00', [invoice(18000n, '01-26', 12000n)])).toBeUndefined();
  });

  it('waits for a call that is agreed later, from that day on', () => {
    const more = further(agreed, ['c4', 'rehearsal', '02-12T10:00']);
    const paid = [invoice(18000n, '01-26', 18000n)];
    expect(blocked(more as Agreed, '02-09T09:00', paid)).toBeUndefined();
    const longer = granted(agreeCall(more, 'c4', at('02-08T09:00'))) as Agreed;
    expect(blocked(longer, '02-09T09:00', paid)).toMatchObject({
      owed: 6000n,
      calls: ['c1', 'c2', 'c3', 'c4'],
    });
  });

  it('lets be played what comes before the money is due', () => {
    const before = engaged([...BY_THE_HOUR, payment([{ event: 'recital', days: -7 }])], calls);
    // a week before the recital is the day of the second rehearsal
    expect(blocked(before, '02-10T09:00')?.calls).toEqual(['c2', 'c3']);
  });

  it('reaches a call that is moved behind the day', () => {
    const before = engaged([...BY_THE_HOUR, payment([{ event: 'recital', days: -7 }])], calls);
    const planned = { start: at('02-10T10:00'), end: at('02-10T11:00') };
    const word = { at: at('02-01T09:00'), by: 'pianist' } as const;
    const moved = granted(changeCall(before, 'c1', { planned }, word)) as Agreed;
    expect(blocked(moved, '02-10T09:00')?.calls).toEqual(['c1', 'c2', 'c3']);
  });

  it('goes by the day of the invoice where only that makes it due', () => {
    const byInvoice = engaged([...BY_THE_HOUR, payment([{ event: 'invoice', days: 7 }])], calls);
    expect(blocked(byInvoice, '02-20T09:00')).toBeUndefined();
    expect(blocked(byInvoice, '02-08T09:00', [invoice(6000n, '02-08', 0n)])).toMatchObject({
      due: day('02-08'),
      owed: 6000n,
      calls: ['c2', 'c3'],
    });
  });

  it('goes month by month where it is paid so', () => {
    const monthly = engaged(
      [...BY_THE_HOUR, payment([{ event: 'agreement', days: 4 }], { instalments: 3 })],
      calls,
    );
    // 60.00 on 9 January, 9 February and 9 March
    expect(blocked(monthly, '02-08T09:00', [invoice(6000n, '01-09', 6000n)])).toBeUndefined();
    expect(blocked(monthly, '02-09T09:00', [invoice(6000n, '01-09', 6000n)])).toMatchObject({
      due: day('02-09'),
      owed: 6000n,
      calls: ['c2', 'c3'],
    });
  });

  it('goes month by month also where all of it stands on one invoice', () => {
    const monthly = engaged(
      [...BY_THE_HOUR, payment([{ event: 'agreement', days: 10 }], { instalments: 3 })],
      calls,
    );
    // 60.00 on 15 January, 15 February and 15 March
    const first = [invoice(18000n, '01-15', 6000n)];
    expect(blocked(monthly, '01-16T10:00', first)).toBeUndefined();
    expect(blocked(monthly, '02-15T10:00', first)).toMatchObject({ due: day('02-15'), owed: 6000n });
  });

  describe('with 45.00 held as a deposit', () => {
    const deposit = (counts: string): WrittenClause => ({
      ...{ id: 'deposit', kind: 'deposit' },
      terms: { of: { as: 'amount', amount: '45.00' }, due: [{ event: 'agreement', days: 3 }], counts },
    });
    const held = [{ engagement: 'e1', party: 'p1', amount: 4500n, currency: POUND }];
    const waiting = (counts: string, term: WrittenClause, now: string) =>
      blockOf(
        {
          engagement: engaged([...BY_THE_HOUR, deposit(counts), term], calls),
          invoices: [],
          deposits: held,
          house: organisation,
        },
        at(now),
      )?.owed;
    const monthly = payment([{ event: 'agreement', days: 10 }], { instalments: 3 });

    it.each([
      [
        '135.00 of 180.00, where it counts towards the final invoice',
        'the final invoice',
        WEEK_BEFORE,
        13500n,
      ],
      ['135.00, where it counts towards the next', 'the next invoice', WEEK_BEFORE, 13500n],
      ['all of it, where it counts towards nothing', 'nothing', WEEK_BEFORE, 18000n],
      ['the first of three parts whole, which is not the final invoice', 'the final invoice', monthly, 6000n],
      ['the rest of the first part, where it counts towards the next', 'the next invoice', monthly, 1500n],
    ])('waits for %s', (_, counts, term, owed) => {
      expect(waiting(counts, term, '02-02T09:00')).toBe(owed);
    });

    it('of another engagement, waits for everything', () => {
      const engagement = engaged([...BY_THE_HOUR, deposit('the final invoice'), WEEK_BEFORE], calls);
      const deposits = held.map((of) => ({ ...of, engagement: 'e2' }));
      const block = blockOf({ engagement, invoices: [], deposits, house: organisation }, at('02-02T09:00'));
      expect(block?.owed).toBe(18000n);
    });
  });

  it('goes part by part where each has a day of its own', () => {
    // Of 180.00 a third is due three days after the yes of 5 January, the rest on the day of the recital.
    const staged = engaged(
      [
        ...BY_THE_HOUR,
        payment([{ event: 'principal call', days: 0 }], {
          stages: [{ share: 3333, due: [{ event: 'agreement', days: 3 }] }],
        }),
      ],
      calls,
    );
    const paid = [invoice(18000n, '02-16', 6000n)];
    expect(blocked(staged, '01-07T09:00')).toBeUndefined();
    expect(blocked(staged, '01-08T09:00')).toMatchObject({ due: day('01-08'), owed: 5999n });
    expect(blocked(staged, '02-15T09:00', paid)).toBeUndefined();
    expect(blocked(staged, '02-16T09:00', paid)).toMatchObject({ owed: 12000n, calls: ['c3'] });
  });

  it('asks for the parts whose day is known, where the rest waits for its invoice', () => {
    const staged = engaged(
      [
        ...BY_THE_HOUR,
        payment([{ event: 'invoice', days: 14 }], {
          stages: [{ share: 5000, due: [{ event: 'first call', days: -7 }] }],
        }),
      ],
      calls,
    );
    expect(blocked(staged, '02-02T09:00')).toMatchObject({ due: day('01-26'), owed: 9000n });
  });

  it('lets nobody’s money stand for another’s', () => {
    const shared = engaged(
      [
        ...BY_THE_HOUR,
        {
          id: 'shared',
          kind: 'split',
          terms: {
            among: [
              { payer: 'school', parts: 2 },
              { payer: 'family', parts: 1 },
            ],
          },
        },
        WEEK_BEFORE,
      ],
      calls,
      { payers: { school: 'p2', family: 'p1' } },
    );
    const paid = [invoice(12000n, '01-26', 18000n, 'school')];
    expect(blocked(shared, '02-02T09:00', paid)?.owed).toBe(6000n);
  });

  it('is said of no engagement whose terms do not say it', () => {
    const trusting: WrittenClause = {
      id: 'payment',
      kind: 'payment',
      terms: { due: [{ event: 'first call', days: -7 }] },
    };
    expect(blocked(engaged([...BY_THE_HOUR, trusting], calls), '02-02T09:00')).toBeUndefined();
    expect(blocked(engaged(BY_THE_HOUR, calls), '02-02T09:00')).toBeUndefined();
  });
});

describe('a blocked call', () => {
  const now = at('02-02T10:00');
  const block = blocked(agreed, '02-02T10:00');

  it('is not played, and what mends it is said', () => {
    expect(mayPlay(block, 'c1')).toMatchObject({
      code: 'invoicing/not-paid',
      sentence:
        '180.00 is owed since 2026-01-26 and not received, and what is not paid by then is not played. Invoice it and enter the payment, or lift the block with a reason.',
    });
    expect(mayPlay(undefined, 'c1')).toBe(true);
  });

  it('may be lifted by itself; the others wait on', () => {
    expect(mayLift(block, 'c1')).toBe(true);
    const lifted = granted(liftBlock(agreed, 'c1', { at: now, reason: 'She pays on Friday.' })) as Agreed;
    const left = blocked(lifted, '02-02T10:00');
    expect(left?.calls).toEqual(['c2', 'c3']);
    expect(mayPlay(left, 'c1')).toBe(true);
    expect(mayLift(left, 'c1')).toMatchObject({ code: 'invoicing/not-blocked' });
  });
});
