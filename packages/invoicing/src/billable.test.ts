import { agreeCall, cancelCall, changeCall, type Engagement, playCall } from '@colla/engagements';
import { toDecimal } from '@colla/money';
import type { WrittenClause } from '@colla/rates';
import { granted } from '@colla/refusal';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Asked, type Billable, billable, leftToInvoice, payersOf } from './billable.ts';
import {
  AFTERWARDS,
  at,
  BY_THE_HOUR,
  engaged,
  further,
  lasting,
  POUND,
  statementOfAll,
} from './engaged.fixture.ts';
import { issuable } from './invoice.ts';

const pounds = (minor: bigint) => toDecimal(minor, POUND);
const figures = ({ lines }: Billable) => lines.map(({ what, amount }) => [what, pounds(amount)]);
const ask = (engagement: Engagement, earlier: readonly Asked[], payer = 'payer') =>
  billable(statementOfAll(engagement), payer, earlier);

const TWO_HOURS = [
  ['c1', 'rehearsal', '02-02T10:00'],
  ['c2', 'rehearsal', '02-09T10:00'],
] as const;

describe('the first invoice asks for the whole statement', () => {
  const agreed = engaged(BY_THE_HOUR, TWO_HOURS);

  it('line by line, with the figures the statement has', () => {
    const statement = statementOfAll(agreed);
    const first = ask(agreed, []);
    expect(first.lines.map(({ key, amount, arithmetic }) => ({ key, amount, arithmetic }))).toEqual(
      statement.lines.map(({ key, amount, arithmetic }) => ({ key, amount, arithmetic })),
    );
    expect(first).toMatchObject({ net: 12000n, tax: 0n, total: 12000n });
  });

  it('and then nothing is left', () => {
    expect(ask(agreed, [ask(agreed, [])])).toEqual({
      payer: 'payer',
      lines: [],
      taxes: [],
      net: 0n,
      tax: 0n,
      total: 0n,
    });
  });
});

describe('after an invoice, only the difference is asked for', () => {
  const agreed = engaged(BY_THE_HOUR, TWO_HOURS);
  const first = ask(agreed, []);

  it('of a call that was added', () => {
    const more = granted(agreeCall(further(agreed, ['c3', 'rehearsal', '02-16T10:00']), 'c3', AFTERWARDS));
    expect(figures(ask(more, [first]))).toEqual([['Rehearsal', '60.00']]);
  });

  it('of a call that ran over', () => {
    const longer = granted(playCall(agreed, 'c1', lasting(agreed, 'c1', 75), AFTERWARDS));
    const next = ask(longer, [first]);
    expect(figures(next)).toEqual([['Rehearsal, changed', '15.00']]);
    expect(next.lines[0]?.arithmetic).toMatch(/ = 75\.00; invoiced before 60\.00$/);
  });

  it('of a call that was shorter: less than nothing, which is owed back and not asked for', () => {
    const shorter = granted(playCall(agreed, 'c1', lasting(agreed, 'c1', 45), AFTERWARDS));
    const next = ask(shorter, [first]);
    expect(figures(next)).toEqual([['Rehearsal, changed', '-15.00']]);
    expect(issuable({ billable: next })).toMatchObject({
      code: 'invoicing/less-than-invoiced',
      facts: { minorUnits: '1500' },
    });
  });

  it('of a shorter call and an added one together', () => {
    const shorter = granted(playCall(agreed, 'c1', lasting(agreed, 'c1', 45), AFTERWARDS));
    const more = granted(agreeCall(further(shorter, ['c3', 'rehearsal', '02-16T10:00']), 'c3', AFTERWARDS));
    expect(ask(more, [first]).total).toBe(4500n);
  });

  it('of a call that fell late: its fee is taken back and half of it asked for', () => {
    const fallen = granted(cancelCall(agreed, 'c2', { at: at('02-08T10:00'), by: 'payer', reason: 'other' }));
    const next = ask(fallen, [first]);
    expect(figures(next)).toEqual([
      ['Cancellation', '30.00'],
      ['Rehearsal, taken back', '-60.00'],
    ]);
    expect(next.total).toBe(-3000n);
  });

  it('of a call that was moved to a day that costs no supplement', () => {
    const sundays: WrittenClause[] = [
      ...BY_THE_HOUR,
      {
        id: 'sunday',
        kind: 'supplement',
        for: { days: ['sunday'] },
        terms: { what: 'Sunday', by: { as: 'amount', amount: '12.00' } },
      },
    ];
    const sunday = engaged(sundays, [['c1', 'rehearsal', '02-01T10:00']]);
    const planned = { start: at('02-02T10:00'), end: at('02-02T11:00') };
    const monday = granted(changeCall(sunday, 'c1', { planned }));
    expect(figures(ask(monday, [ask(sunday, [])]))).toEqual([['Sunday, taken back', '-12.00']]);
  });

  it('of a call that was moved and costs the same: nothing', () => {
    const planned = { start: at('02-03T10:00'), end: at('02-03T11:00') };
    expect(ask(granted(changeCall(agreed, 'c1', { planned })), [first]).lines).toEqual([]);
  });

  it('and what was taken back once is not taken back again', () => {
    const fallen = granted(cancelCall(agreed, 'c2', { at: at('02-02T10:00'), by: 'payer', reason: 'other' }));
    const second = ask(fallen, [first]);
    expect(figures(second)).toEqual([['Rehearsal, taken back', '-60.00']]);
    expect(ask(fallen, [first, second]).lines).toEqual([]);
  });
});

