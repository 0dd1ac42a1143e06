// From what was asked to what became of it: one engagement, through the moves of the domain and no other way.

import type { Temporal } from '@colla/calendar';
import {
  addCall,
  agree,
  agreeCall,
  cancel,
  cancelCall,
  changeCall,
  decline,
  type Engagement,
  lapse,
  missCall,
  type Party,
  playCall,
  quote,
  type Work,
} from '@colla/engagements';
import { principalCall } from '@colla/hours';
import { fromDecimal } from '@colla/money';
import type { Cost, Tariff, Term } from '@colla/rates';
import { granted } from '@colla/refusal';
import { distance, type Leg } from '@colla/travel';
import { type CastName, EURO } from './cast.ts';
import type { Clock } from './clock.ts';
import type { TariffName } from './tariffs.ts';
import type { Told, ToldCall, ToldCost, ToldLeg, ToldWork } from './told.ts';

/** What the telling stands on: ids, the clock, the cast and the tariffs. */
export interface Stage {
  readonly newId: () => string;
  readonly clock: Clock;
  readonly locale: string;
  readonly holidays: readonly string[];
  readonly terms: readonly Term[];
  readonly parties: Readonly<Record<CastName, Party>>;
  readonly tariffs: Readonly<Record<TariffName, readonly [Tariff, ...Tariff[]]>>;
}

/** The engagement as it stands before money moves: asked, quoted, agreed, played or fallen. */
export function engage(told: Told, stage: Stage): Engagement {
  const asked = inquire(told, stage);
  const { is } = told.ends;
  if (is === 'inquiry') return asked;
  const quoted = offer(asked, told, stage);
  const { quotedAt, validUntil } = quoted.quote;
  if (is === 'quoted') return quoted;
  if (is === 'declined') return granted(decline(quoted, quotedAt.add({ days: 4 })));
  if (is === 'lapsed') return granted(lapse(quoted, validUntil.add({ days: 1 })));
  const agreed = granted(
    agree(quoted, {
      id: stage.newId(),
      at: quotedAt.add({ days: 2 }),
      acceptedBy: told.acceptedBy ?? payerName(told, stage),
      locale: stage.locale,
      holidays: stage.holidays,
      terms: stage.terms,
    }),
  );
  return becomeOf(agreed, told, stage.clock);
}

function inquire(told: Told, { newId, clock, parties }: Stage): Engagement {
  const { soloist, institution, note } = told;
  const asked: Engagement = {
    stage: 'inquiry',
    id: newId(),
    title: told.title,
    currency: EURO,
    ...(soloist ? { soloistParty: parties[soloist].id } : {}),
    ...(institution ? { institutionParty: parties[institution].id } : {}),
    payers: Object.fromEntries(Object.entries(told.payers).map(([role, name]) => [role, parties[name].id])),
    calls: [],
    programme: (told.programme ?? []).map((work) => workOf(work, newId(), clock)),
    legs: (told.legs ?? []).map((leg) => legOf(leg, newId(), clock)),
    costs: (told.costs ?? []).map((cost) => costOf(cost, newId(), clock)),
    moves: [],
    rolledOver: {},
    soloist: told.about ?? {},
    sharers: told.sharers ?? 1,
    circumstances: told.circumstances ?? [],
    ...(note === undefined ? {} : { note }),
    askedAt: clock.at([told.asked, 'mon'], '09:40'),
  };
  return told.calls
    .filter((call) => !call.afterInvoices)
    .reduce<Engagement>((engagement, call) => ask(engagement, call, newId(), clock), asked);
}

function ask(engagement: Engagement, call: ToldCall, id: string, clock: Clock): Engagement {
  const { kind, label, place, onlyIf } = call;
  const planned = clock.span({ ...call, on: call.moved?.was ?? call.on });
  return granted(
    addCall(engagement, {
      id,
      kind,
      ...(label === undefined ? {} : { label }),
      place,
      planned,
      ...(onlyIf === undefined ? {} : { held: { onlyIf, lapsesAt: planned.start.subtract({ hours: 4 }) } }),
    }),
  );
}

