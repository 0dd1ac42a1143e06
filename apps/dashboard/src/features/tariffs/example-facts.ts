// The example as facts: what stands in its fields, read; and what there cannot be read.

import { readDay, span, Temporal } from '@colla/calendar';
import type { Call, Standing } from '@colla/hours';
import { fromTyped } from '@colla/money';
import type { Facts, Move, Tariff } from '@colla/rates';
import { type OrRefusal, Refusal, refused } from '@colla/refusal';
import { distance } from '@colla/travel';
import { tariffs as say } from '../../catalogue/tariffs.ts';
import { type Example, type ExampleCall, type ExampleWork, FIRST_DAY } from './example.ts';
import { readFigure } from './figure.ts';
import { type Reader, type Slip, wordsIn } from './typed.ts';

/** Whose days are read: the zone of the place. */
export type PlacedReader = Reader & { readonly zone: string };

/** What cannot be read is left out, and said: pointers such as `/calls/0/until`. */
export function factsOf(
  example: Example,
  tariff: Tariff,
  reader: PlacedReader,
): { facts: Facts; slips: Slip[] } {
  const slips: Slip[] = [];
  const or: Reading = (answer, pointer, otherwise) => {
    if (!refused(answer)) return answer;
    slips.push({ pointer: answer.field ?? pointer, detail: answer.sentence });
    return otherwise;
  };
  const calls = example.calls.flatMap(
    (call, index) => or(readCall(call, index, reader.zone), `/calls/${index}`, undefined) ?? [],
  );
  const moves = example.calls.flatMap((call, index) => moveOf(call, index, calls) ?? []);
  const facts = {
    calls,
    moves,
    programme: example.works.map((work, index) => readWork(work, index, or)),
    legs: legsOf(example, tariff, or),
    costs: costsOf(example, reader, or),
    ...soloistOf(example),
    ...seasonOf(example, tariff, reader, or),
    circumstances: wordsIn(example.circumstances),
    offered: false,
    holidays: new Set(example.calls.filter(({ holiday }) => holiday).map(({ on }) => on)),
  };
  return { facts, slips };
}

/** What was read, or something else where it could not be. */
type Reading = <T>(answer: OrRefusal<T>, pointer: string, otherwise: T) => T;

function figure(text: string, title: string, most: number): OrRefusal<number> {
  return readFigure(text.trim() === '' ? '0' : text, { unit: 'count', least: 0, most }, title);
}

function readCall(call: ExampleCall, index: number, zone: string): OrRefusal<Call> {
  const planned = span({ on: call.on, from: call.from, until: call.until, zone });
  if (refused(planned)) return planned.at(`/calls/${index}`);
  const standing = readStanding(call, planned, index);
  if (refused(standing)) return standing;
  const label = call.label.trim();
  const place = call.place.trim();
  return { id: callId(index), kind: call.kind, ...(label ? { label } : {}), place, planned, standing };
}

/** The example gives its calls ids by their places. */
export function callId(index: number): string {
  return String(index).padStart(3, '0');
}

function readStanding(call: ExampleCall, planned: Call['planned'], index: number): OrRefusal<Standing> {
  if (call.turned === 'missed') return { is: 'missed', by: 'payer', reason: 'other' };
  const hours = figure(call.notice, say('notice'), 10_000);
  if (refused(hours)) return hours.at(`/calls/${index}/notice`);
  if (call.turned === 'cancelled')
    return {
      is: 'cancelled',
      at: planned.start.subtract({ hours }),
      by: 'payer',
      reason: 'other',
      wasAgreed: true,
    };
  const over = readFigure(call.over || '0', { unit: 'minutes', least: -600, most: 600 }, say('over'));
  if (refused(over)) return over.at(`/calls/${index}/over`);
  const times = { start: planned.start, end: planned.end.add({ minutes: over }) };
  return endsFirst(times) ? nothingLeft(index) : { is: 'played', times };
}

function endsFirst({ start, end }: Call['planned']): boolean {
  return Temporal.ZonedDateTime.compare(end, start) <= 0;
}

