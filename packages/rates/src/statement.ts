// A statement: what an engagement costs at an instant under its tariff, and why. The one function that prices
// a quote, a bill, a cancellation and a “what if”.

import type { Temporal } from '@colla/calendar';
import type { Call } from '@colla/hours';
import type { Currency } from '@colla/money';
import { Desk, type Drawn, type TaxSum } from './desk.ts';
import type { Facts } from './facts.ts';
import type { EventDay } from './fields.ts';
import { type ClauseHead, PHASES, type Phase, type Rivalry } from './kind.ts';
import { kindOf, namesOf, rivalryOf } from './kinds.ts';
import type { Line } from './line.ts';
import { closer, fitsEngagement } from './selector.ts';
import type { Clause, Tariff } from './tariff.ts';
import { voice } from './voice.ts';

/** What one payer owes. `total` is what they pay: `net` and the taxes. Minor units. */
export interface PayerSum {
  readonly payer: string;
  readonly net: bigint;
  readonly tax: bigint;
  readonly total: bigint;
}

export interface DepositDue {
  readonly clause: string;
  readonly amount: bigint;
  readonly due: readonly EventDay[];
  readonly arithmetic: string;
}

export interface PaymentDue {
  readonly clause: string;
  readonly due: readonly EventDay[];
  /** True where what is not paid by then is not played. */
  readonly gate: boolean;
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
  readonly taxes: readonly TaxSum[];
  readonly payers: readonly PayerSum[];
  readonly net: bigint;
  readonly tax: bigint;
  readonly total: bigint;
  readonly deposit?: DepositDue;
  readonly payment?: PaymentDue;
  readonly entitlements: readonly Drawn[];
  readonly fallen: readonly Fallen[];
  /** Calls that count and that no clause prices: the tariff has a gap a person must close. */
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
export function statement(facts: Facts, terms: Terms, asOf: Temporal.ZonedDateTime): Statement {
  const now = price(facts, terms, asOf);
  const falls = facts.offered ? [] : facts.calls.filter((call) => canStillFall(call, asOf));
  if (falls.length === 0) return now;
  const { total, lines } = price(
    { ...facts, calls: facts.calls.map((call) => fallen(call, falls, asOf)) },
    terms,
    asOf,
  );
  return { ...now, ifCancelled: { total, lines } };
}

function canStillFall(call: Call, asOf: Temporal.ZonedDateTime): boolean {
  return call.standing.is === 'agreed' && call.planned.start.epochMilliseconds > asOf.epochMilliseconds;
}

function fallen(call: Call, falls: readonly Call[], at: Temporal.ZonedDateTime): Call {
  if (!falls.includes(call)) return call;
  return { ...call, standing: { is: 'cancelled', at, by: 'payer', reason: 'other', wasAgreed: true } };
}

function price(facts: Facts, terms: Terms, asOf: Temporal.ZonedDateTime): Statement {
  const { tariff, locale } = terms;
  const plan = planOf(tariff);
  const desk = new Desk(facts, voice(locale, tariff.currency), asOf, plan.rivals);
  for (const step of plan.steps) step(desk);
  return shown(desk, tariff);
}

function shown(desk: Desk, tariff: Tariff): Statement {
  const payers = payerSums(desk);
  const sum = (part: (of: PayerSum) => bigint) => payers.reduce((total, of) => total + part(of), 0n);
  return {
    currency: tariff.currency,
    asOf: desk.asOf,
    tariff: { name: tariff.name, version: tariff.version },
    lines: desk.lines,
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
    unpriced: desk.items.filter((item) => !item.settled && desk.counts(item)).map((item) => item.call.id),
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

interface Plan {
  readonly steps: readonly ((desk: Desk) => void)[];
  readonly rivals: Readonly<Record<Rivalry, readonly ClauseHead[]>>;
}

/** A tariff's clauses in the order of the phases, worked out once for each tariff. */
const plans = new WeakMap<Tariff, Plan>();

function planOf(tariff: Tariff): Plan {
  const known = plans.get(tariff);
  if (known) return known;
  const clauses = afterThoseTheyName(tariff.clauses);
  const plan: Plan = {
    steps: PHASES.flatMap((phase) => clauses.flatMap((clause) => stepOf(clause, phase, clauses))),
    rivals: { price: rivalsOf(tariff, 'price'), fall: rivalsOf(tariff, 'fall') },
  };
  plans.set(tariff, plan);
  return plan;
}

/** Clauses as written, but each after those it names; a tariff whose clauses name one another in a circle is refused. */
function afterThoseTheyName(clauses: readonly Clause[]): Clause[] {
  const byId = new Map(clauses.map((clause) => [clause.id, clause]));
  const placed = new Set<Clause>();
  const place = (clause: Clause): void => {
    for (const name of namesOf(clause)) {
      const named = byId.get(name);
      if (named && !placed.has(named)) place(named);
    }
    placed.add(clause);
  };
  for (const clause of clauses) if (!placed.has(clause)) place(clause);
  return [...placed];
}

function stepOf(clause: Clause, phase: Phase, clauses: readonly Clause[]): ((desk: Desk) => void)[] {
  const { phases, once } = kindOf(clause);
  const act = phases[phase];
  if (!act) return [];
  const closerOnes = once ? clauses.filter((other) => goesBefore(other, clause)) : [];
  return [
    (desk) => {
      if (closerOnes.some((other) => fitsEngagement(other.for, desk.facts))) return;
      act(clause.terms, desk, clause);
    },
  ];
}

function goesBefore(other: Clause, clause: Clause): boolean {
  return other.kind === clause.kind && closer(other.for, clause.for);
}

function rivalsOf(tariff: Tariff, rivalry: Rivalry): ClauseHead[] {
  return tariff.clauses.filter((clause) => rivalryOf(clause) === rivalry);
}
