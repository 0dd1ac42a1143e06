// What a clause applies to: which calls fit, which of two clauses goes first, which can never meet.

import { currency } from '@colla/money';
import { granted } from '@colla/refusal';
import { describe, expect, it } from 'vitest';
import { apart, closer, fitsCall, fitsEngagement } from './fit.ts';
import { type Given, given } from './given.ts';
import { sayCalls } from './phrases.ts';
import type { Selector } from './selector.ts';
import { voice } from './voice.ts';

const pounds = granted(currency('GBP'));
const english = voice('en-GB', pounds);

// 8 March 2026 is a Sunday.
const sunday = 'recital 60 on 2026-03-08';
const monday = 'recital 60 on 2026-03-09';

describe('a clause fits a call', () => {
  const cases: [string, Selector, string, Given, boolean][] = [
    ['of any kind where it asks for nothing', {}, 'jury 10', {}, true],
    ['of its kind', { calls: ['recital'] }, sunday, {}, true],
    ['of one of its kinds', { calls: ['exam', 'recital'] }, sunday, {}, true],
    ['not of another kind', { calls: ['exam'] }, sunday, {}, false],
    ['by its name', { labels: ['mock jury'] }, 'mock jury: jury 10', {}, true],
    ['not without that name', { labels: ['mock jury'] }, 'jury 10', {}, false],
    ['on its weekday', { days: ['sunday'] }, sunday, {}, true],
    ['not on another', { days: ['sunday'] }, monday, {}, false],
    [
      'on a public holiday, whatever the weekday',
      { days: ['public holiday'] },
      monday,
      { holidays: ['2026-03-09'] },
      true,
    ],
    ['not on an ordinary day', { days: ['public holiday'] }, monday, {}, false],
    ['for a soloist of its level', { levels: ['grade 6'] }, sunday, { soloist: { level: 'grade 6' } }, true],
    ['not for one whose level nobody said', { levels: ['grade 6'] }, sunday, {}, false],
    ['with its instrument', { instruments: ['cello'] }, sunday, { soloist: { instrument: 'cello' } }, true],
    ['for its course of study', { study: ['non-major'] }, sunday, { soloist: { study: 'major' } }, false],
    ['by its class of pianist', { pianists: ['student'] }, sunday, { pianistClass: 'student' }, true],
    [
      'in its circumstances, among others',
      { circumstances: ['alone'] },
      sunday,
      { circumstances: ['late', 'alone'] },
      true,
    ],
    ['in its place', { places: ['Chapel'] }, 'service 60 in Chapel', {}, true],
    ['not in another', { places: ['Chapel'] }, 'service 60 in Hall', {}, false],
    [
      'that starts in its hours',
      { hours: { from: '18:00', until: '23:00' } },
      'recital 60 at 18:00',
      {},
      true,
    ],
    [
      'not at the hour that ends them',
      { hours: { from: '18:00', until: '23:00' } },
      'recital 60 at 23:00',
      {},
      false,
    ],
    ['past midnight', { hours: { from: '22:00', until: '06:00' } }, 'recital 60 at 00:30', {}, true],
    ['as short as it asks', { minutes: { to: 20 } }, 'jury 20', {}, true],
    ['not when longer', { minutes: { to: 20 } }, 'jury 21', {}, false],
    [
      'in its week of the term, the first being the one with its first day',
      { termWeeks: { from: 2, to: 3 } },
      'jury 20 on 2026-09-07',
      { terms: ['fall 2026-08-26 to 2026-12-11'] },
      true,
    ],
    [
      'not in an earlier week',
      { termWeeks: { from: 2, to: 3 } },
      'jury 20 on 2026-08-30',
      { terms: ['fall 2026-08-26 to 2026-12-11'] },
      false,
    ],
    [
      'not outside every term',
      { terms: ['fall'] },
      sunday,
      { terms: ['fall 2026-08-26 to 2026-12-11'] },
      false,
    ],
    ['asked for at short notice', { daysAhead: { to: 6 } }, sunday, { askedAt: '2026-03-02T12:00' }, true],
    [
      'not when asked for a week ahead',
      { daysAhead: { to: 6 } },
      sunday,
      { askedAt: '2026-03-01T12:00' },
      false,
    ],
    ['for a member', { memberships: ['guild'] }, sunday, { soloist: { membership: 'guild' } }, true],
    ['with so much music', { music: { from: 20 } }, sunday, { works: ['Sonata, 22 min'] }, true],
    ['not with less', { music: { from: 20 } }, sunday, { works: ['Song, 4 min'] }, false],
    [
      'with a work that is hard',
      { difficulties: ['hard'] },
      sunday,
      { works: ['Sonata, difficulty hard'] },
      true,
    ],
    ['from the tenth engagement of a season', { soFar: { from: 9 } }, sunday, { soFar: 9 }, true],
    ['only where all it asks for is so', { calls: ['recital'], days: ['sunday'] }, monday, {}, false],
  ];

  it.each(cases)('%s', (_, selector, call, facts, fits) => {
    const { calls, ...rest } = given({ ...facts, calls: [call] }, pounds);
    expect(calls.map((one) => fitsCall(selector, one, { ...rest, calls }))).toEqual([fits]);
  });
});

