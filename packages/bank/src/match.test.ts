import { readFileSync } from 'node:fs';
import { readDay } from '@colla/calendar';
import { type Currency, currency } from '@colla/money';
import { granted } from '@colla/refusal';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readCamt } from './camt.ts';
import { creditorReference } from './creditor-reference.ts';
import type { BankEntry } from './entry.ts';
import { matchEntries } from './match.ts';
import type { OpenInvoice } from './open-invoices.ts';
import { textOf } from './text.ts';

const EURO = granted(currency('EUR'));
const POUND = granted(currency('GBP'));
const day = (text: string) => granted(readDay(`2026-${text}`));

/** Money that came in on 25 November. */
function paid(amount: bigint, facts: Partial<BankEntry> = {}): BankEntry {
  const identity = facts.identity ?? JSON.stringify([String(amount), facts.name, facts.words]);
  return {
    identity,
    on: day('11-25'),
    amount,
    currency: EURO,
    words: '',
    references: [],
    reversal: false,
    ...facts,
  };
}

/** An invoice of 1 November for Ines Aurich under its number's own reference. */
function invoice(number: string, owed: bigint, facts: Partial<OpenInvoice> = {}): OpenInvoice {
  const reference = granted(creditorReference(number));
  const payer = { party: 'ines', payer: 'Ines Aurich', currency: EURO, issuedOn: day('11-01') };
  return { invoice: number, number, reference, owed, ...payer, ...facts };
}

const LIND = { party: 'bo', payer: 'Bo Lind' };
const open = [
  invoice('2026-0041', 8000n),
  invoice('2026-0042', 9000n),
  invoice('2026-0043', 8000n, LIND),
  invoice('2026-0044', 12000n, LIND),
];

/** What is proposed for one entry, without its identity. */
function proposed(entry: BankEntry, invoices: readonly OpenInvoice[] = open) {
  const [match] = matchEntries([entry], invoices);
  if (!match) return undefined;
  const { entry: _, shares, ...rest } = match;
  return { ...rest, shares: shares.map(({ invoice, amount }) => `${invoice}: ${amount}`) };
}

// The check figures of 2026 0042 are 88: published-values.json.
describe('an entry that carries an invoice’s reference', () => {
  it('is certain where it pays the invoice to the cent, whoever paid', () => {
    expect(proposed(paid(9000n, { references: ['RF8820260042'], name: 'Nora Falk' }))).toEqual({
      party: 'ines',
      shares: ['2026-0042: 9000'],
      rest: 0n,
      strength: 'certain',
      reason: 'It carries the reference of invoice 2026-0042: it pays exactly what is owed.',
    });
  });

  it.each([
    [5000n, ['2026-0042: 5000'], 0n, 'it pays 50.00 EUR of the 90.00 EUR owed.'],
    [
      9500n,
      ['2026-0042: 9000'],
      500n,
      'it pays what is owed and 5.00 EUR more, which would be kept as credit.',
    ],
    [17000n, ['2026-0042: 9000', '2026-0041: 8000'], 0n, 'it pays that and invoice 2026-0041 exactly.'],
  ])('and comes to %s is likely, and said how it stands', (amount, shares, rest, standing) => {
    expect(proposed(paid(amount, { references: ['RF88 2026 0042'] }))).toEqual({
      party: 'ines',
      shares,
      rest,
      strength: 'likely',
      reason: `It carries the reference of invoice 2026-0042: ${standing}`,
    });
  });

  it('that is paid already is all credit, or for another of the payer’s that owes exactly this', () => {
    const again = [invoice('2026-0042', 0n), invoice('2026-0045', 9000n), ...open.slice(2)];
    const entry = (amount: bigint) => paid(amount, { references: ['RF8820260042'] });
    expect(proposed(entry(7000n), again)).toEqual({
      party: 'ines',
      shares: [],
      rest: 7000n,
      strength: 'likely',
      reason:
        'It carries the reference of invoice 2026-0042, which is paid already: all of it would be kept as credit.',
    });
    expect(proposed(entry(9000n), again)).toMatchObject({
      shares: ['2026-0045: 9000'],
      rest: 0n,
      strength: 'likely',
      reason:
        'It carries the reference of invoice 2026-0042, which is paid already: it pays invoice 2026-0045 exactly.',
    });
  });

  it('may carry it among the payer’s words', () => {
    expect(proposed(paid(9000n, { words: 'Recital rf88 2026 0042 danke' }))).toMatchObject({
      shares: ['2026-0042: 9000'],
      strength: 'certain',
      reason: 'Its words have the reference of invoice 2026-0042: it pays exactly what is owed.',
    });
  });

  it('may carry it before the invoice is issued: a payer who names it means it', () => {
    const later = [invoice('2026-0042', 9000n, { issuedOn: day('11-30') })];
    expect(proposed(paid(9000n, { references: ['RF8820260042'] }), later)).toMatchObject({
      strength: 'certain',
    });
    expect(proposed(paid(9000n, { name: 'Ines Aurich' }), later)).toBeUndefined();
  });
});

