// An engagement as it came over the wire, read back into the facts that a statement is made from, so that the
// screen can ask the very function the server asks.

import { readDay, readInstant } from '@colla/calendar';
import type { Call, Standing } from '@colla/hours';
import { currency, fromDecimal } from '@colla/money';
import type { DepositDue, Facts, Move, SoloistFacts, Term, WorkFacts } from '@colla/rates';
import { granted } from '@colla/refusal';
import { distance } from '@colla/travel';
import type {
  AgreementJson,
  CallJson,
  DepositJson,
  EngagementJson,
  OrganisationJson,
  WorkJson,
} from '@colla/wire';

/** What the place of the practice adds to the facts: until something is agreed, as it is entered today. */
export type House = Pick<OrganisationJson, 'holidays' | 'terms'>;

/**
 * The facts of an engagement. Until it is agreed, calls kept free are priced as offered; once it is, holidays and terms
 * are those of that day.
 */
export function factsOf(engagement: EngagementJson, house: House): Facts {
  const { sharers, circumstances, pianistClass, agreement, rolledOver, soFar } = engagement;
  const { holidays, terms } = agreement ?? house;
  return {
    calls: engagement.calls.map(callOf),
    programme: engagement.programme.map(workOf),
    legs: engagement.legs.map((leg) => ({
      ...leg,
      on: granted(readDay(leg.on)),
      distance: granted(distance(leg.distance, leg.unit)),
    })),
    costs: engagement.costs.map((cost) => ({
      ...cost,
      on: granted(readDay(cost.on)),
      amount: granted(fromDecimal(cost.amount, granted(currency(engagement.currency)))),
    })),
    soloist: soloistOf(engagement),
    sharers,
    ...(pianistClass === undefined ? {} : { pianistClass }),
    circumstances,
    offered: agreement === undefined,
    askedAt: granted(readInstant(engagement.askedAt)),
    ...(agreement ? agreedIn(agreement) : {}),
    holidays: new Set(holidays),
    terms: terms.map(termOf),
    moves: engagement.moves.map(moveOf),
    ...(soFar === undefined ? {} : { soFar }),
    rolledOver,
  };
}

function agreedIn({
  agreedAt,
  calls,
  deposit,
  tariff,
}: AgreementJson): Pick<Facts, 'agreedAt' | 'agreedCalls' | 'agreedDeposit'> {
  return {
    agreedAt: granted(readInstant(agreedAt)),
    ...(deposit ? { agreedDeposit: depositOf(deposit, tariff.currency) } : {}),
    agreedCalls: calls.map(({ id, kind, label, start, end }) => ({
      id,
      kind,
      ...(label === undefined ? {} : { label }),
      planned: { start: granted(readInstant(start)), end: granted(readInstant(end)) },
    })),
  };
}

function depositOf({ refundable, ...of }: DepositJson, code: string): DepositDue {
  const amount = granted(fromDecimal(of.amount, granted(currency(code))));
  return { ...of, amount, ...(refundable ? { refundable } : {}) };
}

function soloistOf({ soloist: { level, instrument, study, membership } }: EngagementJson): SoloistFacts {
  return {
    ...(level === undefined ? {} : { level }),
    ...(instrument === undefined ? {} : { instrument }),
    ...(study === undefined ? {} : { study }),
    ...(membership === undefined ? {} : { membership }),
  };
}

function termOf({ name, from, to }: House['terms'][number]): Term {
  return { name, from: granted(readDay(from)), to: granted(readDay(to)) };
}

function moveOf({ call, start, end, at, by }: EngagementJson['moves'][number]): Move {
  const was = { start: granted(readInstant(start)), end: granted(readInstant(end)) };
  return { call, was, at: granted(readInstant(at)), by };
}

/** One work; whether its part came in time is a fact, and so the day on which it came. */
function workOf({ part: { state, receivedOn }, difficulty, pages, ...work }: WorkJson): WorkFacts {
  const came = receivedOn === undefined ? {} : { receivedOn: granted(readDay(receivedOn)) };
  return {
    ...work,
    ...(difficulty === undefined ? {} : { difficulty }),
    ...(pages === undefined ? {} : { pages }),
    part: { state, ...came },
  };
}

/** One call. Its `start` and `end` on the wire are the planned ones; real times stand in its standing. */
export function callOf(call: CallJson): Call {
  return {
    id: call.id,
    kind: call.kind,
    ...(call.label === undefined ? {} : { label: call.label }),
    place: call.place,
    planned: { start: granted(readInstant(call.start)), end: granted(readInstant(call.end)) },
    standing: standingOf(call.standing),
  };
}

function standingOf(standing: CallJson['standing']): Standing {
  switch (standing.is) {
    case 'held':
      return { is: 'held', ...holdOf(standing) };
    case 'played':
      return {
        is: 'played',
        times: { start: granted(readInstant(standing.start)), end: granted(readInstant(standing.end)) },
      };
    case 'cancelled': {
      const { is, by, reason, wasAgreed } = standing;
      return { is, by, reason, wasAgreed, at: granted(readInstant(standing.at)), ...holdOf(standing) };
    }
    default:
      return standing;
  }
}

/** How a call is kept free, or was before it fell. */
function holdOf({ lapsesAt, onlyIf }: { lapsesAt?: string | undefined; onlyIf?: string | undefined }) {
  return {
    ...(lapsesAt === undefined ? {} : { lapsesAt: granted(readInstant(lapsesAt)) }),
    ...(onlyIf === undefined ? {} : { onlyIf }),
  };
}