/** The version in force on the day of the quote is the one that is offered. */
function offer(asked: Engagement, { tariff, choices = {} }: Told, { tariffs }: Stage) {
  const at = asked.askedAt.add({ days: 1, hours: 8 });
  const begun = ({ from }: Tariff) => from.until(at.toPlainDate()).sign >= 0;
  const version = tariffs[tariff].findLast(begun) ?? tariffs[tariff][0];
  return granted(quote(asked, { tariff: version, choices, at, validUntil: at.add({ days: 21 }) }));
}

function payerName({ payers }: Told, { parties }: Stage): string {
  const first = Object.values(payers)[0];
  return first ? parties[first].name : '';
}

/** What became of an agreement: calls happen until now, or until the whole is called off. */
function becomeOf(agreed: Engagement, told: Told, clock: Clock): Engagement {
  const principal = principalCall(agreed.calls);
  if (told.ends.is !== 'cancelled' || principal === undefined) return happen(agreed, told.calls, clock);
  const { hoursBefore, by, reason } = told.ends;
  const at = principal.planned.start.subtract({ hours: hoursBefore });
  const isPast = (instant: Temporal.ZonedDateTime) => clock.isPast(instant) && instant.until(at).sign >= 0;
  return granted(cancel(happen(agreed, told.calls, { ...clock, isPast }), { at, by, reason }));
}

/** Calls whose time is past are played, missed or called off, each as told. */
function happen(engagement: Engagement, told: readonly ToldCall[], clock: Clock): Engagement {
  const asked = told.filter((call) => !call.afterInvoices);
  return asked.reduce((so, call, index) => {
    const id = so.calls[index]?.id;
    return id === undefined ? so : befall(so, id, call, clock);
  }, engagement);
}

function befall(asked: Engagement, id: string, told: ToldCall, clock: Clock): Engagement {
  const { start, end } = clock.span(told);
  const { falls, over = 0 } = told;
  const engagement = moved(asked, id, told, clock);
  if (falls?.hoursBefore !== undefined) {
    const { by, reason, hoursBefore } = falls;
    return granted(cancelCall(engagement, id, { by, reason, at: start.subtract({ hours: hoursBefore }) }));
  }
  if (told.onlyIf !== undefined || !clock.isPast(end.add({ minutes: over }))) return engagement;
  if (falls) return granted(missCall(engagement, id, { by: falls.by, reason: falls.reason }, clock.now));
  return granted(playCall(engagement, id, { start, end: end.add({ minutes: over }) }, clock.now));
}

/** A call is moved once word of it has come. */
function moved(engagement: Engagement, id: string, told: ToldCall, clock: Clock): Engagement {
  if (!told.moved) return engagement;
  const { was, by, hoursBefore } = told.moved;
  const at = clock.span({ ...told, on: was }).start.subtract({ hours: hoursBefore });
  if (!clock.isPast(at)) return engagement;
  return granted(changeCall(engagement, id, { planned: clock.span(told) }, { at, by }));
}

/** Adds the calls that came after the invoices, agrees them, and lets them happen. */
export function engageFurther(engagement: Engagement, told: Told, { newId, clock }: Stage): Engagement {
  return told.calls
    .filter((call) => call.afterInvoices)
    .reduce((so, call) => {
      const id = newId();
      return befall(granted(agreeCall(ask(so, call, id, clock), id, clock.now)), id, call, clock);
    }, engagement);
}

function workOf(told: ToldWork, id: string, clock: Clock): Work {
  const { composer, title, minutes, requested = false, difficulty, pages, ...part } = told;
  const { state, permission = 'not asked', received, ...kept } = part;
  const receivedOn: { receivedOn?: Temporal.PlainDate } = received ? { receivedOn: clock.day(received) } : {};
  return {
    ...{ id, composer, title, minutes, requested },
    ...(difficulty === undefined ? {} : { difficulty }),
    ...(pages === undefined ? {} : { pages }),
    part: { ...kept, state, permission, ...receivedOn },
  };
}

function legOf({ on, from, to, km, minutes, purpose }: ToldLeg, id: string, clock: Clock): Leg {
  return { id, on: clock.day(on), from, to, distance: granted(distance(km, 'km')), minutes, purpose };
}

function costOf({ on, what, amount }: ToldCost, id: string, clock: Clock): Cost {
  return { id, on: clock.day(on), what, amount: granted(fromDecimal(amount, EURO)) };
}
