// What can be done next: with an engagement as a whole, and with each of its calls.

import { Temporal } from '@colla/calendar';
import type { Stage } from '@colla/engagements';
import { type Call, inOrder, timesOf } from '@colla/hours';

/** What can be said of a call. */
export type CallMove = 'agree' | 'play' | 'lift' | 'move' | 'cancel' | 'miss' | 'release' | 'reopen';

const OPEN: ReadonlySet<Stage> = new Set(['inquiry', 'quoted', 'agreed']);

/** What a call as it stands allows, the likeliest first; one that is blocked is not played until the block is lifted. */
export function callMoves(
  call: Call,
  stage: Stage,
  now: Temporal.ZonedDateTime,
  blocked = false,
): CallMove[] {
  if (!OPEN.has(stage)) return [];
  const moves = movesOf(call, stage, now);
  return blocked ? moves.map((move) => (move === 'play' ? 'lift' : move)) : moves;
}

function movesOf(call: Call, stage: Stage, now: Temporal.ZonedDateTime): CallMove[] {
  const begun = Temporal.ZonedDateTime.compare(call.planned.start, now) <= 0;
  switch (call.standing.is) {
    case 'held':
      return [...(stage === 'agreed' ? (['agree'] as const) : []), 'move', 'release'];
    case 'agreed':
      return begun ? ['play', 'miss', 'move', 'cancel'] : ['move', 'cancel', 'play'];
    case 'played':
      return ['play', 'reopen'];
    default:
      return ['reopen'];
  }
}

/** The one next step an engagement waits for. */
export type NextMove =
  | { readonly is: 'add a call' }
  | { readonly is: 'quote'; readonly again: boolean }
  | { readonly is: 'agree' }
  | { readonly is: 'play'; readonly call: string }
  | { readonly is: 'invoice'; readonly payer: string }
  | { readonly is: 'record a payment'; readonly invoice: string }
  | { readonly is: 'settle' }
  /** Nothing to do until the next call. */
  | { readonly is: 'wait'; readonly call: string }
  | { readonly is: 'nothing' };

export interface Standing {
  readonly stage: Stage;
  readonly calls: readonly Call[];
  readonly quoteUntil?: Temporal.ZonedDateTime;
  /** What each payer can still be asked for; payers with nothing left are not among them. */
  readonly toInvoice: readonly { readonly payer: string }[];
  /** Invoices not wholly paid, the first due first. */
  readonly owing: readonly { readonly id: string }[];
  /** Calls that wait for money that is due. */
  readonly blocked: readonly string[];
}

export function nextMove(of: Standing, now: Temporal.ZonedDateTime): NextMove {
  switch (of.stage) {
    case 'inquiry':
      return of.calls.length === 0 ? { is: 'add a call' } : { is: 'quote', again: false };
    case 'quoted':
      return of.quoteUntil && Temporal.ZonedDateTime.compare(now, of.quoteUntil) > 0
        ? { is: 'quote', again: true }
        : { is: 'agree' };
    case 'agreed':
      return afterCalls(of, now);
    case 'cancelled':
      return afterMoney(of, 'nothing');
    default:
      return { is: 'nothing' };
  }
}

/** Calls come before money, unless they wait for it: first say how the past ones turned out, then wait for those ahead, then bill. */
function afterCalls(of: Standing, now: Temporal.ZonedDateTime): NextMove {
  const open = inOrder(of.calls).filter(({ standing }) => standing.is === 'agreed');
  const past = open.find((call) => Temporal.ZonedDateTime.compare(timesOf(call).start, now) <= 0);
  const next = past ?? open[0];
  if (next && of.blocked.includes(next.id)) return moneyFirst(of) ?? { is: 'wait', call: next.id };
  if (past) return { is: 'play', call: past.id };
  if (next) return of.owing[0] ? payment(of.owing[0].id) : { is: 'wait', call: next.id };
  return afterMoney(of, 'settle');
}

/** What a call waits for: the money that was asked for, or first to ask for it. */
function moneyFirst({ owing, toInvoice }: Standing): NextMove | undefined {
  if (owing[0]) return payment(owing[0].id);
  return toInvoice[0] && { is: 'invoice', payer: toInvoice[0].payer };
}

function afterMoney(of: Standing, otherwise: 'settle' | 'nothing'): NextMove {
  if (of.toInvoice[0]) return { is: 'invoice', payer: of.toInvoice[0].payer };
  if (of.owing[0]) return payment(of.owing[0].id);
  return { is: otherwise };
}

function payment(invoice: string): NextMove {
  return { is: 'record a payment', invoice };
}
