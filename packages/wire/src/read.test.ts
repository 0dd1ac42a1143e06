import { zone as zoneOf } from '@colla/calendar';
import { currency } from '@colla/money';
import { granted, refused } from '@colla/refusal';
import { expect, test } from 'vitest';
import { readCall, readCost, readEach, readLeg, readSeason, readWork } from './read.ts';
import { readOrganisationChange, readPartyChange } from './read-organisation.ts';
import { readPreview } from './read-preview.ts';
import { previewInput } from './statements.ts';

const zone = 'Europe/London';
const planned = { on: '2026-11-02', from: '10:00', until: '11:00', zone };

test('a call is read at its place’s own clock and is kept free', () => {
  const call = granted(
    readCall({ kind: 'rehearsal', place: 'Hall', planned, onlyIf: 'the final is reached' }, 'c1'),
  );
  expect(call).toMatchObject({ id: 'c1', kind: 'rehearsal', held: { onlyIf: 'the final is reached' } });
  expect(call.planned.start.toString()).toBe('2026-11-02T10:00:00+00:00[Europe/London]');
  expect(call).not.toHaveProperty('label');
});

test('a call that runs past midnight names the day it ends on', () => {
  const late = { ...planned, from: '22:30', until: '00:15', untilOn: '2026-11-03' };
  const call = granted(readCall({ kind: 'service', place: '', planned: late }, 'c1'));
  expect(call.planned.end.toString()).toBe('2026-11-03T00:15:00+00:00[Europe/London]');
});

test('of several calls the first that cannot be read is pointed at', () => {
  const wrong = { ...planned, until: '09:00' };
  const calls = [planned, wrong].map((planned) => ({ kind: 'rehearsal' as const, place: '', planned }));
  const read = readEach(calls, '/calls', (call, at) => readCall(call, `c${at}`));
  expect(refused(read) && read.field).toBe('/calls/1/planned/until');
});

test('a work of which nothing more is said wants its part', () => {
  const work = { composer: '', title: 'Nocturne of the Quay', minutes: 5, requested: false, part: {} };
  expect(readWork(work, 'w1')).toEqual({
    ...work,
    id: 'w1',
    part: { state: 'wanted', permission: 'not asked' },
  });
});

test('a journey keeps its distance in thousandths of its unit', () => {
  const leg = {
    on: '2026-11-02',
    from: 'Home',
    to: 'Hall',
    distance: '24.5',
    unit: 'km',
    minutes: 0,
    purpose: '',
  } as const;
  expect(readLeg(leg, 'l1')).toMatchObject({ distance: { thousandths: 24_500, unit: 'km' } });
});

test.each([
  ['EUR', '12.40', 1240n],
  ['JPY', '1240', 1240n],
  ['KWD', '1.240', 1240n],
])('a cost in %s of %s is kept in its minor units', (code, amount, minor) => {
  const of = { id: 'x1', currency: granted(currency(code)) };
  expect(readCost({ on: '2026-11-02', what: 'Part', amount }, of)).toMatchObject({ amount: minor });
});

test('a day that is none is pointed at', () => {
  const read = readSeason({ name: 'Autumn', from: '2026-09-31', to: '2026-12-31' }, 's1');
  expect(read).toMatchObject({ code: 'calendar/no-such-day', field: '/from' });
});

test('an empty reference takes the one there was away', () => {
  const party = { id: 'p1', name: 'Harbour School', address: ['1 Quay Row'], reference: 'PO 4417' };
  expect(readPartyChange(party, { reference: '' })).toEqual({
    id: 'p1',
    name: 'Harbour School',
    address: ['1 Quay Row'],
  });
});

test('a holiday that is no day is pointed at', () => {
  const organisation = {
    id: 'o1',
    name: 'Quay Piano',
    address: [],
    payTo: [],
    currency: granted(currency('EUR')),
    zone: granted(zoneOf(zone)),
    locale: 'en',
    paper: 'A4' as const,
    weeklyLimit: 1800,
    holidays: [],
    terms: [],
  };
  const change = { holidays: ['2026-12-25', '2026-12-32'] };
  expect(readOrganisationChange(organisation, change)).toMatchObject({ field: '/holidays/1' });
});

test('a preview takes terms, moves, what rolled over and how many came before, as a kept engagement does', () => {
  const word = { on: '2026-11-04', at: '18:00', zone, by: 'payer' as const };
  const input = previewInput.parse({
    tariff: { name: 'Quay', currency: 'EUR', version: 1, from: '2026-01-01', clauses: [] },
    engagement: {
      calls: [
        {
          id: 'first',
          kind: 'rehearsal',
          planned: { on: '2026-11-09', from: '10:00', until: '11:00', zone },
        },
      ],
      programme: [{ title: 'Toccata', difficulty: 'hard', pages: 12 }],
      soloist: { membership: 'guild' },
      terms: [{ name: 'autumn', from: '2026-09-14', to: '2026-12-12' }],
      moves: [{ call: 'first', was: { on: '2026-11-05', from: '10:00', until: '11:00', zone }, moved: word }],
      rolledOver: { covered: 45 },
      soFar: 2,
    },
  });
  const { facts } = granted(readPreview(input));
  expect(facts).toMatchObject({ soloist: { membership: 'guild' }, rolledOver: { covered: 45 }, soFar: 2 });
  expect(facts.programme).toMatchObject([{ difficulty: 'hard', pages: 12 }]);
  expect(facts.terms?.map(({ name, to }) => `${name} until ${to}`)).toEqual(['autumn until 2026-12-12']);
  expect(facts.moves?.map(({ call, was, by }) => [call, was.start.toPlainDate().toString(), by])).toEqual([
    ['first', '2026-11-05', 'payer'],
  ]);
});

test('a move of a preview whose word cannot be read is pointed at', () => {
  const input = previewInput.parse({
    tariff: { name: 'Quay', currency: 'EUR', version: 1, from: '2026-01-01', clauses: [] },
    engagement: {
      moves: [
        {
          call: 'first',
          was: { on: '2026-11-05', from: '10:00', until: '11:00', zone },
          moved: { on: '2026-11-31', at: '18:00', zone, by: 'payer' },
        },
      ],
    },
  });
  expect(readPreview(input)).toMatchObject({
    code: 'calendar/no-such-day',
    field: '/engagement/moves/0/moved/on',
  });
});
