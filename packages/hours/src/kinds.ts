// The kinds of call. Apart from what reckons with time, so that a first screen that only names them loads no calendar.

/** The trade's kinds of call. */
export const CALL_KINDS = [
  'rehearsal',
  'lesson',
  'coaching',
  'dress rehearsal',
  'recital',
  'jury',
  'exam',
  'audition',
  'competition round',
  'recording',
  'class',
  'service',
  'other',
] as const;
export type CallKind = (typeof CALL_KINDS)[number];

/** The kinds at which somebody listens: what an engagement leads up to. */
export const PERFORMANCES: ReadonlySet<CallKind> = new Set<CallKind>([
  'recital',
  'jury',
  'exam',
  'audition',
  'competition round',
  'recording',
  'service',
]);
