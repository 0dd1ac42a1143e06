// What the screen says before anything is done: what a cancellation leaves, and what the next invoice asks for.

import { readInstant } from '@colla/calendar';
import { currency, toDecimal } from '@colla/money';
import { readTariff, statement, type WrittenClause } from '@colla/rates';
import { granted } from '@colla/refusal';
import type { EngagementJson, InvoiceJson } from '@colla/wire';
import { describe, expect, it } from 'vitest';
import { askingOf } from './asking.ts';
import { factsOf } from './facts.ts';
import { fallOf } from './falling.ts';
import { ifAgreed } from './perhaps.ts';

const pounds = granted(currency('GBP'));
const tariff = granted(
  readTariff({
    name: 'Exams',
    currency: 'GBP',
    version: 1,
    from: '2026-01-01',
    clauses: [
      { id: 'hour', kind: 'hourly', for: { calls: ['rehearsal'] }, terms: { price: '40.00' } },
      { id: 'exam', kind: 'fixed', for: { calls: ['exam'] }, terms: { price: '80.00' } },
      { id: 'travel', kind: 'travel', terms: { perUnit: '0.50' } },
      {
        id: 'notice',
        kind: 'cancellation',
        terms: {
          scale: [
            { before: 48, owes: { owes: 'nothing' } },
            { before: 24, owes: { owes: 'share', share: 5000 } },
          ],
          otherwise: { owes: 'all' },
        },
      },
      { id: 'term', kind: 'payment', terms: { due: [{ event: 'invoice', days: 14 }] } },
    ],
  }),
);
const terms = { tariff, locale: 'en-GB' };

const agreed = { is: 'agreed' } as const;
const halfOf = { owes: 'share', share: 5000 };
const termsWith = (clauses: readonly WrittenClause[]) => ({
  tariff: granted(readTariff({ name: 'Any', currency: 'GBP', version: 1, from: '2026-01-01', clauses })),
  locale: 'en-GB',
});

const calls: EngagementJson['calls'] = [
  {
    id: 'c1',
    kind: 'rehearsal',
    place: 'Room 4',
    start: '2026-06-10T10:00:00+01:00[Europe/London]',
    end: '2026-06-10T11:00:00+01:00[Europe/London]',
    standing: {
      is: 'played',
      start: '2026-06-10T10:00:00+01:00[Europe/London]',
      end: '2026-06-10T11:10:00+01:00[Europe/London]',
    },
  },
  {
    id: 'c2',
    kind: 'exam',
    place: 'Hall',
    start: '2026-06-13T15:00:00+01:00[Europe/London]',
    end: '2026-06-13T15:30:00+01:00[Europe/London]',
    standing: { is: 'agreed' },
  },
];

const engagement: EngagementJson = {
  id: 'e1',
  title: 'Cello exam',
  stage: 'agreed',
  currency: 'GBP',
  payers: {},
  soloist: { instrument: 'cello' },
  sharers: 1,
  circumstances: [],
  askedAt: '2026-05-01T09:00:00+01:00[Europe/London]',
  calls,
  programme: [],
  legs: [
    {
      id: 'l1',
      on: '2026-06-13',
      from: 'Home',
      to: 'Hall',
      distance: '12.5',
      unit: 'km',
      minutes: 30,
      purpose: 'exam',
    },
  ],
  costs: [],
  moves: [],
  rolledOver: {},
  agreement: {
    id: 'a1',
    engagement: 'e1',
    tariff: { name: 'Exams', version: 1, currency: 'GBP' },
    written: { ...tariff.written, clauses: [...tariff.written.clauses] },
    sentences: [],
    calls: calls.map(({ id, kind, start, end }) => ({ id, kind, start, end })),
    holidays: [],
    terms: [],
    agreedAt: '2026-05-02T09:00:00+01:00[Europe/London]',
    acceptedBy: 'Ida Fenn',
  },
};
const facts = factsOf(engagement, { holidays: [], terms: [] });
const asOf = granted(readInstant('2026-06-12T09:00:00+01:00[Europe/London]'));
const now = statement(facts, terms, asOf);

describe('an engagement read back from the wire', () => {
  it('comes to 50.00 for 70 minutes, 80.00 for the exam and 6.25 for 12.5 km', () => {
    expect(toDecimal(now.total, pounds)).toBe('136.25');
  });
});