describe('several payers are asked each for their own part', () => {
  const split: WrittenClause[] = [
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
  ];
  const payers = { school: 'p2', family: 'p1' };
  const agreed = engaged(split, [['c1', 'rehearsal', '02-02T10:00']], { payers });
  const played = granted(playCall(agreed, 'c1', lasting(agreed, 'c1', 50), AFTERWARDS));

  it('and the parts are the whole: 50.00 is 33.33 and 16.67', () => {
    expect(payersOf(statementOfAll(played), [])).toEqual(['school', 'family']);
    expect(pounds(ask(played, [], 'school').total)).toBe('33.33');
    expect(pounds(ask(played, [], 'family').total)).toBe('16.67');
    expect(leftToInvoice(statementOfAll(played), [])).toBe(5000n);
  });

  it('whatever the other has been asked for', () => {
    const toSchool = ask(played, [], 'school');
    expect(ask(played, [toSchool], 'school').total).toBe(0n);
    expect(pounds(ask(played, [toSchool], 'family').total)).toBe('16.67');
    expect(leftToInvoice(statementOfAll(played), [toSchool])).toBe(1667n);
  });

  it('and one the statement no longer names is still owed back', () => {
    const stranger: Asked = { ...ask(played, [], 'family'), payer: 'grandmother' };
    expect(payersOf(statementOfAll(played), [stranger])).toEqual(['school', 'family', 'grandmother']);
    expect(pounds(ask(played, [stranger], 'grandmother').total)).toBe('-16.67');
  });
});

