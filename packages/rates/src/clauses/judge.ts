// How a fallen call is judged: forgiven, or by the notice that was given of it or of the whole.

import { Temporal } from '@colla/calendar';
import type { Call } from '@colla/hours';
import type { Desk } from '../desk.ts';
import type { ClauseHead } from '../kind.ts';
import type { Owes, Verdict } from '../verdict.ts';
import { type Excuse, forgiving } from './excuse.ts';
import { owedAt, plainly, type Scale, sayNotice } from './scale.ts';

/** By which scale, of what, and what is forgiven. */
interface Judgement extends Scale {
  readonly of: 'call' | 'engagement';
  readonly excused?: Excuse | undefined;
}

/** Judges every fallen call this clause is closest to. */
export function judge(terms: Judgement, desk: Desk, clause: ClauseHead): void {
  const principal = terms.of === 'engagement' ? fallenPrincipal(desk) : undefined;
  const forgives = forgiving(terms.excused, desk.facts);
  for (const item of desk.fallen(clause)) item.verdict = verdictOn(item.call);

  function verdictOn(call: Call): Verdict | undefined {
    const { standing } = call;
    if (standing.is !== 'cancelled' && standing.is !== 'missed') return undefined;
    if (standing.by === 'pianist') return pardoned('the pianist’s own absence', call);
    if (forgives(call)) return pardoned(`forgiven: ${standing.reason}`, call);
    if (standing.is === 'missed')
      return verdict(plainly(terms.noShow ?? terms.otherwise), 'no word came', call);
    return byNotice(call, standing.at);
  }

  function pardoned(why: string, call: Call): Verdict {
    return { ...verdict({ owes: 'nothing' }, why, call), pardoned: true };
  }

  function byNotice(call: Call, at: Temporal.ZonedDateTime): Verdict {
    const whole = principal && Temporal.ZonedDateTime.compare(at, principal.at) >= 0 ? principal : undefined;
    const { kind, start } = whole ?? { kind: call.kind, start: call.planned.start };
    const word = whole?.at ?? at;
    const owes = owedAt(terms, word, start, desk.facts.holidays);
    const why = `cancelled ${sayNotice(terms.clock, word, { kind, start }, desk.voice)}`;
    return verdict(owes, why, call, whole ? 'engagement' : undefined);
  }

  function verdict(owes: Owes, why: string, call: Call, together?: string): Verdict {
    const one = together ?? (owes.owes === 'deposit' ? 'deposit' : call.id);
    return { clause, terms: owes, why, together: one };
  }
}

/**
 * The call everything leads up to, where it is itself cancelled: whatever falls by that word or after it is
 * reckoned with it, by its notice.
 */
function fallenPrincipal(
  desk: Desk,
): { kind: Call['kind']; start: Temporal.ZonedDateTime; at: Temporal.ZonedDateTime } | undefined {
  const call = desk.principal();
  if (call?.standing.is !== 'cancelled') return undefined;
  return { kind: call.kind, start: call.planned.start, at: call.standing.at };
}
