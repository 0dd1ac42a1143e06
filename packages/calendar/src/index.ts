// Days, instants with their zone, notice, seasons. All zone arithmetic of the project happens here.

export { Temporal } from 'temporal-polyfill';
export { dayAt, dayNumber, mondayOf, WEEKDAYS, type Weekday, weekdayOf, weekWithin } from './day-number.ts';
export { type Boundary, deadline, type Holidays, inTime, type Notice } from './deadline.ts';
export { isAfter } from './order.ts';
export { inSeason, type Season, season, weekOf, weeksOf } from './season.ts';
export {
  comesTwice,
  localTime,
  minutesOf,
  readDay,
  readInstant,
  readTime,
  type Span,
  span,
  type WrittenSpan,
} from './span.ts';
export { type When, whenOf } from './when.ts';
export { type DailyWindow, minutesWithin } from './window.ts';
export { CHANGES_OF_2026, type KnownOffset, staleZones, staleZoneWarning, type Zone, zone } from './zone.ts';
