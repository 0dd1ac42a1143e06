import { Temporal } from 'temporal-polyfill';
import { describe, expect, it } from 'vitest';
import published from './published-values.json' with { type: 'json' };
import { CHANGES_OF_2026, staleZones, staleZoneWarning, zone } from './zone.ts';

describe('a place keeps its clocks by a zone', () => {
  it.each(['Europe/London', 'America/Argentina/Buenos_Aires', 'Pacific/Chatham', 'UTC'])('%s', (name) => {
    expect(zone(name)).toBe(name);
  });

  it('whatever the capitals it was typed with', () => {
    expect(zone('europe/london')).toBe('Europe/London');
    expect(zone('europe/london')).toBe('Europe/London');
  });

  it.each(['Europe/Quaymarrow', '+01:00', 'GMT+1', '', 'Europe/London ', 'London', '../etc'])(
    'not by “%s”',
    (name) => {
      expect(zone(name)).toMatchObject({ code: 'calendar/unknown-zone', facts: { zone: name } });
    },
  );
});

describe('this runtime knows when clocks change', () => {
  it.each(published.clockChanges.zones)('in $zone', ({ zone: name, transitions, december2026 }) => {
    const offsetAt = (instant: Temporal.Instant) => instant.toZonedDateTimeISO(name).offset;
    const found = transitions.map(({ utc }) => {
      const instant = Temporal.Instant.from(utc);
      return { utc, before: offsetAt(instant.subtract({ seconds: 1 })), after: offsetAt(instant) };
    });
    expect(found).toEqual(transitions);
    expect(offsetAt(Temporal.Instant.from('2026-12-15T20:00:00Z'))).toBe(december2026);
  });
});

describe('zone data older than the changes of 2026', () => {
  it('is looked for in every zone that changed', () => {
    const { at, offsets } = published.changedIn2026;
    const wanted = offsets.map(({ zone, offset }) => ({ zone, instant: at, offset }));
    expect([...CHANGES_OF_2026].sort((a, b) => (a.zone < b.zone ? -1 : 1))).toEqual(
      wanted.sort((a, b) => (a.zone < b.zone ? -1 : 1)),
    );
  });

  it('is found by an hour that is off, and only there', () => {
    const summer = { zone: 'Europe/London', instant: '2025-07-01T12:00:00Z' };
    expect(staleZones([{ ...summer, offset: '+01:00' }])).toEqual([]);
    expect(staleZones([{ ...summer, offset: '+02:00' }])).toEqual(['Europe/London']);
  });

  it('is said in one sentence that names the zones and the mend', () => {
    expect(staleZoneWarning([])).toBeUndefined();
    expect(staleZoneWarning(['America/Vancouver', 'Africa/Casablanca'])).toBe(
      'The time zone data of this runtime is older than the changes of 2026: times in America/Vancouver, ' +
        'Africa/Casablanca may be an hour off. Update Node.js to the newest release of its line before relying on calls there.',
    );
  });

  it('is asked of the runtime as it is', () => {
    const known: readonly string[] = CHANGES_OF_2026.map(({ zone }) => zone);
    expect(staleZones().filter((name) => !known.includes(name))).toEqual([]);
    expect(staleZoneWarning() === undefined).toBe(staleZones().length === 0);
  });
});
