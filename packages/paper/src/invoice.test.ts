import { currency } from '@colla/money';
import { granted } from '@colla/refusal';
import { expect, test } from 'vitest';
import { inEuro, lessons, line, recital, sentences, split } from '../examples.ts';
import { fonts } from './fonts.ts';
import { invoiceLayout } from './invoice.ts';
import { type Layout, PAPERS, type Paper } from './page.ts';
import type { InvoiceReader } from './reading.ts';

const { faces } = await fonts();
const atHome: InvoiceReader = { paper: 'A4', locale: 'en-GB' };

/** What stands on a page, a line each, with a bar where the eye leaps. */
function read({ pages }: Layout, page = 0): string[] {
  const lines = new Map<number, { x: number; text: string }[]>();
  for (const { x, y, text } of pages[page]?.words ?? []) lines.set(y, [...(lines.get(y) ?? []), { x, text }]);
  const down = [...lines].sort(([a], [b]) => a - b);
  return down.map(([, words]) =>
    words
      .sort((a, b) => a.x - b.x)
      .map(({ text }) => text)
      .join(' | '),
  );
}

const laidOut = (invoice = recital, reader: Partial<InvoiceReader> = {}) =>
  invoiceLayout(invoice, { ...atHome, ...reader }, faces);

test('an invoice for a recital says who, to whom, for what, how much and how to pay', () => {
  expect(read(laidOut())).toEqual([
    'Rosalind Vanterpool, piano',
    '12 Orchard Row · Nether Wallow · rosalind@example.org · 01632 960147',
    'Invoice 2026-0007',
    'Winter songs: a recital at the Assembly Rooms, Nether Wallow',
    'To | Issued | 16 March 2026',
    'Agnieszka Żółkiewska | Due | 15 April 2026',
    '4 Mill Lane',
    'Nether Wallow',
    'Day | For | Quantity | Rate | Amount',
    '3 Mar 2026 | Rehearsal | 1.25 hours | 60.00 | 75.00',
    '12 Mar 2026 | Rehearsal in the hall | 1.5 hours | 60.00 | 90.00',
    '14 Mar 2026 | Recital | 1 recital | 220.00 | 220.00',
    '14 Mar 2026 | Travel, Nether Wallow to Assembly Rooms | 61.111 miles | 0.45 | 27.50',
    'To pay | £412.50',
    'How to pay | Terms',
    'Rosalind Vanterpool | Payment is due 30 days after the invoice.',
    'Wallow & District Bank',
    'Account EXAMPLE 0042 7719',
    'Please quote 2026-0007.',
  ]);
});

test('an office finds its own reference, both tax numbers, and the tax apart', () => {
  const lines = read(laidOut(split));
  expect(lines).toContain('Their Accompanists, Registered Charity | Your reference | Order LB/2026/118-B');
  expect(lines).toContain('Tax number EXAMPLE 990 118');
  expect(lines[1]).toMatch(/ · Tax number EXAMPLE 118 204$/);
  expect(lines.filter((line) => /^Before tax|^VAT|^To pay/.test(line))).toEqual([
    'Before tax | 1,050.00',
    'VAT, 20\u00a0% of 1,050.00 | 210.00',
    'To pay | £1,260.00',
  ]);
});

test('a payer of half sees the whole it is half of; a share of a sum is said as a share', () => {
  const lines = read(laidOut(split));
  expect(lines).toContain('10 May 2026 | Final round | 1/2 | 500.00');
  expect(lines).toContain('4 × 250.00 = 1,000.00; 1/2 of it = 500.00');
  expect(lines).toContain('10 May 2026 | Sunday | 20\u00a0% | 500.00 | 100.00');
});

test('what is taken off for the whole engagement stands under no day and by no rate', () => {
  expect(read(laidOut(split))).toContain('Arranged in good time | −100.00');
});

test('tax inside the price is said below what is to pay', () => {
  const lines = read(laidOut(inEuro));
  expect(lines).toContain('To pay | €412.50');
  expect(lines).toContain('Includes VAT at 10\u00a0%: 37.50 on 375.00 before tax.');
  expect(lines.some((line) => line.startsWith('Before tax'))).toBe(false);
});

