// Facts written the short way, for examples and tests: `rehearsal 70` is a rehearsal planned for 70 minutes.

import { type Season, type Span, Temporal } from '@colla/calendar';
import { CALL_KINDS, type Call, type CallKind, type Reason, type Standing, type Who } from '@colla/hours';
import { type Currency, fromDecimal } from '@colla/money';
import { granted } from '@colla/refusal';
import { type DistanceUnit, distance } from '@colla/travel';
import type { Facts, Move, SoloistFacts, WorkFacts } from './facts.ts';

/**
 * A call: `[n × [weekly ]][label: ]kind minutes[ +minutes over][ late minutes][ on day][ at time][ in place][, agreed | , only if …]`, such as
 * `3 × lesson 30`, `13 × weekly lesson 30 on 2026-01-12`, `mock jury: jury 20`, `recital 120 +80`, `rehearsal 60 on 2026-03-01 at 14:00`. Without a
 * day, calls follow one another a day apart from Monday 2 March 2026 at 10:00. Calls are played unless the
 * whole is offered or the call says that it is only agreed, or held until something happens.
 */
export interface Given {
  readonly zone?: string;
  readonly calls?: readonly string[];
  /** Calls that fall: their number from zero, when word came (local), who and why; no `at` is a no-show. */
  readonly fallen?: readonly { call: number; at?: string; by?: Who; reason?: Reason }[];
  /**
   * Titles; after one, parted by commas: `requested` marks it asked for, `12 min` its length, `6 pages`, `difficulty
   * level 3`, `came 2026-06-04` the day its part was received, `wanted` a part that has not come.
   */
  readonly works?: readonly string[];
  /** Journeys such as `40 km` or `84 mile, 90 min on 2026-03-03`; on Monday 2 March where no day is said. */
  readonly legs?: readonly string[];
  /** Costs such as `Score 12.00`. */
  readonly costs?: readonly string[];
  readonly soloist?: SoloistFacts;
  readonly sharers?: number;
  readonly pianistClass?: string;
  readonly circumstances?: readonly string[];
  readonly holidays?: readonly string[];
  readonly offered?: boolean;
  readonly askedAt?: string;
  readonly agreedAt?: string;
  /** Such as `fall 2026-08-24 to 2026-12-11`. */
  readonly terms?: readonly string[];
  /** Calls that were moved: their number from zero, when word came, when they had been to start (local), by whose wish. */
  readonly moves?: readonly { call: number; at: string; was: string; by?: Who }[];
  readonly soFar?: number;
  readonly rolledOver?: Readonly<Record<string, number>>;
}

const MONDAY = Temporal.PlainDate.from('2026-03-02');

/** Reads facts written the short way. A slip in them throws: they are written by us, not by users. */
export function given(short: Given, currency: Currency): Facts {
  const zone = short.zone ?? 'Europe/London';
  const fallen = new Map(short.fallen?.map((fall) => [fall.call, fall]));
  return {
    calls: (short.calls ?? [])
      .flatMap(repeated)
      .map((text, number) => readCall(text, number, zone, fallen.get(number), short.offered)),
    programme: (short.works ?? []).map((text, number) => readWork(text, number)),
    legs: (short.legs ?? []).map((text, number) => readLeg(text, number)),
    costs: (short.costs ?? []).map((text, number) => readCost(text, number, currency)),
    soloist: short.soloist ?? {},
    sharers: short.sharers ?? 1,
    ...(short.pianistClass === undefined ? {} : { pianistClass: short.pianistClass }),
    circumstances: short.circumstances ?? [],
    holidays: new Set(short.holidays ?? []),
    offered: short.offered ?? false,
    ...(short.askedAt === undefined ? {} : { askedAt: local(short.askedAt, zone) }),
    ...(short.agreedAt === undefined ? {} : { agreedAt: local(short.agreedAt, zone) }),
    ...(short.terms === undefined ? {} : { terms: short.terms.map(readTerm) }),
    ...(short.moves === undefined ? {} : { moves: short.moves.map((move) => readMove(move, zone)) }),
    ...(short.soFar === undefined ? {} : { soFar: short.soFar }),
    ...(short.rolledOver === undefined ? {} : { rolledOver: short.rolledOver }),
  };
}

function repeated(text: string): string[] {
  const [, times, weekly, one] = /^(\d+) × (weekly )?(.+)$/.exec(text) ?? [];
  if (one === undefined) return [text];
  return Array.from({ length: Number(times) }, (_, week) => (weekly ? weeksLater(one, week) : one));
}

function weeksLater(text: string, weeks: number): string {
  return text.replace(/\d{4}-\d\d-\d\d/, (day) => Temporal.PlainDate.from(day).add({ weeks }).toString());
}