describe('an entry that names an invoice’s number', () => {
  it.each(['2026-0042', 'inv.20260042/Nov', 'No 2026 / 0042', 'RF89 2026 0042'])(
    'as “%s” is certain to the cent',
    (words) => {
      expect(proposed(paid(9000n, { words }))).toMatchObject({
        shares: ['2026-0042: 9000'],
        strength: 'certain',
        reason: 'Its words name invoice 2026-0042: it pays exactly what is owed.',
      });
    },
  );

  it('may name it as a document’s number or from end to end', () => {
    expect(proposed(paid(9000n, { references: ['2026-0042'] }))).toMatchObject({ strength: 'certain' });
    expect(proposed(paid(9000n, { endToEnd: '2026-0042' }))).toMatchObject({ strength: 'certain' });
  });

  it('and another sum is likely from the payer, and possible from somebody else', () => {
    const words = '2026-0042';
    expect(proposed(paid(5000n, { words, name: 'Aurich, Ines' }))).toMatchObject({ strength: 'likely' });
    expect(proposed(paid(5000n, { words, name: 'Nora Falk' }))).toMatchObject({ strength: 'possible' });
  });

  it('and a sum that only one other of the payer’s makes up is likely, whoever paid', () => {
    const entry = paid(17000n, { words: '2026-0042', name: 'Nora Falk' });
    expect(proposed(entry)).toMatchObject({
      shares: ['2026-0042: 9000', '2026-0041: 8000'],
      strength: 'likely',
    });
    expect(proposed(entry, [...open, invoice('2026-0045', 8000n)])).toMatchObject({
      shares: ['2026-0042: 9000', '2026-0041: 8000'],
      strength: 'possible',
    });
  });

  it('pays all that it names, oldest first', () => {
    expect(proposed(paid(17000n, { words: '2026-0042, 2026-0041' }))).toMatchObject({
      shares: ['2026-0041: 8000', '2026-0042: 9000'],
      strength: 'certain',
      reason: 'Its words name invoices 2026-0041 and 2026-0042: it pays exactly what is owed.',
    });
  });

  it('of two payers is for the one whose name is alike', () => {
    expect(proposed(paid(20000n, { words: '2026-0042 2026-0044', name: 'Bo Lind' }))).toMatchObject({
      party: 'bo',
      shares: ['2026-0044: 12000', '2026-0043: 8000'],
    });
  });

  it.each(['2026-00421', '12026-0042', '2026-004', 'on 2026-11-25'])('is not named by “%s”', (words) => {
    const dated = [...open, invoice('2026-1125', 9000n)];
    expect(proposed(paid(777n, { words }), dated)).toBeUndefined();
  });
});

