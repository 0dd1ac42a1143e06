// Moving an agreed call, before it is said: one free change with 48 hours’ notice, then half the fee.

import { Temporal } from '@colla/calendar';
import { currency } from '@colla/money';
import { given, readTariff } from '@colla/rates';
import { granted } from '@colla/refusal';
import { describe, expect, it } from 'vitest';
import { shiftOf } from './moving.ts';

const tariff = granted(
  readTariff({
    name: 'By the hour',
    version: 1,
    currency: 'EUR',
    from: '2026-01-01',
    clauses: [
      { id: 'hours', kind: 'hourly', terms: { price: '60.00' } },
      { id: 'changes', kind: 'change', terms: { free: 1, noticeHours: 48, after: [5000] } },
    ],
  }),
);
const terms = { tariff, locale: 'en-GB' };
const facts = given({ calls: ['rehearsal 60 on 2026-03-10 at 10:00, agreed'] }, granted(currency('EUR')));
const now = at('2026-03-01T12:00');
const thursday = { start: at('2026-03-12T10:00'), end: at('2026-03-12T11:00') };

describe('a call that the payer wishes to move', () => {
  it('costs nothing the first time with enough notice', () => {
    const { before, after, changes } = shiftOf(facts, terms, move({ at: '2026-03-06T10:00' }), now);
    expect([before.total, after.total, changes]).toEqual([6000n, 6000n, []]);
  });

  it('costs half of its fee where word comes a day before', () => {
    const { before, after, changes } = shiftOf(facts, terms, move({ at: '2026-03-09T10:00' }), now);
    // An hour at 60.00, and half of it.
    expect([before.total, after.total]).toEqual([6000n, 9000n]);
    expect(changes).toMatchObject([{ clause: 'changes', what: 'Rehearsal moved', more: 3000n }]);
  });

  it('costs nothing where it is the pianist who wishes it', () => {
    const shift = { ...move({ at: '2026-03-09T10:00' }), by: 'pianist' as const };
    expect(shiftOf(facts, terms, shift, now).after.total).toBe(6000n);
  });

  it('costs nothing where it was only written down wrong', () => {
    const shift = { ...move({ at: '2026-03-09T10:00' }), by: undefined };
    expect(shiftOf(facts, terms, shift, now).after.total).toBe(6000n);
  });

  it('is charged for its new length, by the clause that prices it', () => {
    const longer = { ...move({ at: '2026-03-06T10:00' }), to: { ...thursday, end: at('2026-03-12T12:00') } };
    const { after, changes } = shiftOf(facts, terms, longer, now);
    expect(after.total).toBe(12_000n);
    expect(changes).toMatchObject([{ clause: 'hours', more: 6000n }]);
  });
});

function move({ at: when }: { at: string }) {
  return { call: facts.calls[0]?.id ?? '', to: thursday, at: at(when), by: 'payer' as const };
}

function at(local: string): Temporal.ZonedDateTime {
  return Temporal.PlainDateTime.from(local).toZonedDateTime('Europe/London');
}
