// Invented invoices, for tests and for looking at: people and places that there are not.

import { Temporal } from '@colla/calendar';
import type { Invoice, InvoiceLine } from '@colla/invoicing';
import { type Currency, currency } from '@colla/money';
import { granted } from '@colla/refusal';

const day = (text: string) => Temporal.PlainDate.from(text);
const coin = (code: string): Currency => granted(currency(code));

type ExampleLine = Invoice['lines'][number];

/** A line of rate × quantity, with what differs from an hour at 60.00. */
export function line(what: string, amount: bigint, differs: Partial<ExampleLine> = {}): ExampleLine {
  const plain: InvoiceLine = {
    key: what,
    clause: 'hourly',
    category: 'rehearsal',
    what,
    calls: [],
    facts: [],
    quantity: { count: 1, of: 1 },
    unit: 'hour',
    rate: amount,
    amount,
    arithmetic: '',
  };
  return { ...plain, ...differs };
}

/** A recital for a soloist: two rehearsals at 60.00 an hour, the recital, the way: 412.50 in all. */
export const recital: Invoice = {
  id: 'invoice-7',
  series: '2026',
  ordinal: 7,
  number: '2026-0007',
  engagement: 'engagement-1',
  title: 'Winter songs: a recital at the Assembly Rooms, Nether Wallow',
  currency: coin('GBP'),
  payer: 'soloist',
  from: {
    name: 'Rosalind Vanterpool, piano',
    address: ['12 Orchard Row', 'Nether Wallow', 'rosalind@example.org', '01632 960147'],
  },
  to: { party: 'party-1', name: 'Agnieszka Żółkiewska', address: ['4 Mill Lane', 'Nether Wallow'] },
  payTo: ['Rosalind Vanterpool', 'Wallow & District Bank', 'Account EXAMPLE 0042 7719'],
  lines: [
    line('Rehearsal', 7500n, {
      on: day('2026-03-03'),
      quantity: { count: 75, of: 60 },
      rate: 6000n,
      facts: [
        { name: 'played', value: '70 min' },
        { name: 'charged', value: '1.25 h' },
      ],
      arithmetic: '1.25 × 60.00 = 75.00',
    }),
    line('Rehearsal in the hall', 9000n, {
      on: day('2026-03-12'),
      quantity: { count: 90, of: 60 },
      rate: 6000n,
      facts: [
        { name: 'played', value: '1.5 h' },
        { name: 'charged', value: '1.5 h' },
      ],
      arithmetic: '1.5 × 60.00 = 90.00',
    }),
    line('Recital', 22000n, {
      clause: 'recital',
      on: day('2026-03-14'),
      unit: 'recital',
      arithmetic: '1 × 220.00 = 220.00',
    }),
    line('Travel, Nether Wallow to Assembly Rooms', 2750n, {
      clause: 'travel',
      on: day('2026-03-14'),
      facts: [{ name: 'distance', value: '61.111 miles' }],
      quantity: { count: 61_111, of: 1000 },
      unit: 'mile',
      rate: 45n,
      arithmetic: '61.111 × 0.45 = 27.50',
    }),
  ],
  taxes: [],
  net: 41250n,
  tax: 0n,
  total: 41250n,
  terms: 'Payment is due 30 days after the invoice.',
  issuedOn: day('2026-03-16'),
  dueOn: day('2026-04-15'),
};

/** The terms of the recital, as they were agreed. */
export const sentences = [
  {
    clause: 'hourly',
    sentence: 'Rehearsals are 60.00 an hour, charged in quarter hours, one hour at least.',
  },
  { clause: 'recital', sentence: 'Recitals are 220.00 each.' },
  { clause: 'travel', sentence: 'Journeys are 0.45 a mile, there and back.' },
];

/** A competition's half of a split, with VAT at 20 % on 1,050.00: 1,260.00. */
export const split: Invoice = {
  ...recital,
  number: '2026-0018',
  ordinal: 18,
  title: 'Lantern Bay Competition for Young Players: second and final rounds',
  from: { ...recital.from, taxNumber: 'EXAMPLE 118 204' },
  to: {
    party: 'party-2',
    name: 'Lantern Bay Competition for Young Players and Their Accompanists, Registered Charity',
    address: ['Secretary’s Office', 'The Old Customs House', 'Lantern Bay'],
    reference: 'Order LB/2026/118-B',
    taxNumber: 'EXAMPLE 990 118',
  },
  lines: [
    line(
      'Competition round, second round, eleven soloists with a break for the jury’s deliberation',
      55000n,
      {
        on: day('2026-05-09'),
        unit: 'share of 1/2',
        arithmetic: '11 × 100.00 = 1,100.00; 1/2 of it = 550.00',
      },
    ),
    line('Final round', 50000n, {
      on: day('2026-05-10'),
      unit: 'share of 1/2',
      arithmetic: '4 × 250.00 = 1,000.00; 1/2 of it = 500.00',
    }),
    line('Sunday', 10000n, {
      on: day('2026-05-10'),
      unit: 'of 500.00',
      quantity: { count: 2000, of: 10_000 },
      rate: 50000n,
      arithmetic: '20 % × 500.00 = 100.00',
    }),
    line('Arranged in good time', -10000n, {
      unit: 'engagement',
      rate: -10000n,
      arithmetic: '1 × −100.00 = −100.00',
    }),
  ],
  taxes: [{ name: 'VAT', rate: 2000, code: 'S', inside: false, base: 105000n, amount: 21000n }],
  net: 105000n,
  tax: 21000n,
  total: 126000n,
  terms: 'Payment is due 21 days after the invoice.',
  note: 'The other half has been sent to the Friends of the Competition. Thank you for the page turner and for the tea.',
};

/** A term of lessons: so many hours at 48.00 each. */
export function lessons(count: number): Invoice {
  const lines = Array.from({ length: count }, (_, index) =>
    line(`Lesson with the class of wind and brass, week ${index + 1}`, 4800n, {
      on: day('2026-01-05').add({ days: index * 2 }),
      arithmetic: '1 × 48.00 = 48.00',
    }),
  );
  const total = 4800n * BigInt(count);
  return {
    ...recital,
    number: '2026-0031',
    ordinal: 31,
    title: 'Lessons, spring term',
    lines,
    net: total,
    total,
  };
}

/** The same recital for a Polish soloist who pays in euro, its tax inside the price. */
export const inEuro: Invoice = {
  ...recital,
  currency: coin('EUR'),
  taxes: [{ name: 'VAT', rate: 1000, code: 'S', inside: true, base: 37500n, amount: 3750n }],
  net: 37500n,
  tax: 3750n,
};
