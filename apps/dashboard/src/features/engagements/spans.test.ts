// Times as people write them at the place of the call.

import { span } from '@colla/calendar';
import { granted } from '@colla/refusal';
import { describe, expect, it } from 'vitest';
import { endMoved, pastMidnight, writeSpan } from './spans.ts';

const evening = { on: '2026-03-14', from: '22:00', until: '23:30', zone: 'Europe/London' };

describe('times of a call', () => {
  it('are written back as they were read, at the place', () => {
    expect(writeSpan(granted(span(evening)))).toEqual(evening);
  });

  it('that run past midnight name the day they end on', () => {
    const late = { ...evening, until: '00:30', untilOn: '2026-03-15' };
    expect(writeSpan(granted(span(late)))).toEqual(late);
  });

  it('from 22:00 until 00:30 end on the next day', () => {
    expect(pastMidnight({ ...evening, until: '00:30' }).untilOn).toBe('2026-03-15');
  });

  it('from 22:00 until 21:00 are a slip, not a day long', () => {
    expect(pastMidnight({ ...evening, until: '21:00' }).untilOn).toBeUndefined();
  });

  it('that ran 45 minutes over a planned end of 23:30 end at a quarter past midnight', () => {
    expect(endMoved(evening, 45)).toEqual({ ...evening, until: '00:15', untilOn: '2026-03-15' });
    expect(endMoved({ ...evening, until: '00:15', untilOn: '2026-03-15' }, -45)).toEqual(evening);
  });

  it('in the night when clocks go forward skip the hour that there is not', () => {
    const night = { on: '2026-03-29', from: '00:15', until: '00:45', zone: 'Europe/London' };
    expect(endMoved(night, 30).until).toBe('02:15');
  });

  it('in the night when clocks go back may end at the second of two like times', () => {
    const night = { on: '2026-11-01', from: '00:30', until: '01:45', zone: 'America/Chicago' };
    // 01:45 and half an hour is the second 01:15 of that night.
    const second = { ...night, until: '01:15', untilAgain: true };
    expect(endMoved(night, 30)).toEqual(second);
    expect(endMoved(second, 30)).toEqual({ ...night, until: '01:45', untilAgain: true });
    expect(endMoved(second, -30)).toEqual(night);
    expect(endMoved(night, 75)).toEqual({ ...night, until: '02:00' });
    expect(endMoved(night, -15)).toEqual({ ...night, until: '01:30' });
    expect(writeSpan(granted(span(second)))).toEqual(second);
  });

  it('of which the end is still being typed are left as they are', () => {
    expect(endMoved({ ...evening, until: '' }, 15)).toEqual({ ...evening, until: '' });
  });
});
