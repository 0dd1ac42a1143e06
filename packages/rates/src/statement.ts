// A statement: what an engagement costs at an instant under its tariff, and why. The one function that prices
// a quote, a bill, a cancellation and a “what if”.

import { Temporal, whenOf } from '@colla/calendar';
import type { Call } from '@colla/hours';
import type { Currency } from '@colla/money';
import { Desk } from './desk.ts';
import type { Facts, WorkFacts } from './facts.ts';
import type { DepositDue, Drawn, LatePart, LineToOther, PaymentDue, TaxSum } from './findings.ts';
import type { Line } from './line.ts';
import { planOf, type Step } from './plan.ts';
import type { Tariff } from './tariff.ts';
import { voice } from './voice.ts';
import { type Chosen, choose } from './ways.ts';

/** What one payer owes. `total` is what they pay: `net` and the taxes. Minor units. */
export interface PayerSum {
  readonly payer: string;
  readonly net: bigint;
  readonly tax: bigint;
  readonly total: bigint;
}

/** A fallen call, and how it was judged. */
export interface Fallen {
  readonly call: string;
  readonly clause: string;
  readonly owes: string;
  readonly why: string;
}

/** Amounts are minor units of `currency`. `total` is `net` and the taxes, over all payers. */
export interface Statement {
  readonly currency: Currency;
  readonly asOf: Temporal.ZonedDateTime;
  readonly tariff: { readonly name: string; readonly version: number };
  readonly lines: readonly Line[];
  /** What the payers owe to others than the pianist; in none of the sums here. */
  readonly toOthers: readonly LineToOther[];
  readonly taxes: readonly TaxSum[];
  readonly payers: readonly PayerSum[];
  readonly net: bigint;
  readonly tax: bigint;
  readonly total: bigint;
  readonly deposit?: DepositDue;
  readonly payment?: PaymentDue;
  readonly entitlements: readonly Drawn[];
  readonly fallen: readonly Fallen[];
  /** Parts that came late, and what follows from it. */
  readonly late: readonly LatePart[];
  /** Calls that no clause prices, or that fell and no clause judges: the tariff has a gap a person must close. */
  readonly unpriced: readonly string[];
  /** What would be owed in all if the payer cancelled at `asOf` everything agreed and not begun. */
  readonly ifCancelled?: { readonly total: bigint; readonly lines: readonly Line[] };
}

/** What a statement is made under: the tariff (as an agreement froze it), and the reader's locale. */
export interface Terms {
  readonly tariff: Tariff;
  readonly locale: string;
}

/**
 * What the engagement costs at `asOf`. Pure: the same facts, terms and instant give the same statement, in
 * whatever order the facts were entered.
 */
export function statement(given: Facts, terms: Terms, asOf: Temporal.ZonedDateTime): Statement {
  const facts = inOrder(given);
  const isAgreed = (facts.agreedAt ?? facts.agreedCalls) !== undefined || facts.calls.some(hasTurnedOut);
  const now = price(facts, terms, asOf, isAgreed ? depositAsAgreed(facts, terms, asOf) : undefined);
  if (facts.offered || !facts.calls.some((call) => canStillFall(call, asOf))) return now;
  const { total, lines } = cancelled(facts, terms, asOf, now.deposit);
  return { ...now, ifCancelled: { total, lines } };
}

/** What would be owed in all if the payer cancelled at each of these instants everything agreed and not begun. */
export function totalsIfCancelled(
  given: Facts,
  terms: Terms,
  instants: readonly Temporal.ZonedDateTime[],
): bigint[] {
  const [first] = instants;
  if (!first) return [];
  const facts = inOrder(given);
  const deposit = depositAsAgreed(facts, terms, first);
  return instants.map((at) => cancelled(facts, terms, at, deposit).total);
}

/** With its calls as they happen; two at one instant by their ids, so that any order of entry gives the same. */
function inOrder(facts: Facts): Facts {
  const calls = facts.calls.toSorted(
    (a, b) => whenOf(a.planned).at - whenOf(b.planned).at || (a.id < b.id ? -1 : 1),
  );
  return { ...facts, calls };
}

function cancelled(
  facts: Facts,
  terms: Terms,
  at: Temporal.ZonedDateTime,
  deposit: Desk['deposit'],
): Statement {
  const calls = facts.calls.map((call) => (canStillFall(call, at) ? fallen(call, at) : call));
  return price({ ...facts, calls }, terms, at, deposit);
}

function canStillFall(call: Call, asOf: Temporal.ZonedDateTime): boolean {
  return call.standing.is === 'agreed' && whenOf(call.planned).at > asOf.epochMilliseconds;
}

function fallen(call: Call, at: Temporal.ZonedDateTime): Call {
  return { ...call, standing: { is: 'cancelled', at, by: 'payer', reason: 'other', wasAgreed: true } };
}

/** Prices the facts; `deposit` where it is known already, from the facts as agreed. */
function price(
  facts: Facts,
  terms: Terms,
  asOf: Temporal.ZonedDateTime,
  deposit: Desk['deposit'],
): Statement {
  const { steps } = planOf(terms.tariff);
  return shown(worked(facts, terms, asOf, { steps, deposit }), terms.tariff);
}

