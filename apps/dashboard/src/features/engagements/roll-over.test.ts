// What comes over from an engagement before.

import type { EngagementSummaryJson } from '@colla/wire';
import { describe, expect, it } from 'vitest';
import { engagementsBefore, minutesOver, rollingIn, slipsInMinutes } from './roll-over.ts';

const summary = (
  id: string,
  last: string,
  but: Partial<EngagementSummaryJson> = {},
): EngagementSummaryJson => ({
  id,
  title: id,
  stage: 'settled',
  soloist: 'Ida Fenn',
  calls: 1,
  first: last,
  last,
  partsWanted: 0,
  ...but,
});
const at = (day: string) => `${day}T10:00:00+00:00[Europe/London]`;

describe('the engagement before', () => {
  const spring = {
    id: 'spring',
    calls: [
      {
        id: 'c1',
        kind: 'lesson' as const,
        place: '',
        start: at('2027-01-12'),
        end: at('2027-01-12'),
        standing: { is: 'agreed' as const },
      },
    ],
  };

  it('is the soloist’s latest that was over before this one begins', () => {
    const all = [
      summary('autumn', at('2026-12-01')),
      summary('last spring', at('2026-03-01')),
      summary('summer', at('2027-06-01')),
      summary('declined', at('2026-12-20'), { stage: 'declined' }),
      summary('another’s', at('2026-12-20'), { soloist: 'Per Fenn' }),
    ];
    expect(engagementsBefore(spring, 'Ida Fenn', all).map(({ id }) => id)).toEqual(['autumn', 'last spring']);
  });
});

describe('minutes over from before', () => {
  it('are asked for where a clause lets what is left serve the next', () => {
    const clause = (id: string, terms: object) => ({ id, kind: 'entitlement', terms: { ...terms } });
    const clauses = [clause('weekly', { minutes: 60, rollsOver: true }), clause('jury', { minutes: 30 })];
    expect(rollingIn({ clauses })).toEqual(['weekly']);
  });

  it('are whole, and nothing where nothing is typed', () => {
    expect(minutesOver({ weekly: ' 90 ', jury: '', exam: '0' })).toEqual({ weekly: 90 });
    expect(slipsInMinutes({ weekly: '1.5', jury: '' }).map(({ pointer }) => pointer)).toEqual([
      '/rolledOver/weekly',
    ]);
  });
});