describe('the tax of all invoices is the tax of the whole', () => {
  const inside = (prices: readonly string[]): WrittenClause[] => [
    ...prices.map(
      (price, index): WrittenClause => ({
        id: `part-${index + 1}`,
        kind: 'fixed',
        for: { labels: [`part ${index + 1}`] },
        terms: { price },
      }),
    ),
    { id: 'tax', kind: 'tax', terms: { name: 'VAT', rate: 2000, inside: true } },
  ];

  /** Invoices one part after the other, as each is added. */
  function invoiceByParts(prices: readonly string[]): Billable[] {
    const asked: Billable[] = [];
    let engagement: Engagement = engaged(inside(prices), [['c1', 'recital', '02-01T10:00', 'part 1']]);
    for (const index of prices.keys()) {
      const id = `c${index + 1}`;
      if (index > 0) {
        const told = [id, 'recital', `02-0${index + 1}T10:00`, `part ${index + 1}`] as const;
        engagement = granted(agreeCall(further(engagement, told), id, AFTERWARDS));
      }
      asked.push(ask(engagement, asked));
    }
    return asked;
  }

  // HMRC VAT Guide (Notice 700), advance payments, from memory: 100.00 in thirds holds 16.67 of tax, though each
  // third rounded by itself would hold 5.56, together 16.68. The parts are found by difference.
  it('a fee of 100.00 asked for in thirds holds 16.67 of it', () => {
    const thirds = invoiceByParts(['33.33', '33.33', '33.34']);
    expect(thirds.map(({ total }) => pounds(total))).toEqual(['33.33', '33.33', '33.34']);
    // 33.33 holds 5.56; 66.66 holds 11.11, which leaves 5.55; 100.00 holds 16.67, which leaves 5.56
    expect(thirds.map(({ tax }) => pounds(tax))).toEqual(['5.56', '5.55', '5.56']);
  });

  // Same source: 100.00 of 600.00 first holds 16.67, the balance of 500.00 the other 83.33 of 100.00
  it('a deposit of 100.00 and a balance of 500.00 hold 100.00 of it', () => {
    const parts = invoiceByParts(['100.00', '500.00']);
    expect(parts.map(({ tax, net }) => [pounds(tax), pounds(net)])).toEqual([
      ['16.67', '83.33'],
      ['83.33', '416.67'],
    ]);
  });

  it('and is taken back with the last call it was on', () => {
    const onTop: WrittenClause[] = [
      ...BY_THE_HOUR,
      { id: 'tax', kind: 'tax', terms: { name: 'VAT', rate: 2000 } },
    ];
    const agreed = engaged(onTop, [['c1', 'rehearsal', '02-09T10:00']]);
    const first = ask(agreed, []);
    expect(pounds(first.total)).toBe('72.00');
    const fallen = granted(cancelCall(agreed, 'c1', { at: at('02-02T10:00'), by: 'payer', reason: 'other' }));
    const next = ask(fallen, [first]);
    expect(next.taxes.map(({ base, amount }) => [pounds(base), pounds(amount)])).toEqual([
      ['-60.00', '-12.00'],
    ]);
    expect(pounds(next.total)).toBe('-72.00');
  });
});

it('a tax says what it is not on, and a fee that fell is not among that: its tax is taken back with it', () => {
  const notOnRehearsals: WrittenClause[] = [
    ...BY_THE_HOUR,
    { id: 'tax', kind: 'tax', terms: { name: 'VAT', rate: 2000, not: ['rehearsal'] } },
  ];
  const agreed = engaged(notOnRehearsals, [
    ['c1', 'rehearsal', '02-02T10:00'],
    ['c2', 'recital', '02-09T10:00'],
    ['c3', 'recital', '02-10T10:00'],
  ]);
  const first = ask(agreed, []);
  const word = { at: at('02-09T10:01'), by: 'payer', reason: 'other' } as const;
  const fallen = granted(cancelCall(agreed, 'c3', word));
  const [before, after] = [first, ask(fallen, [first])].map(({ taxes }) => taxes[0]?.not);
  expect([before?.includes('rehearsal'), before?.includes('performance')]).toEqual([true, false]);
  expect([after?.includes('rehearsal'), after?.includes('performance')]).toEqual([true, false]);
});

