// The example beside a tariff that is being written: a small engagement that it prices as one types.

import { span, Temporal } from '@colla/calendar';
import { CALL_KINDS, type Call, type CallKind, PERFORMANCES, type Standing } from '@colla/hours';
import { fromTyped } from '@colla/money';
import { type Facts, type Statement, statement, type Tariff } from '@colla/rates';
import { type OrRefusal, Refusal, refused } from '@colla/refusal';
import { distance } from '@colla/travel';
import { readFigure } from './figure.ts';
import type { Reader, Slip } from './typed.ts';

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
const FIRST_DAY = Temporal.PlainDate.from('2026-03-02');

/** An engagement that touches what the tariff speaks of: one call of each kind it names, two rehearsals at least. */
export function startingExample(tariff: Tariff | undefined): Example {
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

export interface Priced {
  readonly statement: Statement | undefined;
  /** What stands in the example's fields and cannot be read; pointers such as `/calls/0/until`. */
  readonly slips: readonly Slip[];
}

/** Prices the example under what can be read of the tariff. */
export function priceExample(
  example: Example,
  tariff: Tariff,
  reader: Reader & { readonly zone: string },
): Priced {
  const slips: Slip[] = [];
  const or = <T>(answer: OrRefusal<T>, pointer: string, otherwise: T): T => {
    if (!refused(answer)) return answer;
    slips.push({ pointer: answer.field ?? pointer, detail: answer.sentence });
    return otherwise;
  };
  const calls = example.calls.flatMap(
    (call, index) => or(readCall(call, index, reader.zone), `/calls/${index}`, undefined) ?? [],
  );
  const km = or(distance(example.distance || '0', unitOf(tariff)), '/distance', {
    thousandths: 0,
    unit: 'km' as const,
  });
  const cost = or(fromTyped(example.cost || '0', reader.currency, reader.locale), '/cost', 0n);
  const asked = or(
    readFigure(example.requestedWorks || '0', { unit: 'count', least: 0, most: 50 }, 'Works asked for'),
    '/requestedWorks',
    0,
  );
  const facts: Facts = {
    calls,
    programme: Array.from({ length: asked }, (_, index) => work(index)),
    legs: km.thousandths > 0 ? [leg(km)] : [],
    costs: cost > 0n ? [{ id: 'cost', on: FIRST_DAY, what: 'Score', amount: cost }] : [],
    ...soloistOf(example),
    sharers: 1,
    circumstances: example.circumstance === '' ? [] : [example.circumstance],
    offered: false,
    holidays: new Set(),
  };
  const asOf = FIRST_DAY.subtract({ days: 30 }).toZonedDateTime(reader.zone);
  return { statement: statement(facts, { tariff, locale: reader.locale }, asOf), slips };
}

function soloistOf({
  level,
  instrument,
  study,
  pianistClass,
}: Example): Pick<Facts, 'soloist' | 'pianistClass'> {
  return {
    soloist: {
      ...(level ? { level } : {}),
      ...(instrument ? { instrument } : {}),
      ...(study ? { study } : {}),
    },
    ...(pianistClass ? { pianistClass } : {}),
  };
}

function unitOf(tariff: Tariff): 'km' | 'mile' {
  return tariff.clauses.flatMap((clause) => (clause.kind === 'travel' ? [clause.terms.unit] : []))[0] ?? 'km';
}

function work(index: number): Facts['programme'][number] {
  return { id: `work-${index}`, title: `Work ${index + 1}`, minutes: 5, requested: true };
}

function leg(distance: Facts['legs'][number]['distance']): Facts['legs'][number] {
  return { id: 'leg', on: FIRST_DAY, from: '', to: '', distance, minutes: 60, purpose: '' };
}

function readCall(call: ExampleCall, index: number, zone: string): OrRefusal<Call> {
  const planned = span({ on: call.on, from: call.from, until: call.until, zone });
  if (refused(planned)) return planned.at(`/calls/${index}`);
  const standing = readStanding(call, planned, index);
  if (refused(standing)) return standing;
  const label = call.label.trim();
  return {
    id: String(index).padStart(3, '0'),
    kind: call.kind,
    ...(label ? { label } : {}),
    place: '',
    planned,
    standing,
  };
}

function readStanding(call: ExampleCall, planned: Call['planned'], index: number): OrRefusal<Standing> {
  if (call.turned === 'missed') return { is: 'missed', by: 'payer', reason: 'other' };
  if (call.turned === 'played') {
    const over = readFigure(call.over || '0', { unit: 'minutes', least: -600, most: 600 }, 'Over');
    if (refused(over)) return over.at(`/calls/${index}/over`);
    const times = { start: planned.start, end: planned.end.add({ minutes: over }) };
    return endsFirst(times) ? nothingLeft(index) : { is: 'played', times };
  }
  const hours = readFigure(call.notice || '0', { unit: 'count', least: 0, most: 10_000 }, 'Hours before');
  if (refused(hours)) return hours.at(`/calls/${index}/notice`);
  const at = planned.start.subtract({ hours });
  return { is: 'cancelled', at, by: 'payer', reason: 'other', wasAgreed: true };
}

function endsFirst({ start, end }: Call['planned']): boolean {
  return Temporal.ZonedDateTime.compare(end, start) <= 0;
}

function nothingLeft(index: number): Refusal {
  return new Refusal('tariffs/no-time-left', 'That leaves no time played.', {}, `/calls/${index}/over`);
}
