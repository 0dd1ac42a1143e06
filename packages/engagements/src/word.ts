// The word by which something of an engagement falls or moves: whose it is, and when it came.

import { Temporal } from '@colla/calendar';
import { type OrRefusal, Refusal, refused } from '@colla/refusal';

/** A word as it was read, where it has come by `now`. Refuses one of a later day: it cannot be known yet. */
export function heard<Word extends { readonly at: Temporal.ZonedDateTime }>(
  word: OrRefusal<Word>,
  now: Temporal.ZonedDateTime,
): OrRefusal<Word> {
  if (refused(word)) return word;
  const day = word.at.withTimeZone(now.timeZoneId).toPlainDate();
  const today = now.toPlainDate();
  if (Temporal.PlainDate.compare(day, today) <= 0) return word;
  return new Refusal(
    'engagements/word-ahead',
    `Today is ${today}, and word of ${day} has not come yet. Correct the day it came.`,
    { today: today.toString(), on: day.toString() },
    '/on',
  );
}
