import { Temporal } from '@colla/calendar';
import { expect, it } from 'vitest';
import {
  cameBy,
  PART_STATES,
  type PartState,
  partsWanted,
  programmeMinutes,
  type Work,
} from './programme.ts';

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

it('a part comes today or before, or not at all', () => {
  const day = (text: string) => Temporal.PlainDate.from(text);
  const came = (on: string) => ({
    ...work('Toccata', 6, 'received'),
    part: { ...work('', 0, 'received').part, receivedOn: day(on) },
  });
  const works = [...programme, came('2026-02-02')];
  expect(cameBy(works, day('2026-02-02'))).toBe(works);
  expect(cameBy([...programme, came('2026-02-03')], day('2026-02-02'))).toMatchObject({
    code: 'engagements/part-ahead',
    sentence:
      'Today is 2026-02-02, and the part of “Toccata” cannot have come on 2026-02-03. Correct the day it came, or leave it out.',
    field: '/5/part/receivedOn',
  });
});
