import { expect, it } from 'vitest';
import { PART_STATES, type PartState, partsWanted, programmeMinutes, type Work } from './programme.ts';

function work(title: string, minutes: number, state: PartState): Work {
  return {
    id: title,
    composer: '',
    title,
    minutes,
    requested: false,
    part: { state, permission: 'not needed' },
  };
}

const programme = PART_STATES.map((state, index) => work(state, 5 + index, state));

it('a programme lasts as long as its works together', () => {
  // 5 + 6 + 7 + 8 + 9
  expect(programmeMinutes(programme)).toBe(35);
  expect(programmeMinutes([])).toBe(0);
});

it('a part is wanted until it is in the house, and again when it goes back for a better copy', () => {
  expect(partsWanted(programme).map(({ title }) => title)).toEqual([
    'wanted',
    'promised',
    'returned for a better copy',
  ]);
});