describe('a cancellation that is being thought about', () => {
  // The journey is of the exam's own day: word of the day before spares it.
  it('thirty hours before leaves half of the exam’s 80.00, and none of the journey', () => {
    const word = { call: 'c2', at: asOf, by: 'payer', reason: 'illness' } as const;
    const { before, after, cost, why, clauses } = fallOf(facts, terms, word, asOf);
    expect([before.total, after.total].map((total) => toDecimal(total, pounds))).toEqual(['136.25', '90.00']);
    expect(toDecimal(cost, pounds)).toBe('40.00');
    expect([why, clauses]).toEqual([['cancelled 30 h before the exam'], ['notice']]);
  });

  it('by the pianist leaves nothing of it', () => {
    const word = { call: 'c2', at: asOf, by: 'pianist', reason: 'illness' } as const;
    const { after, cost } = fallOf(facts, terms, word, asOf);
    expect([after.total, cost].map((amount) => toDecimal(amount, pounds))).toEqual(['50.00', '0.00']);
  });

  it('of the whole lets the rehearsal that was played stand', () => {
    const word = { at: asOf, by: 'payer', reason: 'other' } as const;
    expect(toDecimal(fallOf(facts, terms, word, asOf).after.total, pounds)).toBe('90.00');
  });

  it('of the whole names the line that is left of what falls, though a package stood for it', () => {
    // All of 90.00 stands for both calls as long as either does; half of it is left where both fall.
    const pack = {
      id: 'pack',
      kind: 'package',
      terms: { price: '90.00', what: 'Exam package', includes: [{ of: {} }] },
    };
    const half = { id: 'half', kind: 'cancellation', terms: { scale: [], otherwise: halfOf } };
    const vat = { id: 'vat', kind: 'tax', terms: { name: 'VAT', rate: 2000 } };
    const under = termsWith([pack, half, vat]);
    const open = { ...facts, calls: facts.calls.map((call) => ({ ...call, standing: agreed })) };
    const early = granted(readInstant('2026-06-01T09:00:00+01:00[Europe/London]'));
    const word = { at: early, by: 'payer', reason: 'other' } as const;
    const all = fallOf(open, under, word, early);
    expect([all.own.map(({ what }) => what), toDecimal(all.cost, pounds)]).toEqual([
      ['Cancellation'],
      '45.00',
    ]);
    const one = fallOf(open, under, { ...word, call: 'c2' }, early);
    expect([one.own, one.shared.map(({ what }) => what)]).toEqual([[], ['Exam package']]);
  });

  it('by a pianist whose pay is docked takes a sum off', () => {
    const fee: WrittenClause = {
      id: 'fee',
      kind: 'fixed',
      for: { calls: ['rehearsal'] },
      terms: { price: '80.00' },
    };
    const by = { as: 'amount', amount: '15.00', each: 'call' };
    const docked = { id: 'docked', kind: 'docking', terms: { what: 'Absence', by } };
    const word = { call: 'c2', by: 'pianist', reason: 'other' } as const;
    const { cost, own } = fallOf(facts, termsWith([fee, docked]), word, asOf);
    expect([toDecimal(cost, pounds), own.map(({ clause }) => clause)]).toEqual(['-15.00', ['docked']]);
  });

  it('without a word leaves everything to pay', () => {
    const word = { call: 'c2', by: 'payer', reason: 'forgotten' } as const;
    expect(toDecimal(fallOf(facts, terms, word, asOf).after.total, pounds)).toBe('136.25');
  });
});

describe('a call that takes place only if something happens', () => {
  it('would add 80.00: the exam with it, less the engagement without it', () => {
    const perhaps = facts.calls.map((call) =>
      call.id === 'c2'
        ? { ...call, standing: { is: 'held', onlyIf: 'the first round is passed' } as const }
        : call,
    );
    const { withIt, without } = ifAgreed({ ...facts, calls: perhaps }, terms, 'c2', asOf);
    expect(toDecimal(withIt.total - without.total, pounds)).toBe('80.00');
  });
});

describe('the next invoice', () => {
  it('asks for all the statement says where nothing was asked for before, due by the payment term', () => {
    const { billable, dueOn } = askingOf({ statement: now, facts, payer: 'payer' }, [], '2026-06-20');
    expect(toDecimal(billable.total, pounds)).toBe('136.25');
    expect(dueOn).toBe('2026-07-04');
  });

  it('issued after the first call, by which it was due, is due on its own day', () => {
    const payment = {
      clause: 'term',
      due: [{ event: 'first call', days: 0 }],
      gate: false,
      instalments: [],
    } as const;
    const late = { statement: { ...now, payment }, facts, payer: 'payer' };
    expect(askingOf(late, [], '2026-06-20').dueOn).toBe('2026-06-20');
    expect(askingOf(late, [], '2026-06-01').dueOn).toBe('2026-06-10');
  });

  it('asks only for what an earlier invoice did not', () => {
    const { billable } = askingOf(
      { statement: now, facts, payer: 'payer' },
      [rehearsalInvoice],
      '2026-06-20',
    );
    expect(billable.lines.map(({ clause }) => clause)).toEqual(['exam', 'travel']);
    expect(toDecimal(billable.total, pounds)).toBe('86.25');
  });
});

const rehearsalInvoice: InvoiceJson = {
  id: 'i1',
  number: '2026-0001',
  engagement: 'e1',
  title: 'Cello exam',
  payer: 'payer',
  currency: 'GBP',
  from: { name: 'Practice', address: [] },
  to: { name: 'Ida Fenn', address: [], party: 'p1' },
  payTo: [],
  lines: [
    {
      key: 'hour:c1',
      clause: 'hour',
      what: 'Rehearsal',
      quantity: { count: 75, of: 60 },
      unit: 'hour',
      rate: '40.00',
      amount: '50.00',
      facts: [],
      arithmetic: '1.25 × 40.00 = 50.00',
    },
  ],
  taxes: [],
  net: '50.00',
  tax: '0.00',
  total: '50.00',
  issuedOn: '2026-06-11',
  dueOn: '2026-06-25',
  paid: '0.00',
  owed: '50.00',
  is: 'open',
};
