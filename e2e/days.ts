// Days as a browser's day field takes them, counted from today: what is played must lie behind, what is only kept free ahead.

/** The day so many days after today (before, where negative), as `2026-03-14`. */
export function dayFromToday(days: number): string {
  return new Date(Date.now() + days * 86_400_000).toISOString().slice(0, 10);
}
