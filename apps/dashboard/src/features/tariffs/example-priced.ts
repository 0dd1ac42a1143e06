// The example, priced as it stands in its fields under what can be read of the tariff.

import { span, Temporal } from '@colla/calendar';
import type { Call, Standing } from '@colla/hours';
import { fromTyped } from '@colla/money';
import { type Facts, type Statement, statement, type Tariff } from '@colla/rates';
import { type OrRefusal, Refusal, refused } from '@colla/refusal';
import { distance } from '@colla/travel';
import { tariffs as say } from '../../catalogue/tariffs.ts';
import { type Example, type ExampleCall, FIRST_DAY } from './example.ts';
import { readFigure } from './figure.ts';
import type { Reader, Slip } from './typed.ts';

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
    readFigure(example.requestedWorks || '0', { unit: 'count', least: 0, most: 50 }, say('requestedWorks')),
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
    const over = readFigure(call.over || '0', { unit: 'minutes', least: -600, most: 600 }, say('over'));
    if (refused(over)) return over.at(`/calls/${index}/over`);
    const times = { start: planned.start, end: planned.end.add({ minutes: over }) };
    return endsFirst(times) ? nothingLeft(index) : { is: 'played', times };
  }
  const hours = readFigure(call.notice || '0', { unit: 'count', least: 0, most: 10_000 }, say('notice'));
  if (refused(hours)) return hours.at(`/calls/${index}/notice`);
  const at = planned.start.subtract({ hours });
  return { is: 'cancelled', at, by: 'payer', reason: 'other', wasAgreed: true };
}

function endsFirst({ start, end }: Call['planned']): boolean {
  return Temporal.ZonedDateTime.compare(end, start) <= 0;
}

function nothingLeft(index: number): Refusal {
  return new Refusal('tariffs/no-time-left', say('noTimeLeft'), {}, `/calls/${index}/over`);
}