describe('what is asked says why', () => {
  const vat = (id: string, terms: object): WrittenClause => ({
    id,
    kind: 'tax',
    terms: { name: 'VAT', ...terms },
  });
  const agreed = engaged([...BY_THE_HOUR, vat('vat', { rate: 2000 })], TWO_HOURS);
  const first = ask(agreed, []);

  it('by the facts a line was reckoned from, and of one taken back by none', () => {
    expect(first.lines[0]?.facts).toContainEqual({ name: 'planned', value: '1 h' });
    const fallen = granted(cancelCall(agreed, 'c2', { at: at('02-02T10:00'), by: 'payer', reason: 'other' }));
    expect(ask(fallen, [first]).lines.map(({ facts }) => facts)).toEqual([[]]);
  });

  it('by the clause of a tax and its arithmetic, with what was invoiced before', () => {
    expect(first.taxes[0]).toMatchObject({ clause: 'vat', amount: 2400n });
    expect(first.taxes[0]?.arithmetic).toMatch(/120\.00 = 24\.00$/);
    const longer = granted(playCall(agreed, 'c1', lasting(agreed, 'c1', 90), AFTERWARDS));
    // half an hour more is 30.00, and a fifth of it 6.00
    const [tax] = ask(longer, [first]).taxes;
    expect(tax).toMatchObject({ clause: 'vat', base: 3000n, amount: 600n });
    expect(tax?.arithmetic).toMatch(/150\.00 = 30\.00; invoiced before 24\.00$/);
  });

  it('by the words that the law wants beside a tax', () => {
    const wording = 'VAT is owed by the recipient.';
    const reversed = engaged([...BY_THE_HOUR, vat('reverse', { rate: 0, code: 'AE', wording })], TWO_HOURS);
    expect(ask(reversed, []).taxes).toMatchObject([{ code: 'AE', wording, amount: 0n }]);
  });
});

describe('whatever happens between invoices', () => {
  const terms: WrittenClause[] = [
    ...BY_THE_HOUR,
    {
      id: 'shared',
      kind: 'split',
      terms: {
        among: [
          { payer: 'school', parts: 2 },
          { payer: 'family', parts: 3 },
        ],
      },
    },
    { id: 'tax', kind: 'tax', terms: { name: 'VAT', rate: 1900 } },
  ];
  const agreed = engaged(terms, TWO_HOURS, { payers: { school: 'p2', family: 'p1' } });
  const change = fc.record({
    id: fc.constantFrom('c1', 'c2'),
    minutes: fc.integer({ min: 1, max: 300 }),
    falls: fc.boolean(),
    invoice: fc.constantFrom('school', 'family', 'both'),
  });

  it('what was asked for and what is left are the statement, to the last penny of net and of tax', () => {
    fc.assert(
      fc.property(fc.array(change, { maxLength: 8 }), (changes) => {
        const asked: Billable[] = [];
        let engagement: Engagement = agreed;
        for (const { id, minutes, falls, invoice } of changes) {
          engagement = after(engagement, id, minutes, falls);
          for (const payer of ['school', 'family'].filter((payer) => invoice === 'both' || invoice === payer))
            asked.push(ask(engagement, asked, payer));
          const statement = statementOfAll(engagement);
          const left = payersOf(statement, asked).map((payer) => billable(statement, payer, asked));
          const sum = (part: (of: Billable) => bigint) =>
            [...asked, ...left].reduce((so, of) => so + part(of), 0n);
          expect([sum((of) => of.net), sum((of) => of.tax), sum((of) => of.total)]).toEqual([
            statement.net,
            statement.tax,
            statement.total,
          ]);
        }
      }),
      { numRuns: 60 },
    );
  });

  function after(engagement: Engagement, id: string, minutes: number, falls: boolean): Engagement {
    const is = engagement.calls.find((call) => call.id === id)?.standing.is;
    if (falls && is === 'agreed')
      return granted(cancelCall(engagement, id, { at: at('02-02T09:00'), by: 'payer', reason: 'other' }));
    return is === 'cancelled'
      ? engagement
      : granted(playCall(engagement, id, lasting(engagement, id, minutes), AFTERWARDS));
  }
});
