// The desk on which one statement is worked out: the calls that count, what covers them, the lines so far.
// It lives for one pricing and is never seen outside.

import { Temporal } from '@colla/calendar';
import { type Call, principalCall } from '@colla/hours';
import type { Leg } from '@colla/travel';
import { type Charge, lineOf } from './charge.ts';
import type { Cost, Facts } from './facts.ts';
import type { DepositDue, Drawn, LatePart, LineToOther, PaymentDue, TaxSum } from './findings.ts';
import { asksOfCalls, fitsCall, fitsEngagement } from './fit.ts';
import { groupsOf } from './groups.ts';
import { counts, hasFallen, type Item, itemOf } from './item.ts';
import type { ClauseHead, Counting, Rivalry, Times } from './kind.ts';
import { taxSums } from './levy.ts';
import type { Line } from './line.ts';
import { alone, Lineage, type Portion } from './lineage.ts';
import type { Each, Occasion } from './occasion.ts';
import type { Levy } from './tax-amount.ts';
import type { Voice } from './voice.ts';
import type { Chosen } from './ways.ts';

export class Desk {
  readonly items: readonly Item[];
  lines: Line[] = [];
  private readonly levies: Levy[] = [];
  private known: TaxSum[] | undefined;
  readonly entitlements: Drawn[] = [];
  /** What is paid to others, and not to the pianist. */
  readonly toOthers: LineToOther[] = [];
  /** Parts that came late, and what that means. */
  readonly late: LatePart[] = [];
  /** Entitlements that are lost, by id, and why. */
  readonly lost = new Map<string, string>();
  deposit: DepositDue | undefined;
  payment: PaymentDue | undefined;
  /** What is behind the lines. */
  readonly lineage = new Lineage();
  private readonly byCall: ReadonlyMap<string, Item>;
  private readonly shares = new Map<Rivalry, ReadonlyMap<string | undefined, readonly Item[]>>();

  constructor(
    /** With its calls in the order they happen. */
    readonly facts: Facts,
    readonly voice: Voice,
    readonly asOf: Temporal.ZonedDateTime,
    /** The clauses that price calls, judge fallen ones and dock absences, the closer before the looser. */
    private readonly rivals: Readonly<Record<Rivalry, readonly ClauseHead[]>>,
    /** How the clauses count that count otherwise than as played, by id. */
    private readonly counting: ReadonlyMap<string, Counting>,
    /** Of ways of charging, those that hold. */
    private readonly chosen: Chosen,
  ) {
    this.items = facts.calls
      .filter((call) => counts(call, facts.offered))
      .map((call) => itemOf(call, (times) => this.countedOf(call, times)));
    this.byCall = new Map(this.items.map((item) => [item.call.id, item]));
  }

  /** True for an engagement that is no call at all: a subscription, a stipend. */
  get withoutCalls(): boolean {
    return this.facts.calls.length === 0;
  }

  /** Puts a tax on charges. */
  levy(levy: Levy): void {
    this.levies.push(levy);
    this.known = undefined;
  }

  /** What the taxes come to for each payer. */
  get taxes(): TaxSum[] {
    this.known ??= taxSums(this.levies, this.voice);
    return this.known;
  }

  /** What each payer owes: their lines, and the taxes added to them. */
  owedByPayer(): Map<string, bigint> {
    const owed = new Map<string, bigint>();
    const add = (payer: string, amount: bigint) => owed.set(payer, (owed.get(payer) ?? 0n) + amount);
    for (const { payer, amount } of this.lines) add(payer, amount);
    for (const { payer, amount, inside } of this.taxes) add(payer, inside ? 0n : amount);
    return owed;
  }

  /** Whether anything stands that leaves something to pay: for what fell in time nothing is prepared. */
  get stands(): boolean {
    return this.withoutCalls || this.items.some((item) => this.counts(item));
  }

  /** What is owed where there are no calls: the whole once, and each term that the place has told. */
  withoutAny<T>(each: Each): Occasion<T>[] {
    if (each === 'term') return (this.facts.terms ?? []).map(({ name }) => ({ about: name, of: [] }));
    return each === 'engagement' ? [{ of: [] }] : [];
  }

  /** The item of a call that counts. */
  item(call: string | undefined): Item | undefined {
    return call === undefined ? undefined : this.byCall.get(call);
  }

  /** Calls that leave something to pay and fit a clause, in the order they happen. */
  standing(clause: ClauseHead): Item[] {
    return this.items.filter((item) => this.counts(item) && this.fits(clause, item.call));
  }

  /** Calls that fit a clause and that nobody has taken whole, in the order they happen. */
  open(clause: ClauseHead): Item[] {
    return this.standing(clause).filter((item) => !item.settled);
  }

  /** Calls this clause is to price: those it fits more closely than any other pricing clause. */
  toPrice(clause: ClauseHead): Item[] {
    return this.shareOf(clause, 'price').filter((item) => !item.settled && this.counts(item));
  }

