// The example beside a tariff that is being written: a small engagement that it prices as one types.

import { Temporal } from '@colla/calendar';
import { CALL_KINDS, type CallKind, PERFORMANCES } from '@colla/hours';
import { type Selector, selectorSchema } from '@colla/rates';

export interface ExampleCall {
  readonly key: number;
  readonly kind: CallKind;
  readonly label: string;
  readonly place: string;
  readonly on: string;
  readonly from: string;
  readonly until: string;
  /** Whether its day is a public holiday. */
  readonly holiday: boolean;
  /** Minutes it ran over, as typed. */
  readonly over: string;
  readonly turned: 'played' | 'moved' | 'cancelled' | 'missed';
  /** Hours before its start at which word came, as typed; for one cancelled, or moved from the day before. */
  readonly notice: string;
}

export interface ExampleWork {
  readonly key: number;
  /** Minutes of music and pages of the part, as typed. */
  readonly minutes: string;
  readonly pages: string;
  readonly difficulty: string;
  /** Asked for beyond what the pianist offers. */
  readonly requested: boolean;
  /** The day the part came, or empty. */
  readonly came: string;
}

/** Words and figures are as typed; where one is empty, the fact is not known. */
export interface Example {
  readonly calls: readonly ExampleCall[];
  readonly works: readonly ExampleWork[];
  readonly level: string;
  readonly instrument: string;
  readonly study: string;
  readonly membership: string;
  readonly pianistClass: string;
  /** Several are parted by semicolons. */
  readonly circumstances: string;
  readonly sharers: string;
  /** Engagements of the payer before it in the season. */
  readonly soFar: string;
  /** Days from the asking to the first call. */
  readonly ahead: string;
  readonly term: string;
  readonly termFrom: string;
  /** Minutes of an entitlement that were left over from the term before. */
  readonly rolledOver: string;
  readonly distance: string;
  readonly cost: string;
}

/** Mondays to Sundays that hold no clock change or holiday that an example would have to explain. */
export const FIRST_DAY = Temporal.PlainDate.from('2026-03-02');

/** The three shapes that every tariff is tried on. */
export const SHAPES = ['whole', 'single', 'late'] as const;
export type ExampleShape = (typeof SHAPES)[number];
export type Examples = Readonly<Record<ExampleShape, Example>>;

/** A clause, as far as an example is made for it. */
export interface SpokenOf {
  readonly kind: string;
  readonly for?: Selector | undefined;
  readonly terms?: unknown;
}

/** One that touches what the tariff speaks of, its first call alone, and the whole with each call called off a day before. */
export function startingExamples(clauses: readonly SpokenOf[]): Examples {
  const whole = startingExample(clauses);
  return {
    whole,
    single: { ...whole, calls: whole.calls.slice(0, 1), works: [], distance: '' },
    late: {
      ...whole,
      calls: whole.calls.map((call) => ({ ...call, turned: 'cancelled', notice: '24' })),
      distance: '',
    },
  };
}

/** An engagement that touches what the tariff speaks of: one call of each kind it names, two calls at least. */
function startingExample(clauses: readonly SpokenOf[]): Example {
  const selectors = clauses.flatMap((clause) => [clause.for ?? {}, ...selectorsIn(clause.terms)]);
  const first = (words: (of: Selector) => readonly string[] | undefined) =>
    selectors.flatMap((of) => words(of) ?? [])[0] ?? '';
  const end = (range: (of: Selector) => { from?: number | undefined; to?: number | undefined } | undefined) =>
    selectors.flatMap((of) => range(of)?.to ?? range(of)?.from ?? []).map(String)[0] ?? '';
  return {
    calls: callsFor(selectors),
    works: [{ ...exampleWork(0), difficulty: first(({ difficulties }) => difficulties) }],
    level: first(({ levels }) => levels),
    instrument: first(({ instruments }) => instruments),
    study: first(({ study }) => study),
    membership: first(({ memberships }) => memberships),
    pianistClass: first(({ pianists }) => pianists),
    circumstances: '',
    sharers: '',
    soFar: end(({ soFar }) => soFar),
    ahead: end(({ daysAhead }) => daysAhead),
    term: first(({ terms }) => terms),
    termFrom: FIRST_DAY.subtract({ weeks: 2 }).toString(),
    rolledOver: '',
    distance: clauses.some(({ kind }) => kind === 'travel') ? '40' : '',
    cost: '',
  };
}

/** What the terms of a clause choose calls by: a package says what it includes. */
function selectorsIn(terms: unknown): Selector[] {
  if (typeof terms !== 'object' || terms === null) return [];
  return Object.values(terms).flatMap((value) => {
    const selector = Array.isArray(value) ? undefined : selectorSchema.safeParse(value).data;
    const isOne = selector !== undefined && (selector.calls ?? selector.labels) !== undefined;
    return isOne ? [selector] : selectorsIn(value);
  });
}

/** One call of each kind that is named, performances last; the last is on the first day of the week that is named. */
function callsFor(selectors: readonly Selector[]): ExampleCall[] {
  const named = CALL_KINDS.filter((kind) => selectors.some(({ calls }) => calls?.includes(kind)));
  const kinds = named.length > 0 ? named : (['rehearsal', 'recital'] as const);
  const order = [
    ...kinds.filter((kind) => !PERFORMANCES.has(kind)),
    ...kinds.filter((kind) => PERFORMANCES.has(kind)),
  ].slice(0, 4);
  const days: readonly string[] = selectors.flatMap(({ days }) => days ?? []);
  const weekday = WEEKDAYS.findIndex((day) => days.includes(day));
  return order.map((kind, index) => {
    const isLast = index === order.length - 1;
    const on = FIRST_DAY.add({ days: isLast && weekday >= 0 ? 7 + weekday : index });
    const label = selectors.find(({ calls, labels }) => labels && calls?.includes(kind))?.labels?.[0] ?? '';
    return { ...exampleCall(kind, index, on), label, holiday: isLast && days.includes('public holiday') };
  });
}

const WEEKDAYS = ['monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday', 'sunday'];

function exampleCall(kind: CallKind, key: number, on: Temporal.PlainDate): ExampleCall {
  const until = PERFORMANCES.has(kind) ? '11:30' : '11:00';
  return {
    key,
    kind,
    label: '',
    place: '',
    on: on.toString(),
    from: '10:00',
    until,
    holiday: false,
    over: '0',
    turned: 'played',
    notice: '24',
  };
}

function exampleWork(key: number): ExampleWork {
  const came = FIRST_DAY.subtract({ weeks: 1 }).toString();
  return { key, minutes: '10', pages: '12', difficulty: '', requested: true, came };
}

/** One more call: another like the last, a day later. */
export function addExampleCall(example: Example): Example {
  const last = example.calls.at(-1);
  const key = freeKey(example.calls);
  const on = last ? Temporal.PlainDate.from(last.on).add({ days: 1 }) : FIRST_DAY;
  const call = last ? { ...last, key, on: on.toString() } : exampleCall('rehearsal', key, on);
  return { ...example, calls: [...example.calls, call] };
}

/** One more work: another like the last. */
export function addExampleWork(example: Example): Example {
  const key = freeKey(example.works);
  const work = { ...(example.works.at(-1) ?? exampleWork(key)), key };
  return { ...example, works: [...example.works, work] };
}

function freeKey(of: readonly { key: number }[]): number {
  return Math.max(-1, ...of.map(({ key }) => key)) + 1;
}
