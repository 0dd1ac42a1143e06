// When something is due: the earliest of some days that are named by events.

import { Temporal } from '@colla/calendar';
import { inOrder, principalCall } from '@colla/hours';
import type { Facts } from './facts.ts';
import type { EventDay } from './fields.ts';
import type { Voice } from './voice.ts';

/**
 * The earliest day of `due` whose event has happened or is planned; undefined where none is.
 * `issuedOn` is the day of the invoice, where there is one.
 */
export function dueOn(
  due: readonly EventDay[],
  facts: Facts,
  issuedOn?: Temporal.PlainDate,
): Temporal.PlainDate | undefined {
  const days = due
    .map(({ event, days }) => dayOf(event, facts, issuedOn)?.add({ days }))
    .filter((day) => day !== undefined)
    .sort(Temporal.PlainDate.compare);
  return days[0];
}

function dayOf(
  event: EventDay['event'],
  facts: Facts,
  issuedOn: Temporal.PlainDate | undefined,
): Temporal.PlainDate | undefined {
  const calls = inOrder(facts.calls);
  switch (event) {
    case 'invoice':
      return issuedOn;
    case 'agreement':
      return facts.agreedAt?.toPlainDate();
    case 'first call':
      return calls[0]?.planned.start.toPlainDate();
    case 'principal call':
      return principalCall(calls)?.planned.start.toPlainDate();
    default:
      return calls.find((call) => call.kind === event)?.planned.start.toPlainDate();
  }
}

/** “30 days after the invoice”, “7 days before the principal call or 3 days after the agreement, whichever is earlier”. */
export function sayDue(due: readonly EventDay[], voice: Voice): string {
  const said = voice.either(due.map(({ event, days }) => sayDay(event, days)));
  return due.length > 1 ? `${said}, whichever is earlier` : said;
}

function sayDay(event: EventDay['event'], days: number): string {
  const of =
    event.endsWith(' call') || event === 'invoice' || event === 'agreement'
      ? `the ${event}`
      : `the first ${event}`;
  if (days === 0) return `on the day of ${of}`;
  const count = Math.abs(days) === 1 ? '1 day' : `${Math.abs(days)} days`;
  return `${count} ${days > 0 ? 'after' : 'before'} ${of}`;
}