  /** Whether a call leaves anything to pay: one that fell in time draws on nothing and is priced by nothing. */
  counts({ call, verdict }: Item): boolean {
    return !hasFallen(call) || (verdict !== undefined && verdict.terms.owes !== 'nothing');
  }

  /** Whether a call that counts has no price, or one fell by the payer and no clause judges it. */
  isGap(item: Item): boolean {
    const { call, verdict, settled } = item;
    if (hasFallen(call) && verdict === undefined) return call.standing.by !== 'pianist';
    return !settled && this.counts(item);
  }

  /** Fallen calls this clause is to judge: those it fits more closely than any other that could. */
  fallen(clause: ClauseHead): Item[] {
    return this.shareOf(clause, 'fall').filter(({ call }) => hasFallen(call));
  }

  /** Calls the pianist missed, which this clause is to dock. */
  absences(clause: ClauseHead): Item[] {
    return this.shareOf(clause, 'absence').filter(
      ({ call }) => hasFallen(call) && call.standing.by === 'pianist',
    );
  }

  /**
   * What a clause speaks of in the lines so far: what the clauses it names charge (with what a cancellation or a limit
   * made of it, and what is taken off it), or all; of calls that all fit. A line without calls fits where the
   * engagement does, unless the clause asks for calls and names no clause.
   */
  portionsOf(clause: ClauseHead, named: readonly string[] | undefined): Portion[] {
    return this.lines.flatMap((line) => {
      const portion = named ? this.lineage.portion(line, named) : this.lineage.whole(line);
      return portion && this.isFor(clause, line, named !== undefined) ? [portion] : [];
    });
  }

  private isFor(clause: ClauseHead, { calls }: Line, isNamed: boolean): boolean {
    if (calls.length === 0)
      return fitsEngagement(clause.for, this.facts) && (isNamed || !asksOfCalls(clause.for));
    return calls.every((id) => {
      const item = this.item(id);
      return item !== undefined && this.fits(clause, item.call);
    });
  }

  /** Whether a line is what an absence of the pianist takes off. */
  isOfAbsence({ clause }: Line): boolean {
    return this.rivals.absence.some(({ id }) => id === clause);
  }

  /** Puts other lines in the place of these portions; what else their lines charge stays where it is. */
  replace(portions: readonly Portion[], by: (line: Line, portion: Portion) => readonly Line[]): void {
    const byLine = new Map(portions.map((portion) => [portion.line, portion]));
    this.lines = this.lines.flatMap((line) => {
      const portion = byLine.get(line);
      if (!portion) return [line];
      const rest = this.lineage.rest(portion);
      if (rest.parts.length === 0) return by(line, portion);
      const instead = by(alone(portion, this.voice), portion);
      const left = { ...alone(rest, this.voice), key: line.key };
      this.lineage.become(left, rest);
      return [...instead, left];
    });
  }

  /** The calls that are a clause's to price or to judge, worked out once for all clauses. */
  private shareOf(clause: ClauseHead, rivalry: Rivalry): readonly Item[] {
    const known = this.shares.get(rivalry);
    if (known) return known.get(clause.id) ?? [];
    const shares = groupsOf(this.items, ({ call }) => this.closest(call, rivalry)?.id);
    this.shares.set(rivalry, shares);
    return shares.get(clause.id) ?? [];
  }

  private closest(call: Call, rivalry: Rivalry): ClauseHead | undefined {
    return this.rivals[rivalry].find((clause) => this.fits(clause, call));
  }

  /** Whether a clause is for a call, and not left out for another way of charging it. */
  private fits(clause: ClauseHead, call: Call): boolean {
    return fitsCall(clause.for, call, this.facts) && !this.chosen.leavesOut(clause.id, call.id);
  }

  /** Whether a clause is left out altogether, for another way of charging that holds. */
  leavesOut(clause: string): boolean {
    return this.chosen.leavesOut(clause);
  }

  private countedOf(call: Call, times: Times): number {
    if (this.counting.size === 0) return times.played;
    const count = this.counting.get(this.closest(call, 'price')?.id ?? '');
    return count ? count(times) : times.played;
  }

  /** Writes a line. Its amount is rate × quantity, rounded once. */
  charge(clause: ClauseHead, charge: Charge): Line {
    const because = this.chosen.because(clause.id, charge.calls?.[0]);
    const line = lineOf(clause, { ...charge, facts: (charge.facts ?? []).concat(because) }, this.voice);
    this.lines.push(line);
    return line;
  }

  /** Journeys in the order of their days. */
  legs(): Leg[] {
    return [...this.facts.legs].sort(
      (a, b) => Temporal.PlainDate.compare(a.on, b.on) || (a.id < b.id ? -1 : 1),
    );
  }

  /** Costs in the order of their days. */
  costs(): Cost[] {
    return [...this.facts.costs].sort(
      (a, b) => Temporal.PlainDate.compare(a.on, b.on) || (a.id < b.id ? -1 : 1),
    );
  }

  /** The call everything leads up to; undefined for an engagement without calls. */
  principal(): Call | undefined {
    return principalCall(this.items.map((item) => item.call));
  }
}
