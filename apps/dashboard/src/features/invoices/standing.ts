// How an invoice stands, in words that need no colour.

import { dayNumber } from '@colla/calendar';
import type { InvoiceJson } from '@colla/wire';
import { invoices as say } from '../../catalogue/invoices.ts';

type Dated = Pick<InvoiceJson, 'is' | 'dueOn'>;

/** “paid”, “due in 5 days”, “overdue by 12 days”, “part paid, due today”. */
export function sayStanding({ is, dueOn }: Dated, today: string): string {
  if (is === 'paid') return say('paid').toLowerCase();
  const rest = sayRest(dayNumber(dueOn) - dayNumber(today));
  return is === 'part paid' ? say('partPaid', { rest }) : rest;
}

function sayRest(days: number): string {
  if (days === 0) return say('dueToday');
  const count = say('days', { count: Math.abs(days) });
  return say(days > 0 ? 'open' : 'overdue', { days: count });
}

/** The class that says the same in colour, beside the words. */
export function standingClass({ is }: Pick<InvoiceJson, 'is'>): string | undefined {
  return { open: undefined, 'part paid': undefined, overdue: 'overdue', paid: 'done' }[is];
}
