import { describe, expect, it } from 'vitest';
import { emptyCall } from './call-row.ts';
import { isShifted, shiftedBy, type WordOfShift } from './shift-word.ts';

const stands = { ...emptyCall(0, 'Europe/London'), on: '2026-03-03', from: '10:00', until: '11:00' };
const word: WordOfShift = { by: 'payer', on: '2026-03-01', at: '18:30', zone: 'Europe/London' };

describe('a call that is changed', () => {
  it('moves where its times are others, and not where it is only named otherwise or elsewhere', () => {
    expect(isShifted({ ...stands, from: '10:30' }, stands)).toBe(true);
    expect(isShifted({ ...stands, on: '2026-03-04' }, stands)).toBe(true);
    expect(isShifted({ ...stands, label: 'mock jury', place: 'Hall' }, stands)).toBe(false);
  });

  it('moves by somebody’s word; what was written down wrong is put right without one', () => {
    expect(shiftedBy(word)).toEqual({
      moved: { by: 'payer', on: '2026-03-01', at: '18:30', zone: 'Europe/London' },
    });
    expect(shiftedBy({ ...word, by: 'nobody' })).toEqual({});
  });
});
