// What a kept engagement tells a tariff, read back from the wire.

import type { EngagementJson } from '@colla/wire';
import { describe, expect, it } from 'vitest';
import { factsOf } from './facts.ts';

const inquiry: EngagementJson = {
  id: 'e1',
  title: 'Suite',
  stage: 'inquiry',
  currency: 'EUR',
  payers: {},
  soloist: { instrument: 'cello', membership: 'guild member' },
  sharers: 1,
  circumstances: [],
  askedAt: '2026-09-01T09:00:00+02:00[Europe/Berlin]',
  calls: [],
  programme: [
    {
      id: 'w1',
      composer: '',
      title: 'Suite',
      minutes: 20,
      requested: false,
      difficulty: 'hard',
      pages: 24,
      part: { state: 'wanted', permission: 'not asked' },
    },
  ],
  legs: [],
  costs: [],
  moves: [
    {
      call: 'c1',
      start: '2026-10-02T10:00:00+02:00[Europe/Berlin]',
      end: '2026-10-02T11:00:00+02:00[Europe/Berlin]',
      at: '2026-10-01T18:00:00+02:00[Europe/Berlin]',
      by: 'payer',
    },
  ],
  rolledOver: { covered: 90 },
  soFar: 3,
};
const autumn = { name: 'autumn', from: '2026-09-14', to: '2026-12-11' };
const house = { holidays: ['2026-10-03'], terms: [autumn] };

describe('the facts of an engagement', () => {
  it('tell the membership, how hard the music is, what came over and how many came before', () => {
    const { soloist, programme, rolledOver, soFar } = factsOf(inquiry, house);
    expect(soloist).toEqual({ instrument: 'cello', membership: 'guild member' });
    expect(programme[0]).toMatchObject({ difficulty: 'hard', pages: 24 });
    expect([rolledOver, soFar]).toEqual([{ covered: 90 }, 3]);
  });

  it('tell of a call that moved where it stood, when word came and whose wish it was', () => {
    const [move] = factsOf(inquiry, house).moves ?? [];
    expect([move?.was.start.toString(), move?.at.toString(), move?.by]).toEqual([
      '2026-10-02T10:00:00+02:00[Europe/Berlin]',
      '2026-10-01T18:00:00+02:00[Europe/Berlin]',
      'payer',
    ]);
  });

  it('have the terms and holidays of today until it is agreed, and then those of that day', () => {
    const now = factsOf(inquiry, house);
    expect(now.terms?.map(({ name, from }) => [name, from.toString()])).toEqual([['autumn', '2026-09-14']]);
    expect([...now.holidays]).toEqual(['2026-10-03']);
    const agreement = {
      id: 'a1',
      engagement: 'e1',
      tariff: { name: 'Any', version: 1, currency: 'EUR' },
      written: { name: 'Any', version: 1, currency: 'EUR', from: '2026-01-01', clauses: [] },
      sentences: [],
      calls: [],
      holidays: [],
      terms: [{ ...autumn, name: 'fall' }],
      agreedAt: '2026-09-10T09:00:00+02:00[Europe/Berlin]',
      acceptedBy: 'Ida Fenn',
    };
    const agreed = factsOf({ ...inquiry, stage: 'agreed', agreement }, house);
    expect(agreed.terms?.map(({ name }) => name)).toEqual(['fall']);
    expect([...agreed.holidays]).toEqual([]);
  });
});
