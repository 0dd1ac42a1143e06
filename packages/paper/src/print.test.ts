import { getDocument, type PDFPageProxy } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { beforeAll, expect, test } from 'vitest';
import { inEuro, lessons, recital, split } from '../examples.ts';
import { invoicePdf } from './index.ts';
import type { Paper } from './page.ts';

interface Item {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly right: number;
}

async function open(bytes: Uint8Array) {
  return getDocument({ data: bytes.slice(), verbosity: 0, isEvalSupported: false }).promise;
}

async function items(page: PDFPageProxy): Promise<Item[]> {
  const { items } = await page.getTextContent();
  return items.flatMap((item) =>
    'str' in item && item.str.trim() !== ''
      ? [
          {
            text: item.str,
            x: item.transform[4],
            y: item.transform[5],
            right: item.transform[4] + item.width,
          },
        ]
      : [],
  );
}

async function pagesOf(bytes: Uint8Array): Promise<Item[][]> {
  const doc = await open(bytes);
  const numbers = Array.from({ length: doc.numPages }, (_, index) => index + 1);
  return Promise.all(numbers.map(async (number) => items(await doc.getPage(number))));
}

const read = (page: readonly Item[] | undefined) => page?.map(({ text }) => text).join('\n') ?? '';

const inside = (bytes: Uint8Array) => Buffer.from(bytes).toString('latin1');

let pdf: Uint8Array;
beforeAll(async () => {
  pdf = await invoicePdf(recital, { paper: 'A4', locale: 'en-GB' });
});

test('a printed invoice says its number, its sum and the payer’s Polish name', async () => {
  const [page] = await pagesOf(pdf);
  for (const text of ['Invoice 2026-0007', '£412.50', 'Agnieszka Żółkiewska', '15 April 2026']) {
    expect(read(page)).toContain(text);
  }
});

test('what is printed can be searched for: apostrophes, joined letters, Greek', async () => {
  const text = 'Secretary’s oﬃce, first fiddle, Δημήτριος';
  const [page] = await pagesOf(
    await invoicePdf({ ...recital, title: text }, { paper: 'A4', locale: 'en-GB' }),
  );
  expect(read(page)).toContain('Secretary’s office, first fiddle, Δημήτριος');
});

test('every font is embedded, and none is one that a reader’s machine must have', () => {
  const text = inside(pdf);
  const fonts = [...text.matchAll(/\/BaseFont \/([A-Za-z0-9+-]+)/g)].map((found) => found[1] ?? '');
  expect(new Set(fonts.map((name) => name.replace(/^[A-Z]{6}\+/, '')))).toEqual(
    new Set(['SourceSerif4-Regular', 'SourceSerif4-Italic', 'OldStandardTT-Regular']),
  );
  expect(fonts.every((name) => /^[A-Z]{6}\+/.test(name))).toBe(true);
  expect(text.match(/\/FontFile2 /g)).toHaveLength(3);
});

test('it is a tagged PDF/A-3 that names its title and language', async () => {
  const doc = await open(pdf);
  const { info, metadata } = await doc.getMetadata();
  expect(info).toMatchObject({ Title: 'Invoice 2026-0007', Language: 'en-GB', PDFFormatVersion: '1.7' });
  expect(await doc.getMarkInfo()).toMatchObject({ Marked: true });
  expect(metadata?.get('pdfaid:part')).toBe('3');
  expect(metadata?.get('dc:title')).toContain('Invoice 2026-0007');
});

interface Node {
  readonly role?: string;
  readonly children?: readonly Node[];
}

test('a screen reader finds the heading, and a table of five columns and four lines', async () => {
  const page = await (await open(pdf)).getPage(1);
  const rolesIn = ({ role, children = [] }: Node): string[] => [
    ...(role ? [role] : []),
    ...children.flatMap(rolesIn),
  ];
  const roles = rolesIn((await page.getStructTree()) as Node);
  const count = (role: string) => roles.filter((other) => other === role).length;
  expect([count('H1'), count('Table'), count('TR'), count('TH'), count('TD')]).toEqual([1, 2, 6, 6, 21]);
});

test('amounts share their right edge to a tenth of a point', async () => {
  const [page = []] = await pagesOf(await invoicePdf(split, { paper: 'A4', locale: 'en-GB' }));
  const amounts = ['550.00', '100.00', '−100.00', '1,050.00', '210.00', '£1,260.00'];
  const edges = amounts.map((text) => page.findLast((item) => item.text === text)?.right ?? 0);
  expect(Math.max(...edges) - Math.min(...edges)).toBeLessThan(0.1);
  expect(edges[0]).toBeCloseTo(595.28 - 62, 1);
});

test.each<[Paper, number, number]>([
  ['A4', 595.28, 841.89],
  ['Letter', 612, 792],
])(
  'seventy-five lines on %s are three pages of that size, with nothing in the margins',
  async (paper, width, height) => {
    const bytes = await invoicePdf(lessons(75), { paper, locale: 'en-GB' });
    const doc = await open(bytes);
    const [, , right, top] = (await doc.getPage(1)).view;
    expect([right, top]).toEqual([width, height]);
    const pages = await pagesOf(bytes);
    expect(pages).toHaveLength(3);
    for (const { x, y, right } of pages.flat()) {
      expect(x).toBeGreaterThan(61.9);
      expect(right).toBeLessThan(width - 61.9);
      expect(y).toBeGreaterThan(36);
      expect(y).toBeLessThan(height - 58);
    }
    expect(read(pages[1])).toContain('2026-0031 · page 2 of 3');
  },
);

test('the same invoice is printed with the same bytes, whatever was printed before it', async () => {
  const first = await invoicePdf(inEuro, { paper: 'A4', locale: 'en-GB' });
  await invoicePdf({ ...inEuro, title: 'Soirée\u00a0: oﬃcial “fi” ‑ ﬁn' }, { paper: 'A4', locale: 'fr-FR' });
  await invoicePdf(lessons(75), { paper: 'Letter', locale: 'en-US' });
  const second = await invoicePdf(inEuro, { paper: 'A4', locale: 'en-GB' });
  expect(Buffer.compare(first, second)).toBe(0);
});

test('invoices printed at the same time do not disturb one another', async () => {
  const alone = await invoicePdf(split, { paper: 'A4', locale: 'en-GB' });
  const crowd = await Promise.all(
    [recital, split, inEuro, split].map((invoice) => invoicePdf(invoice, { paper: 'A4', locale: 'en-GB' })),
  );
  expect([1, 3].map((at) => Buffer.compare(alone, crowd[at] ?? new Uint8Array()))).toEqual([0, 0]);
});

test.each([
  ['of a path', '../../../etc/passwd'],
  ['of markup', '<script>&amp;</x> ]]> (unclosed \\ %PDF'],
  ['of pictures', '🎹🎼 a recital 👨‍👩‍👧'],
  ['from right to left', 'שלום \u202egnos\u202c مرحبا'],
  ['of 4,000 letters without a space', 'Konservatorium'.repeat(300).slice(0, 4000)],
  ['of nothing', ''],
])('a title %s is printed on a page that opens, with the sum in place', async (_, title) => {
  const invoice = { ...recital, title, number: `2026-0007 ${title.slice(0, 40)}` };
  const bytes = await invoicePdf(invoice, { paper: 'A4', locale: 'en-GB' });
  const { metadata } = await (await open(bytes)).getMetadata();
  expect(metadata?.get('dc:title')).toContain('Invoice 2026-0007');
  const pages = await pagesOf(bytes);
  expect(pages.map(read).join('\n')).toContain('£412.50');
});
