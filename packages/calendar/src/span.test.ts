import { granted, refused } from '@colla/refusal';
import fc from 'fast-check';
import { Temporal } from 'temporal-polyfill';
import { describe, expect, it } from 'vitest';
import published from './published-values.json' with { type: 'json' };
import {
  comesTwice,
  localTime,
  minutesOf,
  readDay,
  readInstant,
  readTime,
  span,
  type WrittenSpan,
} from './span.ts';

const rehearsal: WrittenSpan = { on: '2026-03-14', from: '10:00', until: '11:30', zone: 'Europe/London' };

it('a call of two days is read, and of a minute more refused: its day is written wrong', () => {
  const two = { ...rehearsal, untilOn: '2026-03-16', until: '10:00' };
  expect(minutesOf(granted(span(two)))).toBe(2880);
  expect(span({ ...two, until: '10:01' })).toMatchObject({ code: 'calendar/too-long', field: '/untilOn' });
});

describe('a call lasts as long as it was lived', () => {
  it.each([
    ['a rehearsal of an hour and a half', {}, 90],
    [
      'a wedding that ends at half past midnight',
      { from: '22:00', until: '00:30', untilOn: '2026-03-15' },
      150,
    ],
    // London, 25 October 2026: clocks go back from 02:00 to 01:00, so 00:30 to 02:30 is three hours
    ['the night clocks go back', { on: '2026-10-25', from: '00:30', until: '02:30' }, 180],
    // 01:30 comes twice; both ends are read as the first
    ['within the hour that comes twice', { on: '2026-10-25', from: '01:30', until: '01:45' }, 15],
    // 28 March 2027: 01:00 becomes 02:00, so 00:30 to 02:30 is one hour
    ['the night clocks go forward', { on: '2027-03-28', from: '00:30', until: '02:30' }, 60],
    // published vectors: five hours lived, whatever the clock on the wall says
    [
      'a New York night in autumn',
      { on: '2026-10-31', from: '22:00', until: '02:00', untilOn: '2026-11-01', zone: 'America/New_York' },
      300,
    ],
    [
      'a New York night in spring',
      { on: '2027-03-13', from: '22:00', until: '04:00', untilOn: '2027-03-14', zone: 'America/New_York' },
      300,
    ],
    // Lord Howe moves by half an hour (02:00 to 01:30 on 5 April 2026)
    [
      'Lord Howe in autumn',
      { on: '2026-04-05', from: '01:00', until: '03:00', zone: 'Australia/Lord_Howe' },
      150,
    ],
    // Chatham changes at a quarter to (03:45 to 02:45 on 5 April 2026)
    ['Chatham in autumn', { on: '2026-04-05', from: '02:00', until: '04:00', zone: 'Pacific/Chatham' }, 180],
  ])('%s', (_, but, minutes) => {
    expect(minutesOf(granted(span({ ...rehearsal, ...but })))).toBe(minutes);
  });

  it('and a weekly rehearsal at nine keeps its hour when clocks change', () => {
    const { zone, local, utc } = published.weekly;
    const first = Temporal.PlainDate.from('1997-09-02');
    const weeks = utc.map((_, week) =>
      granted(localTime(first.add({ weeks: week }).toString(), local, zone)),
    );
    expect(weeks.map((at) => at.toInstant().toString({ smallestUnit: 'minute' }))).toEqual(utc);
  });
});

describe('a time that clocks skip that night does not exist', () => {
  it.each([
    ['2027-03-28', '01:30', 'Europe/London', '02:30'],
    ['2027-03-14', '02:00', 'America/New_York', '03:00'],
    ['2026-10-04', '02:15', 'Australia/Lord_Howe', '02:45'],
    ['2026-09-27', '03:00', 'Pacific/Chatham', '04:00'],
  ])('%s %s in %s: did you mean %s?', (on, from, zone, suggestion) => {
    const answer = span({ ...rehearsal, on, from, until: '23:00', zone });
    expect(answer).toMatchObject({ code: 'calendar/skipped-time', field: '/from', facts: { suggestion } });
    expect(refused(answer) && answer.sentence).toBe(
      `${from} on ${on} does not exist in ${zone}: clocks go forward that night. Did you mean ${suggestion}?`,
    );
  });

  it('nor can a call end at it', () => {
    expect(span({ ...rehearsal, on: '2027-03-28', from: '00:15', until: '01:30' })).toMatchObject({
      code: 'calendar/skipped-time',
      field: '/until',
    });
  });
});

