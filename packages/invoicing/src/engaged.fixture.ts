// An agreed engagement for the tests of this room: who keeps the books, who pays, and calls an hour long.

import { Temporal as T, type Temporal, zone } from '@colla/calendar';
import {
  type Agreed,
  addCall,
  agree,
  type Engagement,
  type Inquiry,
  type Organisation,
  type Party,
  quote,
  statementUnder,
} from '@colla/engagements';
import { type CallKind, timesOf } from '@colla/hours';
import { currency } from '@colla/money';
import { readTariff, type Statement, type WrittenClause } from '@colla/rates';
import { granted } from '@colla/refusal';

export const POUND = granted(currency('GBP'));

export const organisation: Organisation = {
  id: 'o1',
  name: 'Ilka Torvane, piano',
  address: ['9 Capstan Yard', 'Quaymarrow'],
  taxNumber: 'EXAMPLE 1',
  payTo: ['Quaymarrow Savings Bank'],
  currency: POUND,
  zone: granted(zone('Europe/London')),
  locale: 'en-GB',
  paper: 'A4',
  weeklyLimit: 600,
  holidays: [],
  terms: [],
};

export const mara: Party = {
  id: 'p1',
  name: 'Mara Lindqvar',
  address: ['30 Weir Street'],
  reference: 'Order 7',
};
export const school: Party = { id: 'p2', name: 'Harbour Road School', address: ['3 Harbour Road'] };

/** An instant of 2026 in London, such as `02-03T10:00`. */
export function at(text: string): Temporal.ZonedDateTime {
  return T.ZonedDateTime.from(`2026-${text}[Europe/London]`);
}

/** When everything told here has taken place. */
export const AFTERWARDS = at('12-31T12:00');

export function day(text: string): Temporal.PlainDate {
  return T.PlainDate.from(`2026-${text}`);
}

/** Sixty an hour to the minute, and what a call that falls late costs. */
export const BY_THE_HOUR: readonly WrittenClause[] = [
  { id: 'time', kind: 'hourly', terms: { price: '60.00', increment: 1 } },
  {
    id: 'notice',
    kind: 'cancellation',
    terms: { scale: [{ before: 48, owes: { owes: 'nothing' } }], otherwise: { owes: 'share', share: 5000 } },
  },
];

/** One call of an hour: its id, kind, and when it begins in 2026. */
export type Told = readonly [id: string, kind: CallKind, start: string, label?: string];

/** Asked, quoted and agreed in January under the clauses given. */
export function engaged(
  clauses: readonly WrittenClause[],
  calls: readonly Told[],
  but: Partial<Inquiry> = {},
): Agreed {
  const tariff = granted(
    readTariff({ name: 'Terms', currency: but.currency ?? 'GBP', version: 1, from: '2026-01-01', clauses }),
  );
  const asked: Inquiry = {
    stage: 'inquiry',
    id: 'e1',
    title: 'Winter audition',
    currency: POUND,
    payers: { payer: 'p1' },
    calls: [],
    programme: [],
    legs: [],
    costs: [],
    moves: [],
    rolledOver: {},
    soloist: {},
    sharers: 1,
    circumstances: [],
    askedAt: at('01-02T09:00'),
    ...but,
  };
  const full = calls.reduce<Engagement>((so, told) => further(so, told), asked);
  const quoted = granted(
    quote(full, { tariff, choices: {}, at: at('01-03T09:00'), validUntil: at('01-20T09:00') }),
  );
  return granted(
    agree(quoted, {
      id: 'a1',
      at: at('01-05T09:00'),
      acceptedBy: 'Mara',
      locale: 'en-GB',
      holidays: [],
      terms: [],
    }),
  );
}

/** The engagement with one call more, kept free. */
export function further(engagement: Engagement, [id, kind, start, label]: Told): Engagement {
  const planned = { start: at(start), end: at(start).add({ hours: 1 }) };
  return granted(addCall(engagement, { id, kind, ...(label ? { label } : {}), place: 'Hall', planned }));
}

/** What it comes to when everything has happened. */
export function statementOfAll(engagement: Engagement): Statement {
  if (!('agreement' in engagement)) throw new Error('nothing is agreed');
  return statementUnder(engagement, engagement.agreement, AFTERWARDS, organisation);
}

/** The times of a call, ending so many minutes after it began. */
export function lasting(engagement: Engagement, id: string, minutes: number) {
  const call = engagement.calls.find((call) => call.id === id);
  if (!call) throw new Error(`no call ${id}`);
  const { start } = timesOf(call);
  return { start, end: start.add({ minutes }) };
}
