// The next step of an engagement, and what each of its calls allows.

import { Temporal } from '@colla/calendar';
import type { Call, Standing } from '@colla/hours';
import { describe, expect, it } from 'vitest';
import { callMoves, type Standing as EngagementStanding, nextMove } from './moves.ts';

const now = at('2026-03-04T12:00');
const rehearsal = call('rehearsal', '2026-03-03T10:00', { is: 'agreed' });
const recital = call('recital', '2026-03-10T19:30', { is: 'agreed' });
const played = { ...rehearsal, standing: { is: 'played' as const, times: rehearsal.planned } };
const agreed: EngagementStanding = {
  stage: 'agreed',
  calls: [rehearsal, recital],
  toInvoice: [],
  owing: [],
  blocked: [],
};

describe('the next step', () => {
  it('of an inquiry without a call is to enter one', () => {
    expect(nextMove({ ...agreed, stage: 'inquiry', calls: [] }, now)).toEqual({ is: 'add a call' });
  });

  it('of an inquiry with calls is to quote', () => {
    expect(nextMove({ ...agreed, stage: 'inquiry' }, now)).toEqual({ is: 'quote', again: false });
  });

  it('of a quote that stands is the yes of the payer', () => {
    const quoteUntil = at('2026-03-04T23:59');
    expect(nextMove({ ...agreed, stage: 'quoted', quoteUntil }, now)).toEqual({ is: 'agree' });
  });

  it('of a quote that has lapsed is another quote', () => {
    const quoteUntil = at('2026-03-04T11:59');
    expect(nextMove({ ...agreed, stage: 'quoted', quoteUntil }, now)).toEqual({ is: 'quote', again: true });
  });

  it('after a rehearsal that has begun is to say how it went', () => {
    expect(nextMove(agreed, now)).toEqual({ is: 'play', call: 'rehearsal' });
  });

  it('before the recital is to wait for it', () => {
    expect(nextMove({ ...agreed, calls: [played, recital] }, now)).toEqual({ is: 'wait', call: 'recital' });
  });

  it('before the recital is the payment of what was asked for early', () => {
    const owing = [{ id: 'deposit' }];
    expect(nextMove({ ...agreed, calls: [played, recital], owing }, now)).toEqual({
      is: 'record a payment',
      invoice: 'deposit',
    });
  });

  it('of a call that is blocked is the money: to be paid where it was asked for, to be asked for where it was not', () => {
    const blocked = { ...agreed, blocked: ['rehearsal', 'recital'], toInvoice: [{ payer: 'school' }] };
    expect(nextMove(blocked, now)).toEqual({ is: 'invoice', payer: 'school' });
    expect(nextMove({ ...blocked, owing: [{ id: 'i1' }] }, now)).toEqual({
      is: 'record a payment',
      invoice: 'i1',
    });
  });

  it.each([
    [[{ payer: 'school' }], [{ id: 'i1' }], { is: 'invoice', payer: 'school' }],
    [[], [{ id: 'i1' }], { is: 'record a payment', invoice: 'i1' }],
    [[], [], { is: 'settle' }],
  ])('when all is played is first to invoice, then to be paid, then to settle', (toInvoice, owing, move) => {
    expect(nextMove({ ...agreed, calls: [played], toInvoice, owing }, now)).toEqual(move);
  });

  it('of a cancelled engagement is to ask for what the cancellation leaves', () => {
    const toInvoice = [{ payer: 'payer' }];
    expect(nextMove({ ...agreed, stage: 'cancelled', toInvoice }, now)).toEqual({
      is: 'invoice',
      payer: 'payer',
    });
    expect(nextMove({ ...agreed, stage: 'cancelled' }, now)).toEqual({ is: 'nothing' });
  });
});

describe('a call', () => {
  it('that has begun is first played, then missed', () => {
    expect(callMoves(rehearsal, 'agreed', now).slice(0, 2)).toEqual(['play', 'miss']);
  });

  it('that lies ahead is moved or cancelled, and never missed', () => {
    expect(callMoves(recital, 'agreed', now)).not.toContain('miss');
  });

  it('that is only kept free is agreed once the engagement is', () => {
    const final = call('final', '2026-03-12T19:30', { is: 'held', onlyIf: 'the final is reached' });
    expect(callMoves(final, 'agreed', now)).toEqual(['agree', 'move', 'release']);
    expect(callMoves(final, 'inquiry', now)).toEqual(['move', 'release']);
  });

  it('that is blocked has its block lifted before it is played', () => {
    expect(callMoves(rehearsal, 'agreed', now, true)).toEqual(['lift', 'miss', 'move', 'cancel']);
    expect(callMoves(recital, 'agreed', now, true)).toEqual(['move', 'cancel', 'lift']);
  });

  it('of a settled engagement does not move any more', () => {
    expect(callMoves(played, 'settled', now)).toEqual([]);
  });
});

function call(id: string, start: string, standing: Standing): Call {
  const from = at(start);
  return {
    id,
    kind: 'rehearsal',
    place: '',
    planned: { start: from, end: from.add({ hours: 1 }) },
    standing,
  };
}

function at(local: string): Temporal.ZonedDateTime {
  return Temporal.PlainDateTime.from(local).toZonedDateTime('Europe/London');
}
