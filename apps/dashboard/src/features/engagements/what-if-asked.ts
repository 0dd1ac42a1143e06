// What is asked when somebody asks “what if?”, as it is typed, and read.

import { localTime, Temporal } from '@colla/calendar';
import type { Call, Reason, Who } from '@colla/hours';
import { dueDay } from '@colla/invoicing';
import { currency, fromDecimal } from '@colla/money';
import type { Facts, Statement } from '@colla/rates';
import { granted, refused } from '@colla/refusal';
import type { EngagementWholeJson } from '@colla/wire';
import { clock } from './spans.ts';
import type { Question } from './what-if.ts';

export interface AskedDraft {
  readonly call: string;
  readonly by: Who;
  readonly reason: Reason;
  readonly thenOn: string;
  readonly thenAt: string;
  readonly toOn: string;
  readonly toAt: string;
  /** Days, as typed. */
  readonly scoresLate: string;
  readonly paidLate: string;
}

/** Asked of the next call: said by the payer two days before, moved by a day, music a week late, paid a month late. */
export function startAsking(call: Call): AskedDraft {
  const { start } = call.planned;
  return {
    call: call.id,
    by: 'payer',
    reason: 'other',
    ...dayBefore(start),
    ...dayAfter(start),
    scoresLate: '7',
    paidLate: '30',
  };
}

/** The same asked of another call: the days go with it. */
export function askedOfCall(draft: AskedDraft, { id, planned }: Call): AskedDraft {
  return { ...draft, call: id, ...dayBefore(planned.start), ...dayAfter(planned.start) };
}

function dayBefore(start: Temporal.ZonedDateTime) {
  const then = start.subtract({ days: 2 });
  return { thenOn: then.toPlainDate().toString(), thenAt: clock(then) };
}

function dayAfter(start: Temporal.ZonedDateTime) {
  const to = start.add({ days: 1 });
  return { toOn: to.toPlainDate().toString(), toAt: clock(to) };
}

/** The draft as it is asked; what cannot be read is not asked. */
export function questionOf(draft: AskedDraft, call: Call, debts: Question['debts']): Question {
  const zone = call.planned.start.timeZoneId;
  const instant = (on: string, at: string) => {
    const read = localTime(on, at, zone);
    return refused(read) ? undefined : read;
  };
  const days = (typed: string) => (/^\d{1,4}$/.test(typed.trim()) ? Number(typed) : 0);
  return {
    call,
    by: draft.by,
    reason: draft.reason,
    saidAt: instant(draft.thenOn, draft.thenAt),
    movedTo: instant(draft.toOn, draft.toAt),
    scoresLateDays: days(draft.scoresLate),
    paidLateDays: days(draft.paidLate),
    debts,
  };
}

/** The invoices that are open; before there is one, what the statement asks for, as if it were invoiced today. */
export function debtsOf(
  { invoices }: Pick<EngagementWholeJson, 'invoices'>,
  { facts, statement }: { facts: Facts; statement: Statement },
  today: Temporal.PlainDate,
): Question['debts'] {
  const open = invoices.filter(({ is }) => is !== 'paid');
  if (open.length > 0) {
    return open.map((invoice) => ({
      amount: granted(fromDecimal(invoice.owed, granted(currency(invoice.currency)))),
      dueOn: Temporal.PlainDate.from(invoice.dueOn),
    }));
  }
  if (statement.total <= 0n) return [];
  return [{ amount: statement.total, dueOn: dueDay({ statement, facts, issuedOn: today }) }];
}
