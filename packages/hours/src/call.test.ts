import { Temporal } from '@colla/calendar';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Call, inOrder, plannedMinutes, playedMinutes, principalCall, timesOf } from './call.ts';
import { CALL_KINDS, type CallKind, PERFORMANCES } from './kinds.ts';

function call(id: string, kind: CallKind, on: string): Call {
  const start = Temporal.PlainDateTime.from(on).toZonedDateTime('Europe/London');
  return {
    id,
    kind,
    place: 'Hall',
    planned: { start, end: start.add({ hours: 1 }) },
    standing: { is: 'agreed' },
  };
}

const rehearsal = call('a', 'rehearsal', '2026-03-10T10:00');
const recital = call('b', 'recital', '2026-03-14T19:00');
const reception = call('c', 'other', '2026-03-14T21:00');

describe('the call an engagement leads up to', () => {
  it.each([
    ['is its performance', [rehearsal, recital], 'b'],
    ['is its performance though something follows', [reception, recital, rehearsal], 'b'],
    ['is the last performance of several', [call('d', 'jury', '2026-03-20T09:00'), recital], 'd'],
    ['is its last call where nobody listens', [call('e', 'lesson', '2026-03-12T09:00'), rehearsal], 'e'],
  ])('%s', (_, calls, id) => {
    expect(principalCall(calls)?.id).toBe(id);
  });

  it('is none where there are no calls', () => {
    expect(principalCall([])).toBeUndefined();
  });
});

describe('calls stand in the order they happen', () => {
  it('those at one instant in the order of their ids, however they were entered', () => {
    const twin = { ...rehearsal, id: 'z' };
    const all = [rehearsal, twin, recital, reception];
    fc.assert(
      fc.property(fc.shuffledSubarray(all, { minLength: all.length }), (entered) => {
        expect(inOrder(entered).map(({ id }) => id)).toEqual(['a', 'z', 'b', 'c']);
      }),
    );
  });

  it('by the instant and not by the clock on the wall', () => {
    // 10:30 in Paris is 09:30 in London, half an hour before ten there
    const start = Temporal.ZonedDateTime.from('2026-03-10T10:30[Europe/Paris]');
    const paris = { ...rehearsal, id: 'p', planned: { start, end: start.add({ hours: 1 }) } };
    expect(inOrder([rehearsal, paris]).map(({ id }) => id)).toEqual(['p', 'a']);
  });

  it('and the list they came in is left as it was', () => {
    const entered = [recital, rehearsal];
    inOrder(entered);
    expect(entered).toEqual([recital, rehearsal]);
  });
});

describe('a call has two lengths', () => {
  const { start, end } = rehearsal.planned;
  const times = { start, end: end.add({ minutes: 20 }) };
  const played: Call = { ...rehearsal, standing: { is: 'played', times } };

  it('as planned, and as it was played', () => {
    expect([plannedMinutes(played), playedMinutes(played)]).toEqual([60, 80]);
    expect(timesOf(played)).toBe(times);
  });

  it('which are one while it has not been played', () => {
    expect(playedMinutes(rehearsal)).toBe(60);
    expect(timesOf(rehearsal)).toBe(rehearsal.planned);
  });
});

it('at a performance somebody listens: every one of them is a kind of call', () => {
  expect([...PERFORMANCES].filter((kind) => !CALL_KINDS.includes(kind))).toEqual([]);
  expect(
    ['rehearsal', 'lesson', 'coaching', 'dress rehearsal', 'class'].some((kind) =>
      PERFORMANCES.has(kind as CallKind),
    ),
  ).toBe(false);
});