describe('a time that clocks show twice that night', () => {
  // London goes back from 02:00 to 01:00 on 25 October 2026, New York on 1 November.
  const night = { ...rehearsal, on: '2026-10-25', zone: 'Europe/London' };

  it.each([
    ['the first time until the first', { from: '01:15', until: '01:45' }, 30],
    ['the first time until the second', { from: '01:15', until: '01:45', untilAgain: true }, 90],
    [
      'the second time until the second',
      { from: '01:15', fromAgain: true, until: '01:45', untilAgain: true },
      30,
    ],
    [
      'the first time until the second of an earlier time',
      { from: '01:45', until: '01:15', untilAgain: true },
      30,
    ],
    ['the second time until three', { from: '01:30', fromAgain: true, until: '03:00' }, 90],
  ])('%s', (_, but, minutes) => {
    expect(minutesOf(granted(span({ ...night, ...but })))).toBe(minutes);
  });

  it.each([
    ['2026-10-25', '01:30', 'Europe/London', true],
    ['2026-10-25', '02:00', 'Europe/London', false],
    ['2026-10-24', '01:30', 'Europe/London', false],
    ['2026-11-01', '01:30', 'America/New_York', true],
    ['2027-03-28', '01:30', 'Europe/London', false],
    ['2026-10-25', 'late', 'Europe/London', false],
  ])('is known: %s %s in %s, %s', (on, at, zone, twice) => {
    expect(comesTwice(on, at, zone)).toBe(twice);
  });
});

describe('a call is refused, and the field named', () => {
  it.each([
    ['that ends before it starts', { until: '09:45' }, 'calendar/ends-before-it-starts', '/until'],
    ['that takes no time', { until: '10:00' }, 'calendar/ends-before-it-starts', '/until'],
    ['that ends the day before', { untilOn: '2026-03-13' }, 'calendar/ends-before-it-starts', '/until'],
    ['in a zone that is none', { zone: 'Mars/Olympus' }, 'calendar/unknown-zone', '/zone'],
    ['on 30 February', { on: '2026-02-30' }, 'calendar/no-such-day', '/on'],
    ['that ends on 31 April', { untilOn: '2026-04-31' }, 'calendar/no-such-day', '/untilOn'],
    ['at a quarter past never', { from: '25:15' }, 'calendar/no-such-time', '/from'],
    ['until noon in words', { until: 'noon' }, 'calendar/no-such-time', '/until'],
  ])('%s', (_, but, code, field) => {
    expect(span({ ...rehearsal, ...but })).toMatchObject({ code, field });
  });

  it('with a sentence that helps where it runs past midnight', () => {
    const answer = span({ ...rehearsal, from: '22:00', until: '00:30' });
    expect(refused(answer) && answer.sentence).toBe(
      'It ends at 00:30, which is not after its start at 22:00 on 2026-03-14. Correct the end, or give the day ' +
        'it ends on if it runs past midnight.',
    );
  });
});

describe('days, times and instants are read strictly', () => {
  it.each(['2026-2-3', '14.03.2026', '2026-13-01', '2026-02-29', '', '2026-03-14T10:00', '26-03-14'])(
    '“%s” is no day',
    (text) => {
      expect(readDay(text)).toMatchObject({ code: 'calendar/no-such-day', facts: { day: text } });
    },
  );

  it('29 February is a day in a leap year', () => {
    expect(granted(readDay('2028-02-29')).toString()).toBe('2028-02-29');
  });

  it.each(['7:30', '24:00', '19.30', '19:60', '19:30:00', ''])('“%s” is no time of day', (text) => {
    expect(readTime(text)).toMatchObject({ code: 'calendar/no-such-time', facts: { time: text } });
  });

  it('an instant is told by its offset and shown by its zone', () => {
    const read = granted(readInstant('2026-07-01T10:00:00+00:00[Europe/London]'));
    expect(read.toString()).toBe('2026-07-01T11:00:00+01:00[Europe/London]');
  });

  it.each([
    ['2026-03-14T10:00:00Z', 'calendar/no-such-instant'],
    ['2026-03-14', 'calendar/no-such-instant'],
    ['yesterday', 'calendar/no-such-instant'],
    ['2026-03-14T10:00:00+00:00[Mars/Olympus]', 'calendar/no-such-instant'],
    ['2026-03-14T10:00:00+01:00[+01:00]', 'calendar/unknown-zone'],
  ])('“%s” is no instant: %s', (text, code) => {
    expect(readInstant(text)).toMatchObject({ code });
  });

  it('what is written down of an instant is read back as it was', () => {
    const zones = published.clockChanges.zones.map(({ zone }) => zone);
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 4_102_444_800 }), fc.constantFrom(...zones), (seconds, zone) => {
        const at = Temporal.Instant.fromEpochMilliseconds(seconds * 1000).toZonedDateTimeISO(zone);
        expect(granted(readInstant(at.toString())).equals(at)).toBe(true);
      }),
    );
  });
});
