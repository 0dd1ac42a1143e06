// When something is due: the earliest of some days that are named by events.

import { Temporal } from '@colla/calendar';
import { inOrder, principalCall } from '@colla/hours';
import type { Facts } from './facts.ts';
import type { EventDay } from './fields.ts';
import { termOf } from './term.ts';
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
    .map((due) => dueBy(due, facts, issuedOn))
    .filter((day) => day !== undefined)
    .sort(Temporal.PlainDate.compare);
  return days[0];
}

function dueBy(due: EventDay, facts: Facts, issuedOn?: Temporal.PlainDate): Temporal.PlainDate | undefined {
  const day = dayOf(due, facts, issuedOn)?.add({ days: due.days });
  return due.monthEnd ? day?.with({ day: day.daysInMonth }) : day;
}

function dayOf(
  { event, named }: EventDay,
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
    case 'call named':
      return calls.find(({ label }) => label === named)?.planned.start.toPlainDate();
    case 'start of the term':
      return calls[0] && termOf(calls[0], facts)?.from;
    default:
      return calls.find((call) => call.kind === event)?.planned.start.toPlainDate();
  }
}

/** “30 days after the invoice”, “7 days before the principal call or 3 days after the agreement, whichever is earlier”. */
export function sayDue(due: readonly EventDay[], voice: Voice): string {
  const said = voice.either(due.map(sayDay));
  return due.length > 1 ? `${said}, whichever is earlier` : said;
}

function sayDay({ event, days, named, monthEnd }: EventDay): string {
  const of = event === 'call named' ? `“${named ?? ''}”` : sayEvent(event);
  if (days === 0) return monthEnd ? `at the end of the month of ${of}` : `on the day of ${of}`;
  const count = Math.abs(days) === 1 ? '1 day' : `${Math.abs(days)} days`;
  const day = `${count} ${days > 0 ? 'after' : 'before'} ${of}`;
  return monthEnd ? `at the end of the month that is reached ${day}` : day;
}

export function sayEvent(event: EventDay['event']): string {
  const oneOnly = event === 'invoice' || event === 'agreement' || event === 'start of the term';
  return oneOnly || event.endsWith(' call') ? `the ${event}` : `the first ${event}`;
}