type Fall = NonNullable<Given['fallen']>[number];

function readCall(text: string, number: number, zone: string, fall: Fall | undefined, offered = false): Call {
  const match =
    /^(?:([^:]+): )?([a-z ]+?) (\d+)(?: \+(\d+))?(?: late (\d+))?(?: on (\d{4}-\d\d-\d\d))?(?: at (\d\d:\d\d))?(?: in ([^,]+))?(?:, (agreed)|, only if (.+))?$/.exec(
      text,
    );
  const [
    ,
    label,
    kind = '',
    minutes = '',
    over = '0',
    late = '0',
    day,
    time = '10:00',
    place,
    agreed,
    onlyIf,
  ] = match ?? [];
  if (!match || !CALL_KINDS.includes(kind as CallKind)) throw new Error(`not a call: ${text}`);
  const start = local(`${day ?? MONDAY.add({ days: number })}T${time}`, zone);
  const planned = { start, end: start.add({ minutes: Number(minutes) }) };
  const played = {
    start: start.add({ minutes: Number(late) }),
    end: planned.end.add({ minutes: Number(over) }),
  };
  return {
    id: idOf(number),
    kind: kind as CallKind,
    ...(label === undefined ? {} : { label }),
    place: place ?? 'Hall',
    planned,
    standing: standingOf(fall, zone, played, { offered, agreed: agreed !== undefined, onlyIf }),
  };
}

function standingOf(
  fall: Fall | undefined,
  zone: string,
  played: Span,
  said: { offered: boolean; agreed: boolean; onlyIf: string | undefined },
): Standing {
  const by = fall?.by ?? 'payer';
  const reason = fall?.reason ?? 'other';
  if (fall?.at) return { is: 'cancelled', at: local(fall.at, zone), by, reason, wasAgreed: true };
  if (fall) return { is: 'missed', by, reason };
  if (said.onlyIf !== undefined) return { is: 'held', onlyIf: said.onlyIf };
  if (said.offered) return { is: 'held' };
  return said.agreed ? { is: 'agreed' } : { is: 'played', times: played };
}

function readWork(text: string, number: number): WorkFacts {
  const [title = '', ...said] = text.split(', ');
  const find = (form: RegExp) =>
    said.map((part) => form.exec(part)?.[1]).find((found) => found !== undefined);
  const difficulty = find(/^difficulty (.+)$/);
  const pages = find(/^(\d+) pages$/);
  const came = find(/^came (.+)$/);
  return {
    id: `w${number}`,
    title,
    minutes: Number(find(/^(\d+) min$/) ?? 5),
    requested: said.includes('requested'),
    ...(difficulty === undefined ? {} : { difficulty }),
    ...(pages === undefined ? {} : { pages: Number(pages) }),
    ...(came === undefined ? {} : { part: { receivedOn: Temporal.PlainDate.from(came) } }),
    ...(said.includes('wanted') ? { part: { state: 'wanted' } } : {}),
  };
}

function readTerm(text: string, number: number): Season {
  const [, name = '', from = '', to = ''] = /^(.+) (\S+) to (\S+)$/.exec(text) ?? [];
  return {
    id: `t${number}`,
    name,
    from: Temporal.PlainDate.from(from),
    to: Temporal.PlainDate.from(to),
  };
}

function readMove({ call, at, was, by = 'payer' }: NonNullable<Given['moves']>[number], zone: string): Move {
  const start = local(was, zone);
  return { call: idOf(call), at: local(at, zone), by, was: { start, end: start.add({ hours: 1 }) } };
}

function idOf(number: number): string {
  return `c${String(number).padStart(3, '0')}`;
}

function readLeg(text: string, number: number) {
  const [, far = '', unit = '', minutes = '0', day] =
    /^([\d.]+) (km|mile)(?:, (\d+) min)?(?: on (\d{4}-\d\d-\d\d))?$/.exec(text) ?? [];
  return {
    id: `l${number}`,
    on: day === undefined ? MONDAY : Temporal.PlainDate.from(day),
    from: 'Home',
    to: 'Hall',
    distance: granted(distance(far, unit as DistanceUnit)),
    minutes: Number(minutes),
    purpose: 'call',
  };
}

function readCost(text: string, number: number, currency: Currency) {
  const at = text.lastIndexOf(' ');
  const amount = granted(fromDecimal(text.slice(at + 1), currency));
  return { id: `x${number}`, on: MONDAY, what: text.slice(0, at), amount };
}

function local(text: string, zone: string): Temporal.ZonedDateTime {
  return Temporal.PlainDateTime.from(text).toZonedDateTime(zone);
}
