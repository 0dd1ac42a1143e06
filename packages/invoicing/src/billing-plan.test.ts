import { cancelCall, changeCall, type Engagement, playCall } from '@colla/engagements';
import type { WrittenClause } from '@colla/rates';
import { granted } from '@colla/refusal';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Billable, billable } from './billable.ts';
import { BILLING_PLANS, type BillingPlan, invoiceable } from './billing-plan.ts';
import { AFTERWARDS, at, BY_THE_HOUR, day, engaged, lasting, statementOfAll } from './engaged.fixture.ts';

const CALLS = [
  ['c1', 'rehearsal', '02-02T10:00'],
  ['c2', 'rehearsal', '02-27T10:00'],
  ['c3', 'recital', '03-09T10:00'],
] as const;
const agreed = engaged(BY_THE_HOUR, CALLS);

function played(engagement: Engagement, ...ids: string[]): Engagement {
  return ids.reduce<Engagement>(
    (so, id) => granted(playCall(so, id, lasting(so, id, 60), AFTERWARDS)),
    engagement,
  );
}

function ask(
  plan: BillingPlan,
  engagement: Engagement,
  on: string,
  earlier: readonly Billable[] = [],
): Billable {
  const statement = { ...statementOfAll(engagement), asOf: at(`${on}T23:00`) };
  return billable(invoiceable({ plan, engagement, statement, earlier, on: day(on) }), 'payer', earlier);
}

describe('what may be invoiced of three calls of 60.00', () => {
  const none = agreed;
  const one = played(agreed, 'c1');
  const two = played(agreed, 'c1', 'c2');
  const all = played(agreed, 'c1', 'c2', 'c3');

  it.each([
    ['on agreement', 'before any is played', none, '01-06', 18000n],
    ['deposit then balance', 'before any is played', none, '01-06', 0n],
    ['deposit then balance', 'while one is ahead', two, '02-28', 0n],
    ['deposit then balance', 'once all are played', all, '03-09', 18000n],
    ['at the end', 'while one is ahead', two, '02-28', 0n],
    ['at the end', 'once all are played', all, '03-09', 18000n],
    ['after each call', 'before any is played', none, '01-06', 0n],
    ['after each call', 'after the first', one, '02-02', 6000n],
    ['after each call', 'after the second', two, '02-27', 12000n],
    ['monthly', 'after the first, in its month', one, '02-28', 0n],
    ['monthly', 'on the first of the next month', two, '03-01', 12000n],
    ['monthly', 'later in that month, though the third is played', all, '03-31', 12000n],
    ['monthly', 'on the first of the month after', all, '04-01', 18000n],
  ] as const)('%s, %s', (plan, _, engagement, on, total) => {
    expect(ask(plan, engagement, on).total).toBe(total);
  });

  it('after each call, less what was asked for before', () => {
    const first = ask('after each call', one, '02-02');
    expect(ask('after each call', two, '02-27', [first]).total).toBe(6000n);
  });

  it('after a call that fell, what its cancellation costs', () => {
    const word = { at: at('02-26T12:00'), by: 'payer', reason: 'other' } as const;
    expect(
      ask('after each call', granted(cancelCall(one, 'c2', word)), '02-27').lines.map(({ what, amount }) => [
        what,
        amount,
      ]),
    ).toEqual([
      ['Rehearsal', 6000n],
      ['Cancellation', 3000n],
    ]);
  });

  it('and what was asked for on agreement is not taken back because a call is moved to later', () => {
    const whole = ask('on agreement', none, '01-06');
    const planned = { start: at('05-02T10:00'), end: at('05-02T11:00') };
    const later = granted(changeCall(none, 'c3', { planned }));
    for (const plan of BILLING_PLANS) expect(ask(plan, later, '03-10', [whole]).lines).toEqual([]);
  });
});

