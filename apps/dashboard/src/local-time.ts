// What an instant's text says of its own place. `2026-03-14T19:30:00+00:00[Europe/London]` begins with the day and
// the clock there, so that nothing here needs to know a zone; what does, is done by @colla/calendar.

/** The day, `2026-03-14`, of a day or an instant. */
export function dayOf(text: string): string {
  return text.slice(0, 10);
}

/** Minutes since the place's midnight. */
export function clockOf(instant: string): number {
  return Number(instant.slice(11, 13)) * 60 + Number(instant.slice(14, 16));
}

/** The zone's name, or nothing where the text has none. */
export function zoneOf(instant: string): string | undefined {
  return /\[([^\]]+)\]/.exec(instant)?.[1];
}

/** Days counted from 1970-01-01, to place days beside one another. */
export function dayNumber(day: string): number {
  return (
    Date.UTC(Number(day.slice(0, 4)), Number(day.slice(5, 7)) - 1, Number(day.slice(8, 10))) / 86_400_000
  );
}

/** The day of a day number. */
export function dayAt(number: number): string {
  return new Date(number * 86_400_000).toISOString().slice(0, 10);
}

/** The Monday of a day's week, as a day number: 1970-01-01 was a Thursday. */
export function mondayOf(number: number): number {
  return number - ((((number + 3) % 7) + 7) % 7);
}

/** Today at a place. */
export function todayIn(zone: string): string {
  const parts = new Intl.DateTimeFormat('en', {
    timeZone: zone,
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
  });
  const of = Object.fromEntries(parts.formatToParts().map(({ type, value }) => [type, value]));
  return `${of.year}-${of.month}-${of.day}`;
}
