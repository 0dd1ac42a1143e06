// A call that is kept, changed on its form.

import type { CallJson } from '@colla/wire';
import { describe, expect, it } from 'vitest';
import { callChangeOf, rowOf } from './call-row.ts';

const option: CallJson = {
  id: 'c1',
  kind: 'competition round',
  label: 'second round',
  place: 'Hall',
  start: '2026-10-25T01:30:00+00:00[Europe/London]',
  end: '2026-10-25T02:30:00+00:00[Europe/London]',
  standing: { is: 'held', lapsesAt: '2026-10-20T23:59:00+01:00[Europe/London]' },
};
const planned = { on: '2026-10-25', from: '01:30', until: '02:30', zone: 'Europe/London', fromAgain: true };

describe('a call on its form', () => {
  it('is sent back as it was where nothing is changed, at the second 01:30 of the night', () => {
    expect(callChangeOf(rowOf(option), option)).toEqual({
      kind: 'competition round',
      place: 'Hall',
      planned,
    });
  });

  it('loses its name where that is emptied, and takes another', () => {
    expect(callChangeOf({ ...rowOf(option), label: ' ' }, option).label).toBeNull();
    expect(callChangeOf({ ...rowOf(option), label: 'final' }, option).label).toBe('final');
  });

  it('is kept free until another day, or without one', () => {
    expect(rowOf(option).lapsesOn).toBe('2026-10-20');
    expect(callChangeOf({ ...rowOf(option), lapsesOn: '2026-10-22' }, option).lapsesAt).toEqual({
      on: '2026-10-22',
      at: '23:59',
      zone: 'Europe/London',
    });
    expect(callChangeOf({ ...rowOf(option), lapsesOn: '' }, option).lapsesAt).toBeNull();
  });
});
