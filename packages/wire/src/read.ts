// What was sent, once its schema has read it, as domain values; or the refusal that points at the field.

import { localTime, readDay, type Season, type Span, season, span, type Temporal } from '@colla/calendar';
import type { addCall, CallChange, Work } from '@colla/engagements';
import type { Reason, Who } from '@colla/hours';
import { type Currency, fromDecimal } from '@colla/money';
import type { Cost, Term } from '@colla/rates';
import { type OrRefusal, refused } from '@colla/refusal';
import { distance, type Leg } from '@colla/travel';
import type { z } from 'zod';
import type {
  callChange,
  callInput,
  costInput,
  legInput,
  MomentInput,
  movedInput,
  spanInput,
  wordInput,
  workInput,
} from './engagements.ts';
import type { TermJson } from './organisations.ts';
import type { seasonInput } from './seasons.ts';

/** Reads every item of a list; the refusal of the first that cannot be read points at it below `pointer`. */
export function readEach<Item, Read>(
  items: readonly Item[],
  pointer: string,
  read: (item: Item, index: number) => OrRefusal<Read>,
): OrRefusal<Read[]> {
  const all: Read[] = [];
  for (const [index, item] of items.entries()) {
    const one = read(item, index);
    if (refused(one)) return one.at(`${pointer}/${index}`);
    all.push(one);
  }
  return all;
}

/** A call as it is asked for: kept free until it is agreed. */
export function readCall(
  { kind, label, place, planned, onlyIf, lapsesAt }: z.output<typeof callInput>,
  id: string,
): OrRefusal<Parameters<typeof addCall>[1]> {
  const times = readSpan(planned);
  if (refused(times)) return times.at('/planned');
  const lapses = lapsesAt && readMoment(lapsesAt);
  if (refused(lapses)) return lapses.at('/lapsesAt');
  return {
    id,
    kind,
    ...present({ label }),
    place,
    planned: times,
    held: present({ onlyIf, lapsesAt: lapses }),
  };
}

export function readSpan(of: z.output<typeof spanInput>): OrRefusal<Span> {
  return span(of);
}

/** What becomes of a call; `null` takes a name or the end of a hold away. */
export function readCallChange({
  planned,
  lapsesAt,
  moved: _,
  ...named
}: z.output<typeof callChange>): OrRefusal<CallChange> {
  const times = planned && readSpan(planned);
  if (refused(times)) return times.at('/planned');
  const lapses = lapsesAt && readMoment(lapsesAt);
  if (refused(lapses)) return lapses.at('/lapsesAt');
  return present({ ...named, planned: times, lapsesAt: lapses });
}

/** The word by which a call moves: when it came, and whose wish it was. */
export function readMoved(
  of: z.output<typeof movedInput>,
): OrRefusal<{ at: Temporal.ZonedDateTime; by: Who }> {
  const at = readMoment(of);
  return refused(at) ? at : { at, by: of.by };
}

/** The moment word came, who let it fall, and why. */
export function readWord(
  of: z.output<typeof wordInput>,
): OrRefusal<{ at: Temporal.ZonedDateTime; by: Who; reason: Reason }> {
  const at = readMoment(of);
  return refused(at) ? at : { at, by: of.by, reason: of.reason };
}

/** A moment as a person writes it, by the clocks of the place. */
export function readMoment({ on, at, zone }: MomentInput): OrRefusal<Temporal.ZonedDateTime> {
  const moment = localTime(on, at, zone);
  if (!refused(moment)) return moment;
  const fields: Record<string, string> = { 'calendar/unknown-zone': '/zone', 'calendar/no-such-day': '/on' };
  return moment.at(fields[moment.code] ?? '/at');
}

/** A work of the programme. A part of which nothing is said is wanted, and its permission not asked. */
export function readWork(
  { composer, title, minutes, requested, difficulty, pages, part }: z.output<typeof workInput>,
  id: string,
): OrRefusal<Work> {
  const receivedOn = part.receivedOn === undefined ? undefined : readDay(part.receivedOn);
  if (refused(receivedOn)) return receivedOn.at('/part/receivedOn');
  const { edition, key, cuts, state = 'wanted', permission = 'not asked' } = part;
  const kept = { ...present({ edition, key, cuts, receivedOn }), state, permission };
  return { id, composer, title, minutes, requested, ...present({ difficulty, pages }), part: kept };
}

export function readLeg(of: z.output<typeof legInput>, id: string): OrRefusal<Leg> {
  const on = readDay(of.on);
  if (refused(on)) return on.at('/on');
  const far = distance(of.distance, of.unit);
  if (refused(far)) return far.at('/distance');
  const { from, to, minutes, purpose } = of;
  return { id, on, from, to, distance: far, minutes, purpose };
}

export function readCost(
  of: z.output<typeof costInput>,
  { id, currency }: { id: string; currency: Currency },
): OrRefusal<Cost> {
  const on = readDay(of.on);
  if (refused(on)) return on.at('/on');
  const amount = fromDecimal(of.amount, currency);
  return refused(amount) ? amount.at('/amount') : { id, on, what: of.what, amount };
}

export function readSeason(of: z.output<typeof seasonInput>, id: string): OrRefusal<Season> {
  const days = readTerm(of);
  return refused(days) ? days : season({ id, ...days });
}

/** A name and its first and last day. */
export function readTerm({ name, from, to }: TermJson): OrRefusal<Term> {
  const first = readDay(from);
  if (refused(first)) return first.at('/from');
  const last = readDay(to);
  return refused(last) ? last.at('/to') : { name, from: first, to: last };
}

/** The same without what is undefined: the domain leaves out what is not there. */
export function present<Of extends object>(of: Of): Present<Of> {
  return without(of, (_, value) => value === undefined) as Present<Of>;
}
type Present<Of> = {
  [Key in keyof Of as undefined extends Of[Key] ? Key : never]?: Exclude<Of[Key], undefined>;
} & { [Key in keyof Of as undefined extends Of[Key] ? never : Key]: Of[Key] };

/** The same without the keys that `gone` names. */
export function without<Of extends object>(of: Of, gone: (key: keyof Of, value: unknown) => boolean): Of {
  const kept = Object.entries(of).filter(([key, value]) => !gone(key as keyof Of, value));
  return Object.fromEntries(kept) as Of;
}