test.each([
  ['E', 'VAT, exempt | 0.00'],
  ['AE', 'VAT, reverse charge: the payer accounts for it | 0.00'],
  ['O', 'VAT, outside its scope | 0.00'],
])('a tax of category %s says in words why none is charged', (code, expected) => {
  const taxes = [{ name: 'VAT', rate: 0, code, inside: false, base: 41250n, amount: 0n }];
  expect(read(laidOut({ ...recital, taxes }))).toContain(expected);
});

test('what is exempt beside what is taxed says on how much, and a rate finer than a hundredth of a per cent is whole', () => {
  const taxes = [
    { name: 'QST', rate: 997.5, code: 'S', inside: false, base: 40_000n, amount: 3990n },
    { name: 'QST', rate: 0, code: 'E', inside: false, base: 1250n, amount: 0n, wording: 'Exempt: tuition' },
  ];
  const lines = read(laidOut({ ...recital, taxes }));
  expect(lines).toEqual(
    expect.arrayContaining([
      'QST, 9.975\u00a0% of 400.00 | 39.90',
      'QST, exempt, on 12.50 | 0.00',
      'Exempt: tuition',
    ]),
  );
});

test('what was paid already is taken off what is to pay', () => {
  const lines = read(laidOut(recital, { standing: { paid: 10000n, owed: 31250n } }));
  expect(lines.slice(13, 16)).toEqual(['To pay | 412.50', 'Received | −100.00', 'Left to pay | £312.50']);
});

test('an invoice that is paid says so', () => {
  const lines = read(laidOut(recital, { standing: { paid: 41250n, owed: 0n } }));
  expect(lines).toContain('Left to pay | £0.00');
  expect(lines).toContain('Paid in full, with thanks.');
});

test('without a day on any line there is no column of days', () => {
  const lines = [line('Accompanying the class', 5000n)];
  expect(read(laidOut({ ...recital, lines, total: 5000n }))).toContain('For | Quantity | Rate | Amount');
});

test('a difference from an earlier invoice shows its arithmetic and its amount alone', () => {
  const lines = [
    line('Rehearsal, changed', 1500n, {
      unit: 'difference',
      arithmetic: '1.5 × 60.00 = 90.00; invoiced before 75.00',
    }),
  ];
  const page = read(laidOut({ ...recital, lines, total: 1500n }));
  expect(page).toContain('Rehearsal, changed | 15.00');
  expect(page).toContain('1.5 × 60.00 = 90.00; invoiced before 75.00');
});

test('a part of what a cancellation leaves shows what it is for and its amount alone', () => {
  const arithmetic = '50\u00a0% × 50.00 = 25.00; of it for “premium” 5.00';
  const lines = [line('Cancellation', 500n, { unit: 'part', arithmetic })];
  const page = read(laidOut({ ...recital, lines, total: 500n }));
  expect(page).toContain('Cancellation | 5.00');
  expect(page).toContain(arithmetic);
});

test.each([
  [{ count: 1, of: 1 }, '30 minutes', '30 minutes'],
  [{ count: 3, of: 1 }, '30 minutes', '3 × 30 minutes'],
  [{ count: 1, of: 1 }, 'jury', '1 jury'],
  [{ count: 4, of: 1 }, 'requested work', '4 requested works'],
  [{ count: 4, of: 1 }, 'jury', '4 juries'],
  [{ count: 3, of: 1 }, 'class', '3 classes'],
  [{ count: 12, of: 1 }, 'minute of music', '12 minutes of music'],
  [{ count: 23_400, of: 1000 }, 'km', '23.4 km'],
])('a quantity of %o of the unit “%s” is said as “%s”', (quantity, unit, expected) => {
  const lines = [line('Work', 2000n, { quantity, unit, rate: 2000n })];
  expect(read(laidOut({ ...recital, lines }))).toContain(`Work | ${expected} | 20.00 | 20.00`);
});

test('a German reader sees days and figures as German has them, and the sign of the euro after its figure', () => {
  const lines = read(laidOut(inEuro, { locale: 'de-DE' }));
  expect(lines).toContain('12. März 2026 | Rehearsal in the hall | 1,5 hours | 60,00 | 90,00');
  expect(lines).toContain('To pay | 412,50 | €');
});