function nothingLeft(index: number): Refusal {
  return new Refusal('tariffs/no-time-left', say('noTimeLeft'), {}, `/calls/${index}/over`);
}

/** A call that was moved stood at the same hour on the day before. */
function moveOf({ turned, notice }: ExampleCall, index: number, calls: readonly Call[]): Move | undefined {
  const call = calls.find(({ id }) => id === callId(index));
  if (turned !== 'moved' || !call) return undefined;
  const was = {
    start: call.planned.start.subtract({ days: 1 }),
    end: call.planned.end.subtract({ days: 1 }),
  };
  return { call: call.id, was, at: was.start.subtract({ hours: Number(notice) || 0 }), by: 'payer' };
}

function readWork(work: ExampleWork, index: number, or: Reading): Facts['programme'][number] {
  const at = `/works/${index}`;
  const pages = or(figure(work.pages, say('pages'), 2000), `${at}/pages`, 0);
  const came = work.came && or(readDay(work.came), `${at}/came`, undefined);
  const difficulty = work.difficulty.trim();
  return {
    id: `work-${index}`,
    title: say('workNumber', { number: index + 1 }),
    minutes: or(figure(work.minutes, say('minutesOfMusic'), 600), `${at}/minutes`, 0),
    requested: work.requested,
    ...(pages > 0 ? { pages } : {}),
    ...(difficulty ? { difficulty } : {}),
    ...(came ? { part: { receivedOn: came } } : {}),
  };
}

function legsOf(example: Example, tariff: Tariff, or: Reading): Facts['legs'] {
  const none = { thousandths: 0, unit: 'km' as const };
  const far = or(distance(example.distance || '0', unitOf(tariff)), '/distance', none);
  if (far.thousandths === 0) return [];
  return [{ id: 'leg', on: FIRST_DAY, from: '', to: '', distance: far, minutes: 60, purpose: '' }];
}

function unitOf(tariff: Tariff): 'km' | 'mile' {
  return tariff.clauses.flatMap((clause) => (clause.kind === 'travel' ? [clause.terms.unit] : []))[0] ?? 'km';
}

function costsOf({ cost }: Example, { currency, locale }: Reader, or: Reading): Facts['costs'] {
  const amount = or(fromTyped(cost || '0', currency, locale), '/cost', 0n);
  return amount > 0n ? [{ id: 'cost', on: FIRST_DAY, what: say('cost'), amount }] : [];
}

function soloistOf(example: Example): Pick<Facts, 'soloist' | 'pianistClass'> {
  const { level, instrument, study, membership, pianistClass } = example;
  return {
    soloist: {
      ...(level ? { level } : {}),
      ...(instrument ? { instrument } : {}),
      ...(study ? { study } : {}),
      ...(membership ? { membership } : {}),
    },
    ...(pianistClass ? { pianistClass } : {}),
  };
}

/** What the season says of it: its term, when it was asked for, what came before it. */
function seasonOf(example: Example, tariff: Tariff, { zone }: PlacedReader, or: Reading) {
  const ahead = or(figure(example.ahead, say('ahead'), 1000), '/ahead', 0);
  const minutes = or(figure(example.rolledOver, say('rolledOver'), 44_640), '/rolledOver', 0);
  return {
    sharers: Math.max(1, or(figure(example.sharers, say('sharers'), 20), '/sharers', 1)),
    soFar: or(figure(example.soFar, say('soFar'), 1000), '/soFar', 0),
    rolledOver: Object.fromEntries(tariff.clauses.map(({ id }) => [id, minutes])),
    terms: termsOf(example, or),
    ...(example.ahead.trim() === ''
      ? {}
      : { askedAt: FIRST_DAY.subtract({ days: ahead }).toZonedDateTime(zone) }),
  };
}

type Term = NonNullable<Facts['terms']>[number];
const TERM_WEEKS = 14;

function termsOf({ term, termFrom }: Example, or: Reading): Term[] {
  const from = termFrom ? or(readDay(termFrom), '/termFrom', undefined) : undefined;
  if (!from) return [];
  const to = from.add({ weeks: TERM_WEEKS }).subtract({ days: 1 });
  return [{ name: term.trim() || say('term'), from, to }];
}
