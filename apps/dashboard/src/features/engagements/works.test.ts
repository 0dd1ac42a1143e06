// The programme is sent back whole, with one work changed.

import type { WorkJson } from '@colla/wire';
import { describe, expect, it } from 'vitest';
import { isMore, stepReached } from './steps.ts';
import { draftOf, inState, slipsInWork, withoutWork, withWork, workOf } from './works.ts';

const song: WorkJson = {
  id: 'w1',
  composer: 'Anon.',
  title: 'Song',
  minutes: 4,
  requested: false,
  part: { state: 'wanted', permission: 'not asked', key: 'E flat' },
};
const dance: WorkJson = { ...song, id: 'w2', title: 'Dance' };

describe('a programme', () => {
  it('gives back a work as it was when nothing in its form is changed', () => {
    expect(workOf(draftOf(song), song.id)).toEqual(song);
  });

  it('keeps how hard a part is and how many pages it has, and loses them where they are emptied', () => {
    const suite = { ...song, difficulty: 'hard', pages: 24 };
    expect(workOf(draftOf(suite), suite.id)).toEqual(suite);
    expect(workOf({ ...draftOf(suite), difficulty: '', pages: ' ' }, suite.id)).toEqual(song);
  });

  it('is refused a work of half a page, beside the pages', () => {
    const slips = slipsInWork({ ...draftOf(song), pages: 'half' }, '/works/0');
    expect(slips).toEqual([{ pointer: '/works/0/pages', detail: 'Give whole pages, such as 12.' }]);
  });

  it('keeps its order when the part of one work comes', () => {
    const ready = { ...song, part: { ...song.part, state: 'ready' as const } };
    expect(withWork([song, dance], ready)).toEqual([ready, dance]);
  });

  it('notes that a part came today, where no other day is written down', () => {
    expect(inState(song, 'received', '2026-05-04').part.receivedOn).toBe('2026-05-04');
    const came = inState(song, 'received', '2026-05-04');
    expect(inState(came, 'ready', '2026-05-11').part.receivedOn).toBe('2026-05-04');
  });

  it('forgets the day a part came once it is wanted after all', () => {
    const came = inState(song, 'received', '2026-05-04');
    expect(inState(came, 'wanted', '2026-05-05')).toEqual(song);
  });

  it('takes a new work at its end, its part wanted', () => {
    const encore = workOf({ ...draftOf(undefined), title: ' Encore ', minutes: '3' }, undefined);
    expect(withWork([song], encore).at(-1)).toEqual({
      composer: '',
      title: 'Encore',
      minutes: 3,
      requested: false,
      part: { state: 'wanted', permission: 'not asked' },
    });
  });

  it('loses only the work that is taken out', () => {
    expect(withoutWork([song, dance], 'w1')).toEqual([dance]);
  });
});

describe('an engagement', () => {
  const agreed = { stage: 'agreed' as const, calls: [], invoices: [] };

  it('that is settled is paid, and one that was declined ended on the way', () => {
    expect(stepReached({ ...agreed, stage: 'settled' }, false)).toBe('paid');
    expect(stepReached({ ...agreed, stage: 'declined' }, false)).toBeUndefined();
  });

  it.each([
    ['0.00', false],
    ['-12.00', false],
    ['0.05', true],
  ])('with %s left to invoice has something to ask for: %s', (amount, more) => {
    expect(isMore(amount)).toBe(more);
  });
});