describe('tax of a part is in proportion, and the last part has the rest', () => {
  it('of 60.00 of 180.00 with 7 % on top: 4.20 of 12.60', () => {
    const taxed = engaged(
      [...BY_THE_HOUR, { id: 'tax', kind: 'tax', terms: { name: 'VAT', rate: 700 } }],
      CALLS,
    );
    const first = ask('after each call', played(taxed, 'c1'), '02-02');
    expect([first.net, first.tax]).toEqual([6000n, 420n]);
    const statement = { ...statementOfAll(played(taxed, 'c1')), asOf: at('02-02T23:00') };
    const on = day('02-02');
    const part = invoiceable({
      plan: 'after each call',
      engagement: played(taxed, 'c1'),
      statement,
      earlier: [],
      on,
    });
    expect(part).toMatchObject({ net: 6000n, tax: 420n, total: 6420n });
    expect(part.payers).toEqual([{ payer: 'payer', net: 6000n, tax: 420n, total: 6420n }]);
  });

  it('and nothing on a coaching that is not taxed, asked for before the lesson that is', () => {
    const hourly = (id: string, kind: 'coaching' | 'lesson'): WrittenClause => ({
      ...{ id, kind: 'hourly', for: { calls: [kind] } },
      terms: { price: '100.00' },
    });
    const vat: WrittenClause = { id: 'vat', kind: 'tax', terms: { name: 'VAT', rate: 2000, on: ['taught'] } };
    const both = engaged(
      [hourly('coached', 'coaching'), hourly('taught', 'lesson'), vat],
      [
        ['c1', 'coaching', '02-02T10:00'],
        ['c2', 'lesson', '02-27T10:00'],
      ],
    );
    const first = ask('after each call', played(both, 'c1'), '02-02');
    expect(first).toMatchObject({ total: 10000n, tax: 0n, taxes: [] });
    // the lesson of 100.00 with 20.00
    expect(ask('after each call', played(both, 'c1', 'c2'), '02-27', [first])).toMatchObject({
      total: 12000n,
      taxes: [{ base: 10000n, amount: 2000n }],
    });
  });

  it('and of a tax on top of another so is what it is reckoned on', () => {
    const taxes: WrittenClause[] = [
      { id: 'gst', kind: 'tax', terms: { name: 'GST', rate: 500 } },
      { id: 'qst', kind: 'tax', terms: { name: 'QST', rate: 1000, onTopOf: ['gst'] } },
    ];
    const one = ask('after each call', played(engaged([...BY_THE_HOUR, ...taxes], CALLS), 'c1'), '02-02');
    // 5 % of 60.00 are 3.00; 10 % of 63.00 are 6.30
    expect(one.taxes).toMatchObject([
      { base: 6000n, amount: 300n },
      { base: 6300n, amount: 630n },
    ]);
  });

  const terms: WrittenClause[] = [
    ...BY_THE_HOUR,
    { id: 'tax', kind: 'tax', terms: { name: 'VAT', rate: 1900, inside: true, not: ['rehearsal'] } },
  ];
  const two = engaged(terms, CALLS);
  const step = fc.record({
    id: fc.constantFrom('c1', 'c2', 'c3'),
    minutes: fc.integer({ min: 1, max: 300 }),
    plan: fc.constantFrom(...BILLING_PLANS),
    on: fc.constantFrom('02-02', '02-27', '03-01', '03-09', '04-01'),
  });

  it('whatever was asked for by whatever plan, the parts are the statement in the end', () => {
    fc.assert(
      fc.property(fc.array(step, { maxLength: 6 }), (steps) => {
        const asked: Billable[] = [];
        let engagement: Engagement = two;
        for (const { id, minutes, plan, on } of steps) {
          engagement = granted(playCall(engagement, id, lasting(engagement, id, minutes), AFTERWARDS));
          asked.push(ask(plan, engagement, on, asked));
        }
        const done = played(engagement, 'c1', 'c2', 'c3');
        asked.push(ask('at the end', done, '12-31', asked));
        const sum = (part: 'net' | 'tax' | 'total') => asked.reduce((so, of) => so + of[part], 0n);
        const { net, tax, total } = statementOfAll(done);
        expect([sum('net'), sum('tax'), sum('total')]).toEqual([net, tax, total]);
      }),
      { numRuns: 100 },
    );
  });
});