/** The deposit is the one that was agreed; where that was not kept, it is reckoned on the fee as agreed. */
function depositAsAgreed(facts: Facts, terms: Terms, asOf: Temporal.ZonedDateTime): Desk['deposit'] {
  if (facts.agreedDeposit) return facts.agreedDeposit;
  const { steps } = planOf(terms.tariff);
  const last = steps.findLastIndex(({ phase }) => phase === 'deposit');
  if (last < 0) return undefined;
  const until = { steps: steps.slice(0, last + 1), deposit: undefined };
  return worked(asAgreed(facts), terms, facts.agreedAt ?? asOf, until).deposit;
}

/** The desk when these steps are done; of ways of charging those hold that come to less, or more, without the others. */
function worked(
  facts: Facts,
  terms: Terms,
  asOf: Temporal.ZonedDateTime,
  { steps, deposit }: { steps: readonly Step[]; deposit: Desk['deposit'] },
): Desk {
  const plan = planOf(terms.tariff);
  const under = (chosen: Chosen, steps: readonly Step[]) => {
    const desk = deskFor(facts, terms, asOf, chosen);
    desk.deposit = deposit;
    for (const { phase, work } of steps) if (phase !== 'deposit' || deposit === undefined) work(desk);
    return desk;
  };
  return under(
    choose(plan.choices, (chosen) => under(chosen, plan.weighing)),
    steps,
  );
}

/** Whether a call that was agreed has been played, has fallen or was missed. */
function hasTurnedOut({ standing }: Call): boolean {
  return standing.is === 'cancelled'
    ? standing.wasAgreed
    : standing.is === 'played' || standing.is === 'missed';
}

/**
 * The facts as they were agreed: nothing that is moved, added, played longer, falls or comes late later changes what was
 * asked for before the work. Where it is not said what was agreed, the calls as they stand, none of them turned out yet.
 */
export function asAgreed(given: Facts): Facts {
  const facts = { ...given, programme: given.programme.map((work) => asItStood(work, given.agreedAt)) };
  const { agreedCalls, calls } = facts;
  if (!agreedCalls) return { ...facts, calls: calls.map((call) => (hasTurnedOut(call) ? open(call) : call)) };
  const present = new Map(calls.map((call) => [call.id, call]));
  const agreed = agreedCalls.flatMap((as) => {
    const { label: _, ...call } = present.get(as.id) ?? {};
    return 'place' in call ? [open({ ...call, ...as })] : [];
  });
  return inOrder({ ...facts, calls: agreed, moves: [] });
}

/** A work on the day of the agreement: music that came after it was still wanted. */
function asItStood(work: WorkFacts, agreedAt: Facts['agreedAt']): WorkFacts {
  const came = work.part?.receivedOn;
  const after = came && agreedAt && Temporal.PlainDate.compare(came, agreedAt.toPlainDate()) > 0;
  return after ? { ...work, part: { state: 'wanted' } } : work;
}

function open(call: Call): Call {
  return { ...call, standing: { is: 'agreed' } };
}

function deskFor(
  facts: Facts,
  { tariff, locale }: Terms,
  asOf: Temporal.ZonedDateTime,
  chosen: Chosen,
): Desk {
  const { rivals, counting } = planOf(tariff);
  return new Desk(facts, voice(locale, tariff.currency), asOf, rivals, counting, chosen);
}

function shown(desk: Desk, tariff: Tariff): Statement {
  const payers = payerSums(desk);
  const sum = (part: (of: PayerSum) => bigint) => payers.reduce((total, of) => total + part(of), 0n);
  return {
    currency: tariff.currency,
    asOf: desk.asOf,
    tariff: { name: tariff.name, version: tariff.version },
    lines: desk.lines,
    toOthers: desk.toOthers,
    taxes: desk.taxes,
    payers,
    net: sum((of) => of.net),
    tax: sum((of) => of.tax),
    total: sum((of) => of.total),
    ...(desk.deposit ? { deposit: desk.deposit } : {}),
    ...(desk.payment ? { payment: desk.payment } : {}),
    entitlements: desk.entitlements,
    fallen: desk.items.flatMap(({ call, verdict }) =>
      verdict
        ? [{ call: call.id, clause: verdict.clause.id, owes: verdict.terms.owes, why: verdict.why }]
        : [],
    ),
    late: desk.late,
    unpriced: desk.items.filter((item) => desk.isGap(item)).map((item) => item.call.id),
  };
}

/** Where tax is inside the price, the net is what is left of it. */
function payerSums(desk: Desk): PayerSum[] {
  const sums = new Map<string, { lines: bigint; added: bigint; inside: bigint }>();
  const of = (payer: string) => {
    const sum = sums.get(payer) ?? { lines: 0n, added: 0n, inside: 0n };
    sums.set(payer, sum);
    return sum;
  };
  for (const line of desk.lines) of(line.payer).lines += line.amount;
  for (const tax of desk.taxes) of(tax.payer)[tax.inside ? 'inside' : 'added'] += tax.amount;
  return [...sums].map(([payer, { lines, added, inside }]) => ({
    payer,
    net: lines - inside,
    tax: added + inside,
    total: lines + added,
  }));
}
