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