test('a day whose letters no face has is said by ISO 8601', () => {
  expect(read(laidOut(recital, { locale: 'ja-JP' }))).toContain('To | Issued | 2026-03-16');
});

test('figures share one right edge, with the sign that follows the sum beyond it', () => {
  const { pages } = laidOut(inEuro, { locale: 'de-DE' });
  const words = pages[0]?.words ?? [];
  const edges = ['75,00', '90,00', '27,50', '412,50'].map((text) => {
    const word = words.findLast((word) => word.text === text);
    return word && word.x + word.width;
  });
  const [first = 0, ...others] = edges;
  for (const edge of others) expect(edge).toBeCloseTo(first, 6);
  expect(first).toBeLessThan(PAPERS.A4.width - 62);
});

test('a currency whose sign no face holds is named by its code', () => {
  const shekel = granted(currency('ILS'));
  expect(read(laidOut({ ...recital, currency: shekel }))).toContain('To pay | ILS\u00a0412.50');
});

// A4 leaves 709.89 points, Letter 660. The first row ends at 292.3, each further one takes 19; on the next page the
// head takes 18.4, and a row 19.
test.each<[Paper, number[]]>([
  ['A4', [22, 36, 17]],
  ['Letter', [20, 33, 22]],
])(
  'seventy-five lines on %s take three pages, each with the head of the table and its number',
  (paper, rows) => {
    const layout = laidOut(lessons(75), { paper });
    const pages = layout.pages.map((_, page) => read(layout, page));
    expect(pages.map((lines) => lines.filter((line) => / \| Lesson/.test(line)).length)).toEqual(rows);
    for (const [page, lines] of pages.entries()) {
      expect(lines).toContain('Day | For | Quantity | Rate | Amount');
      expect(lines.at(-1)).toBe(`2026-0031 · page ${page + 1} of 3`);
    }
  },
);

test.each([
  [14, 1],
  [20, 1],
  [21, 2],
  [60, 2],
])('%i lines stand on %i page(s) of A4, a little closer where that saves one', (count, pages) => {
  expect(laidOut(lessons(count)).pages).toHaveLength(pages);
});

test('however many lines, three of them at least stand on the page of the sum to pay', () => {
  for (let count = 1; count <= 75; count += 1) {
    const layout = laidOut(lessons(count));
    const page = layout.pages.findIndex((_, at) =>
      read(layout, at).some((line) => line.startsWith('To pay')),
    );
    const beside = read(layout, page).filter((line) => / \| Lesson with/.test(line)).length;
    expect(beside).toBeGreaterThanOrEqual(Math.min(count, 3));
  }
});

test('an invoice of one page does not number it', () => {
  expect(read(laidOut()).join()).not.toContain('page 1');
});

test.each<Paper>(['A4', 'Letter'])('on %s long names, words and sums stay within the margins', (paper) => {
  const endless = 'Donaudampfschifffahrtskonservatoriumskorrepetitionsbeauftragter'.repeat(8);
  const most = 9_223_372_036_854_775_807n;
  const layout = laidOut(
    {
      ...split,
      title: endless,
      from: { name: endless, address: [endless], taxNumber: endless },
      to: { ...split.to, name: endless, reference: endless },
      payTo: [endless],
      lines: [line(endless, most, { arithmetic: `${endless}; = 1` })],
      total: most,
      note: `${endless}\n${endless}`,
    },
    { paper, locale: 'de-DE' },
  );
  const { width, height } = PAPERS[paper];
  for (const { x, y, width: wide } of layout.pages.flatMap(({ words }) => words)) {
    expect(x).toBeGreaterThanOrEqual(62 - 0.01);
    expect(x + wide).toBeLessThanOrEqual(width - 62 + 0.01);
    expect(y).toBeLessThan(height - 40);
  }
});

test('the note is said paragraph by paragraph', () => {
  const lines = read(laidOut({ ...recital, note: 'Thank you.\nThe scores are in the post.' }));
  expect(lines.slice(-3)).toEqual(['Note', 'Thank you.', 'The scores are in the post.']);
});

