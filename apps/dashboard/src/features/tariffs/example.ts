// The example beside a tariff that is being written: a small engagement that it prices as one types.

import { Temporal } from '@colla/calendar';
import { CALL_KINDS, type CallKind, PERFORMANCES } from '@colla/hours';
import type { Tariff } from '@colla/rates';

export interface ExampleCall {
  readonly key: number;
  readonly kind: CallKind;
  readonly label: string;
  readonly on: string;
  readonly from: string;
  readonly until: string;
  /** Minutes it ran over, as typed. */
  readonly over: string;
  readonly turned: 'played' | 'cancelled' | 'missed';
  /** Hours before its start at which word came, as typed; for a cancelled one. */
  readonly notice: string;
}

export interface Example {
  readonly calls: readonly ExampleCall[];
  readonly level: string;
  readonly instrument: string;
  readonly study: string;
  readonly pianistClass: string;
  readonly circumstance: string;
  readonly requestedWorks: string;
  readonly distance: string;
  readonly cost: string;
}

/** Mondays to Sundays that hold no clock change or holiday that an example would have to explain. */
export const FIRST_DAY = Temporal.PlainDate.from('2026-03-02');

/** The three shapes that every tariff is tried on. */
export const SHAPES = ['whole', 'single', 'late'] as const;
export type ExampleShape = (typeof SHAPES)[number];
export type Examples = Readonly<Record<ExampleShape, Example>>;

/** One that touches what the tariff speaks of, its first call alone, and the whole called off a day before it begins. */
export function startingExamples(tariff: Tariff | undefined): Examples {
  const whole = startingExample(tariff);
  return {
    whole,
    single: { ...whole, calls: whole.calls.slice(0, 1), distance: '0' },
    late: {
      ...whole,
      calls: whole.calls.map((call, day) => ({
        ...call,
        turned: 'cancelled',
        notice: String(24 * (day + 1)),
      })),
      distance: '0',
    },
  };
}

/** An engagement that touches what the tariff speaks of: one call of each kind it names, two rehearsals at least. */
function startingExample(tariff: Tariff | undefined): Example {
  const selectors = tariff?.clauses.map((clause) => clause.for) ?? [];
  const first = (words: (of: (typeof selectors)[number]) => readonly string[] | undefined) =>
    selectors.flatMap((of) => words(of) ?? [])[0] ?? '';
  const named = CALL_KINDS.filter((kind) => selectors.some(({ calls }) => calls?.includes(kind)));
  const kinds = named.length > 0 ? named : (['rehearsal', 'recital'] as const);
  const order = [
    ...kinds.filter((kind) => !PERFORMANCES.has(kind)),
    ...kinds.filter((k) => PERFORMANCES.has(k)),
  ];
  return {
    calls: order.slice(0, 4).map((kind, index) => exampleCall(kind, index, FIRST_DAY.add({ days: index }))),
    level: first(({ levels }) => levels),
    instrument: first(({ instruments }) => instruments),
    study: first(({ study }) => study),
    pianistClass: first(({ pianists }) => pianists),
    circumstance: '',
    requestedWorks: '0',
    distance: tariff?.clauses.some(({ kind }) => kind === 'travel') ? '40' : '0',
    cost: '0',
  };
}

function exampleCall(kind: CallKind, key: number, on: Temporal.PlainDate): ExampleCall {
  const until = PERFORMANCES.has(kind) ? '11:30' : '11:00';
  return {
    key,
    kind,
    label: '',
    on: on.toString(),
    from: '10:00',
    until,
    over: '0',
    turned: 'played',
    notice: '24',
  };
}

/** One more call: another like the last, a day later. */
export function addExampleCall(example: Example): Example {
  const last = example.calls.at(-1);
  const key = Math.max(-1, ...example.calls.map((call) => call.key)) + 1;
  const on = last ? Temporal.PlainDate.from(last.on).add({ days: 1 }) : FIRST_DAY;
  const call = last ? { ...last, key, on: on.toString() } : exampleCall('rehearsal', key, on);
  return { ...example, calls: [...example.calls, call] };
}
