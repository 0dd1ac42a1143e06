// How a moment of “what if?” is said, by the clock of its place.

import type { Temporal } from '@colla/calendar';
import { whatIf as say } from '../../catalogue/what-if.ts';
import { sayDay, sayTime } from '../../locale.ts';

/** “Fri 27 Nov” and “17:08”. */
export function partsOf(at: Temporal.ZonedDateTime): { day: string; time: string } {
  const text = at.toString();
  return { day: sayDay(text, 'weekday'), time: sayTime(text) };
}

/** “Fri 27 Nov, 17:08”. */
export function sayWhen(at: Temporal.ZonedDateTime): string {
  return say('when', partsOf(at));
}