describe('an entry that names no invoice', () => {
  it('is likely for the one of its payer that owes exactly this', () => {
    expect(proposed(paid(8000n, { name: 'LIND BO', words: 'thank you' }))).toEqual({
      party: 'bo',
      shares: ['2026-0043: 8000'],
      rest: 0n,
      strength: 'likely',
      reason: '80.00 EUR is exactly what Bo Lind owes on invoice 2026-0043, and the name is alike.',
    });
  });

  it('is for the oldest of several alike', () => {
    const lessons = ['2026-0003', '2026-0001', '2026-0002'].map((number) => invoice(number, 8000n));
    expect(proposed(paid(8000n, { name: 'Ines Aurich' }), lessons)).toMatchObject({
      shares: ['2026-0001: 8000'],
      reason:
        '80.00 EUR is exactly what Ines Aurich owes on invoice 2026-0001, the oldest of 3 such, and the name is alike.',
    });
  });

  it('is for the oldest by number where all are of one day, 9999 before 10000', () => {
    const many = ['2026-10000', '2026-9999'].map((number) => invoice(number, 8000n));
    expect(proposed(paid(8000n, { name: 'Ines Aurich' }), many)).toMatchObject({
      shares: ['2026-9999: 8000'],
    });
  });

  it('is likely where somebody else pays and the words have the payer’s name', () => {
    expect(proposed(paid(8000n, { name: 'Nora Falk', words: 'Lesson Bo Lind' }))).toMatchObject({
      party: 'bo',
      strength: 'likely',
      reason: '80.00 EUR is exactly what Bo Lind owes on invoice 2026-0043, and the words have the name.',
    });
  });

  it('may pay several of one payer together', () => {
    expect(proposed(paid(20000n, { name: 'Bo Lind' }))).toEqual({
      party: 'bo',
      shares: ['2026-0043: 8000', '2026-0044: 12000'],
      rest: 0n,
      strength: 'likely',
      reason:
        '200.00 EUR is exactly what Bo Lind owes on invoices 2026-0043 and 2026-0044, and the name is alike.',
    });
  });

  it('is possible, for the oldest, where several choices come to the sum', () => {
    const lessons = ['2026-0001', '2026-0002', '2026-0003'].map((number) => invoice(number, 8000n));
    expect(proposed(paid(16000n, { name: 'Ines Aurich' }), lessons)).toMatchObject({
      shares: ['2026-0001: 8000', '2026-0002: 8000'],
      strength: 'possible',
      reason:
        '160.00 EUR is exactly what Ines Aurich owes on invoices 2026-0001 and 2026-0002, and the name is alike; others of theirs would come to the same.',
    });
  });

  it('is possible where of all invoices one alone owes exactly this', () => {
    expect(proposed(paid(12000n, { name: 'Nora Falk' }))).toMatchObject({
      shares: ['2026-0044: 12000'],
      strength: 'possible',
      reason: '120.00 EUR is owed on one invoice alone, 2026-0044 of Bo Lind, but the name is Nora Falk.',
    });
    expect(proposed(paid(12000n))).toMatchObject({
      reason: '120.00 EUR is owed on one invoice alone, 2026-0044 of Bo Lind, but the bank gives no name.',
    });
  });

  it.each([
    ['two invoices owe its sum and nothing tells which', paid(8000n)],
    ['nobody owes its sum', paid(4711n, { name: 'Ines Aurich' })],
    ['it went out', paid(-9000n, { references: ['RF8820260042'] })],
    ['it came back', paid(9000n, { references: ['RF8820260042'], reversal: true })],
    ['it is in another currency', paid(9000n, { references: ['RF8820260042'], currency: POUND })],
  ])('is for none where %s', (_, entry) => {
    expect(proposed(entry)).toBeUndefined();
  });

  it('is for none where two payers of one name owe its sum', () => {
    const namesake = [invoice('2026-0001', 8000n), invoice('2026-0002', 8000n, { party: 'another ines' })];
    expect(proposed(paid(8000n, { name: 'Ines Aurich' }), namesake)).toBeUndefined();
    const twice = namesake.flatMap((one) => [one, { ...one, invoice: `${one.number} again`, owed: 500n }]);
    expect(proposed(paid(8500n, { name: 'Ines Aurich' }), twice)).toBeUndefined();
  });
});

describe('several entries', () => {
  it('never take an invoice from one that names it, though they come first', () => {
    const early = paid(9000n, { name: 'Ines Aurich', on: day('11-20') });
    const naming = paid(9000n, { name: 'Nora Falk', words: '2026-0042' });
    expect(matchEntries([early, naming], open).map(({ entry }) => entry)).toEqual([naming.identity]);
  });

  it('pay one invoice in parts', () => {
    const first = paid(5000n, { words: '2026-0042', on: day('11-20') });
    const rest = paid(4000n, { words: 'rest of 2026-0042' });
    expect(matchEntries([rest, first], open)).toMatchObject([
      { entry: rest.identity, reason: 'Its words name invoice 2026-0042: it pays exactly what is owed.' },
      {
        entry: first.identity,
        reason: 'Its words name invoice 2026-0042: it pays 50.00 EUR of the 90.00 EUR owed.',
      },
    ]);
  });
});