test('an invoice with its terms says clause by clause how it came about', () => {
  const lines = read(laidOut(recital, { sentences }));
  const from = lines.indexOf('How it is worked out');
  expect(lines.slice(from - 1, from + 9)).toEqual([
    'To pay | £412.50',
    'How it is worked out',
    'Rehearsals are 60.00 an hour, charged in quarter hours, one hour at least.',
    'Rehearsal, 3 Mar 2026: played 70 min, charged 1.25 h; 1.25 × 60.00 = 75.00',
    'Rehearsal in the hall, 12 Mar 2026: played 1.5 h, charged 1.5 h; 1.5 × 60.00 = 90.00',
    'Recitals are 220.00 each.',
    'Recital, 14 Mar 2026: 1 × 220.00 = 220.00',
    'Journeys are 0.45 a mile, there and back.',
    'Travel, Nether Wallow to Assembly Rooms, 14 Mar 2026: distance 61.111 miles; 61.111 × 0.45 = 27.50',
    'How to pay | Terms',
  ]);
});

test('lines worked out alike are said together, and arithmetic of the table is not said twice', () => {
  const same = { what: 'Lesson', facts: [{ name: 'planned', value: '1 h' }] };
  const alike = lessons(3).lines.map((line) => ({ ...line, ...same }));
  const lines = read(laidOut({ ...lessons(3), lines: alike }, { sentences }));
  expect(lines).toContain('Lesson, 5 Jan 2026, 7 Jan 2026, 9 Jan 2026: planned 1 h; 1 × 48.00 = 48.00');
  const sameDay = { ...alike[0], key: 'again' } as (typeof alike)[number];
  expect(read(laidOut({ ...lessons(3), lines: [sameDay, ...alike] }, { sentences }))).toContain(
    'Lesson, 5 Jan 2026 (× 2), 7 Jan 2026, 9 Jan 2026: planned 1 h; 1 × 48.00 = 48.00',
  );
  const halves = read(laidOut(split, { sentences: [] })).join('\n');
  expect(halves.match(/4 × 250\.00 = 1,000\.00/g)).toHaveLength(1);
});

test('what is inside the columns, and nothing else to say, needs no reasons', () => {
  const bare = { ...recital, lines: [line('Work', 2000n, { clause: 'other' })] };
  expect(read(laidOut(bare, { sentences }))).not.toContain('How it is worked out');
});

test('reasons that have no room below the sums follow on a page of their own, and are read last', () => {
  const sentence = 'Rehearsals are 60.00 an hour, charged in quarter hours. '.repeat(40);
  const layout = laidOut(split, { sentences: [{ clause: 'hourly', sentence }] });
  expect(read(layout)).toContain('How to pay | Terms');
  expect(read(layout, 1)[0]).toBe('How it is worked out');
  expect(layout.pages).toHaveLength(2);
  expect(layout.root.parts.slice(-4).map(({ role }) => role)).toEqual(['H2', 'P', 'P', 'P']);
});

test('a tax says what it is reckoned from, and what the law wants said beside it', () => {
  const tax = {
    name: 'VAT',
    rate: 0,
    code: 'AE',
    inside: false,
    base: 41250n,
    amount: 0n,
    clause: 'vat',
    wording: 'VAT is owed by the recipient.',
    arithmetic: '0 % × 412.50 = 0.00',
  };
  const lines = read(laidOut({ ...recital, taxes: [tax] }, { sentences }));
  expect(lines).toContain('VAT is owed by the recipient.');
  expect(lines).toContain('VAT: 0 % × 412.50 = 0.00');
});

test('what is read aloud comes in order: heading, payer, table with heads and rows, sums, how to pay', () => {
  const { root } = laidOut();
  expect(root.parts.map(({ role }) => role).join(' ')).toBe(
    'P P H1 P H2 P P P P P Table Table H2 P P P P H2 P',
  );
  const [lines, sums] = root.parts.filter(({ role }) => role === 'Table');
  expect(lines?.parts.map((row) => row.parts.map(({ role }) => role).join(' '))).toEqual([
    'TH TH TH TH TH',
    ...Array.from({ length: 4 }, () => 'TD TD TD TD TD'),
  ]);
  expect(sums?.parts.map((row) => row.parts.map(({ role, scope }) => `${role} ${scope ?? ''}`))).toEqual([
    ['TH Row', 'TD '],
  ]);
});