describe('a clause fits an engagement', () => {
  it('whatever it asks about calls', () => {
    expect(fitsEngagement({ calls: ['exam'], days: ['sunday'] }, given({}, pounds))).toBe(true);
  });

  it('only where the soloist is the one it asks for', () => {
    expect(
      fitsEngagement({ instruments: ['cello'] }, given({ soloist: { instrument: 'horn' } }, pounds)),
    ).toBe(false);
  });
});

describe('of two clauses', () => {
  const rehearsals: Selector = { calls: ['rehearsal'] };
  const onSundays: Selector = { calls: ['rehearsal'], days: ['sunday'] };

  const evening: Selector = { hours: { from: '18:00', until: '23:00' } };

  const pairs: [string, Selector, Selector, boolean][] = [
    ['rehearsals go before all calls', rehearsals, {}, true],
    ['all calls do not go before rehearsals', {}, rehearsals, false],
    ['rehearsals on Sundays go before rehearsals', onSundays, rehearsals, true],
    ['rehearsals go before rehearsals and lessons', rehearsals, { calls: ['rehearsal', 'lesson'] }, true],
    ['late evenings go before evenings', { hours: { from: '20:00', until: '22:00' } }, evening, true],
    ['short notice goes before longer', { daysAhead: { to: 3 } }, { daysAhead: { to: 6 } }, true],
    ['neither of two alike goes first', rehearsals, { calls: ['rehearsal'] }, false],
    ['rehearsals do not go before Sundays', rehearsals, { days: ['sunday'] }, false],
    ['nor Sundays before rehearsals', { days: ['sunday'] }, rehearsals, false],
  ];
  it.each(pairs)('%s', (_, one, other, first) => {
    expect(closer(one, other)).toBe(first);
  });

  const meetings: [string, Selector, Selector, boolean][] = [
    ['rehearsals and exams never meet', rehearsals, { calls: ['exam'] }, true],
    ['rehearsals and Sundays may meet', rehearsals, { days: ['sunday'] }, false],
    ['Saturdays and Sundays never meet', { days: ['saturday'] }, { days: ['sunday'] }, true],
    ['Sundays and public holidays may meet', { days: ['sunday'] }, { days: ['public holiday'] }, false],
    ['majors and non-majors never meet', { study: ['major'] }, { study: ['non-major'] }, true],
    ['two circumstances may meet', { circumstances: ['alone'] }, { circumstances: ['late'] }, false],
    ['evenings and mornings never meet', evening, { hours: { from: '08:00', until: '12:00' } }, true],
    ['evenings and late evenings may meet', evening, { hours: { from: '22:00', until: '02:00' } }, false],
    ['up to 20 and from 21 minutes never meet', { minutes: { to: 20 } }, { minutes: { from: 21 } }, true],
    ['up to 20 and from 20 minutes may', { minutes: { to: 20 } }, { minutes: { from: 20 } }, false],
    ['all calls meet any', {}, rehearsals, false],
  ];
  it.each(meetings)('%s', (_, one, other, never) => {
    expect([apart(one, other), apart(other, one)]).toEqual([never, never]);
  });
});

describe('a clause says what it applies to', () => {
  it.each<[string, Selector]>([
    ['all calls', {}],
    ['rehearsals, juries and coaching sessions', { calls: ['rehearsal', 'jury', 'coaching'] }],
    ['recitals on Sundays or public holidays', { calls: ['recital'], days: ['sunday', 'public holiday'] }],
    [
      'classes named “master class” (cello or viola; student pianist)',
      { calls: ['class'], labels: ['master class'], instruments: ['cello', 'viola'], pianists: ['student'] },
    ],
    [
      'recitals of up to 60 minutes that start from 18:00 until 23:00 in Chapel asked for up to 6 days ahead',
      {
        calls: ['recital'],
        minutes: { to: 60 },
        hours: { from: '18:00', until: '23:00' },
        places: ['Chapel'],
        daysAhead: { to: 6 },
      },
    ],
    [
      'juries in week 3 to 5 of the term in fall (member; a hard work; 21 minutes or more of music; 9 engagements or more before it this season)',
      {
        calls: ['jury'],
        termWeeks: { from: 3, to: 5 },
        terms: ['fall'],
        memberships: ['member'],
        difficulties: ['hard'],
        music: { from: 21 },
        soFar: { from: 9 },
      },
    ],
  ])('%s', (said, selector) => {
    expect(sayCalls(selector, english)).toBe(said);
  });
});
