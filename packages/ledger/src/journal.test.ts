import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { journal, postingsOf, transfersFrom } from './journal.ts';
import { BANK, creditOf, day, EURO, income, owedBy, POUND, pence, posted } from './told.fixture.ts';

const head = {
  id: 'j1',
  on: day('02-10'),
  event: 'payment received',
  source: { kind: 'payment', id: 'y1' },
  currency: POUND,
  book: POUND,
};
const owed = owedBy('p1', 'i1');

describe('a journal', () => {
  it('becomes two postings for each transfer, credit before debit', () => {
    expect(postingsOf(journal({ ...head, transfers: [pence(owed, BANK, 5000n)] }))).toEqual([
      {
        journal: 'j1',
        on: day('02-10'),
        event: 'payment received',
        source: { kind: 'payment', id: 'y1' },
        currency: POUND,
        account: owed,
        amount: -5000n,
        book: -5000n,
      },
      {
        journal: 'j1',
        on: day('02-10'),
        event: 'payment received',
        source: { kind: 'payment', id: 'y1' },
        currency: POUND,
        account: BANK,
        amount: 5000n,
        book: 5000n,
      },
    ]);
  });

  it('of nothing is never posted', () => {
    expect(() => journal({ ...head, transfers: [] })).toThrow('a journal of nothing');
  });

  it('says one figure where there is one currency', () => {
    const two = { from: owed, to: BANK, amount: 5000n, book: 4999n };
    expect(() => journal({ ...head, transfers: [two] })).toThrow('two figures in one currency');
    expect(journal({ ...head, currency: EURO, transfers: [two] }).transfers).toEqual([two]);
  });

  it('holds no transfer that could not be made by itself', () => {
    expect(() => journal({ ...head, transfers: [pence(owed, BANK, -5n)] })).toThrow('less than nothing');
  });
});

const account = fc.constantFrom(BANK, owed, creditOf('p1'), creditOf('p2'), income('rehearsal'));
const sum = fc.bigInt({ min: 0n, max: 10n ** 15n });
const transfers = fc
  .array(
    fc.record({
      from: account,
      to: account,
      amount: sum,
      book: sum,
      party: fc.option(fc.constant('p1'), { nil: undefined }),
    }),
    { minLength: 1, maxLength: 8 },
  )
  .map((all) =>
    all
      .filter(({ from, to, amount, book }) => from !== to && amount + book > 0n)
      .map(({ party, ...of }) => ({ ...of, ...(party === undefined ? {} : { party }) })),
  )
  .filter((all) => all.length > 0);

describe('whatever a journal holds', () => {
  it('its postings sum to nothing in each currency', () => {
    fc.assert(
      fc.property(transfers, (all) => {
        const postings = posted({ id: 'j1', on: day('02-10'), currency: EURO, transfers: all });
        expect(postings.reduce((so, { amount }) => so + amount, 0n)).toBe(0n);
        expect(postings.reduce((so, { book }) => so + book, 0n)).toBe(0n);
      }),
    );
  });

  it('its transfers are read back from its postings', () => {
    fc.assert(
      fc.property(transfers, (all) => {
        expect(transfersFrom(posted({ id: 'j1', on: day('02-10'), currency: EURO, transfers: all }))).toEqual(
          all,
        );
      }),
    );
  });
});

it('postings that were damaged are not read as transfers', () => {
  const [credit, debit] = posted({ id: 'j1', on: day('02-10'), transfers: [pence(owed, BANK, 5000n)] });
  if (!credit || !debit) throw new Error('two postings were to be there');
  expect(() => transfersFrom([credit])).toThrow('without its other side');
  expect(() => transfersFrom([credit, { ...debit, amount: 5001n }])).toThrow('do not balance');
});
