// The words of an entitlement's own statement: what was granted, what each call drew, what became of the rest.

import type { Desk } from '../desk.ts';
import type { Draw, Grant } from '../findings.ts';
import type { Each } from '../occasion.ts';
import { capital } from '../phrases.ts';
import type { Voice } from '../voice.ts';
import { type Drawing, isToCome, type Taken } from './drawing.ts';

/** As far as its words depend on them. */
interface Terms {
  readonly minutes?: number | undefined;
  readonly calls?: number | undefined;
  readonly inARow?: number | undefined;
  readonly each: Each;
  readonly lost: string | undefined;
}

/** One occasion of an entitlement as a statement says it. */
export function sayGrant(drawing: Drawing, terms: Terms, { voice }: Pick<Desk, 'voice'>): Grant {
  const { about, taken, ...figures } = drawing;
  const name = about === undefined || terms.each === 'call' ? undefined : nameOf(about, terms.each, voice);
  const drawn = taken.filter(({ why }) => why === undefined);
  return {
    ...(name === undefined ? {} : { name }),
    ...figures,
    draws: drawn.map((one, index) => drawOf(one, sayDraw(one, index + 1, terms, voice))),
    missed: taken
      .filter(({ why }) => why !== undefined)
      .map((one) => drawOf(one, sayMissed(one, terms, voice))),
    begins: sayBegins(drawing, name, terms, voice),
    ends: sayEnds(drawing, drawn.length, terms, voice),
  };
}

/** “the week of 2 March 2026”, “March 2026”, “spring”. */
function nameOf(about: string, each: Each, voice: Voice): string {
  if (each === 'week') return `the week of ${voice.day(about)}`;
  if (each === 'month') return voice.day(`${about}-01`).replace(/\b1,? /, '');
  return each === 'day' ? voice.day(about) : about;
}

/** Where only calls are granted, no time is left or lacking. */
function drawOf({ call, minutes, left }: Taken, says: string): Draw {
  return { call: call.id, minutes, left: Number.isFinite(left) ? left : 0, says };
}

function sayBegins(
  { brought, granted }: Drawing,
  name: string | undefined,
  terms: Terms,
  voice: Voice,
): string {
  const what = [
    ...(terms.minutes === undefined ? [] : [voice.minutes(granted)]),
    ...(terms.calls === undefined ? [] : [sayCount(terms.calls)]),
  ].join(', for at most ');
  const more = brought > 0 ? `, and ${voice.minutes(brought)} brought over` : '';
  return `Granted${sayFor(name, terms)}: ${what}${more}.`;
}

function sayFor(name: string | undefined, { each }: Terms): string {
  if (each === 'call') return ' for the call';
  return name === undefined ? '' : ` for ${name}`;
}

function sayCount(calls: number): string {
  return calls === 1 ? '1 call' : `${calls} calls`;
}

function sayDraw(one: Taken, place: number, { minutes, calls }: Terms, voice: Voice): string {
  const took =
    one.minutes < one.needed
      ? `${voice.minutes(one.minutes)} of its ${voice.minutes(one.needed)}`
      : voice.minutes(one.minutes);
  const left =
    minutes === undefined ? '' : `, which leaves ${one.left === 0 ? 'nothing' : voice.minutes(one.left)}`;
  const counted = calls === undefined ? '' : ` (call ${place} of ${calls})`;
  const beyond = one.minutes < one.needed ? `; beyond it: ${voice.minutes(one.needed - one.minutes)}` : '';
  const draws = isToCome(one.call) ? 'is to draw' : 'draws';
  return `${callOf(one, voice)} ${draws} ${took}${counted}${left}${beyond}.`;
}

function sayMissed(one: Taken, { calls, inARow = 0 }: Terms, voice: Voice): string {
  const why = {
    'nothing left': 'nothing is left',
    'no call left': calls === 1 ? 'the one call is drawn' : `the ${calls} calls are drawn`,
    'too many in a row': `no more than ${sayCount(inARow)} without a pause`,
  }[one.why ?? 'nothing left'];
  return `${callOf(one, voice)} draws nothing: ${why}; beyond it: ${voice.minutes(one.needed)}.`;
}

function callOf({ call }: Taken, voice: Voice): string {
  const { label, kind, planned } = call;
  return `${capital(label ?? kind)} on ${voice.day(planned.start.toPlainDate().toString())}`;
}

/** What became of what no call drew; nothing said where all was drawn. */
function sayEnds({ left, lapsed, passedOn }: Drawing, drawn: number, terms: Terms, voice: Voice): string {
  const { each, lost, calls } = terms;
  if (lost !== undefined) return `Lost${lapsed > 0 ? `: ${voice.minutes(lapsed)}` : ''} (${lost}).`;
  if (passedOn > 0) return `Brought over to the next ${each}: ${voice.minutes(passedOn)}.`;
  if (lapsed > 0) return `Lapsed with the ${each}: ${voice.minutes(lapsed)}.`;
  const calling = calls !== undefined && calls > drawn ? [sayCount(calls - drawn)] : [];
  const rest = [...(left > 0 ? [voice.minutes(left)] : []), ...calling];
  return rest.length > 0 ? `Left: ${rest.join(', for at most ')}.` : '';
}