it('a bank’s file is read and its money finds the invoice whose reference it carries', () => {
  const bytes = readFileSync(new URL('../examples/camt053.v8.invoice-paid.xml', import.meta.url));
  const [statement] = granted(readCamt(granted(textOf(bytes))));
  // The reference RF18 5390 0754 7034 is that of the number 539007547034: published-values.json.
  const [match, ...others] = matchEntries(statement?.entries ?? [], [invoice('539007547034', 34846n)]);
  expect(match).toMatchObject({
    shares: [{ invoice: '539007547034', amount: 34846n }],
    strength: 'certain',
    reason: 'It carries the reference of invoice 539007547034: it pays exactly what is owed.',
  });
  expect(others).toEqual([]);
});

describe('whatever came in and is owed', () => {
  const numbers = ['2026-0001', '2026-0002', '2026-0003', '2026-0004', '2026-0005'];
  const currencies = fc.constantFrom<Currency>(EURO, POUND);
  const sums = fc.constantFrom(0n, 40n, 50n, 90n, 130n, 8000n);
  const days = fc.constantFrom('11-01', '11-02', '11-25').map(day);
  const invoices = fc.tuple(
    ...numbers.map((number) =>
      fc
        .tuple(sums, currencies, fc.boolean(), days)
        .map(([owed, currency, ines, issuedOn]) =>
          invoice(number, owed, { currency, issuedOn, ...(ines ? {} : LIND) }),
        ),
    ),
  );
  const entries = fc
    .array(
      fc.record({
        amount: fc.constantFrom(-50n, 0n, 40n, 50n, 90n, 220n, 8000n),
        currency: currencies,
        on: days,
        words: fc.constantFrom('', 'Lesson', ...numbers, '2026-0001 2026-0002', 'Bo Lind'),
        name: fc.constantFrom('Ines Aurich', 'Bo Lind', 'Nora Falk'),
        references: fc.constantFrom<string[]>([], ['2026-0003'], ['RF8820260042']),
        reversal: fc.boolean(),
      }),
      { maxLength: 8 },
    )
    .map((all) => all.map((entry, place) => ({ ...entry, identity: String(place) })));

  it('no invoice gets more than it is owed, no entry gives more than it has, and currencies and payers never mix', () => {
    fc.assert(
      fc.property(entries, invoices, (all, owing) => {
        const matches = matchEntries(all, owing);
        const shares = matches.flatMap(({ shares }) => shares);
        for (const { invoice, owed } of owing) {
          const given = shares.filter((share) => share.invoice === invoice);
          expect(given.reduce((sum, { amount }) => sum + amount, 0n) <= owed).toBe(true);
        }
        expect(new Set(matches.map(({ entry }) => entry)).size).toBe(matches.length);
        for (const { entry: identity, party, shares, rest } of matches) {
          const entry = all.find((one) => one.identity === identity);
          expect(entry?.reversal).toBe(false);
          expect(shares.reduce((sum, { amount }) => sum + amount, rest)).toBe(entry?.amount);
          expect(rest >= 0n && shares.every(({ amount }) => amount > 0n)).toBe(true);
          for (const share of shares) {
            const to = owing.find(({ invoice }) => invoice === share.invoice);
            expect([to?.party, to?.currency]).toEqual([party, entry?.currency]);
          }
        }
      }),
    );
  });

  it('the same is proposed in whatever order they are given', () => {
    fc.assert(
      fc.property(entries, invoices, (all, owing) => {
        const byEntry = (entries: readonly BankEntry[], invoices: readonly OpenInvoice[]) =>
          matchEntries(entries, invoices).toSorted((one, other) => (one.entry < other.entry ? -1 : 1));
        expect(byEntry(all.toReversed(), owing.toReversed())).toEqual(byEntry(all, owing));
      }),
    );
  });
});
