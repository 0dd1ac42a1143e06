// What fallen calls leave on the statement: their lines as if held are replaced by one that says what is owed.

import { divideRounded } from '@colla/money';
import type { Charge } from '../charge.ts';
import type { Desk } from '../desk.ts';
import { groupsOf } from '../groups.ts';
import type { ClauseHead } from '../kind.ts';
import type { Line } from '../line.ts';
import type { Owes, Verdict } from '../verdict.ts';

/** Replaces the lines of the calls this clause judged by what its verdicts leave to pay. */
export function leave(desk: Desk, clause: ClauseHead): void {
  const groups = fallenTogether(desk, clause);
  if (groups.size === 0) return;
  const verdicts: Verdicts = new Map();
  const gone: Line[] = [];
  desk.lines = desk.lines.filter((line) => {
    const verdict = verdictOn(line, desk, verdicts);
    const group = verdict?.clause.id === clause.id ? groups.get(verdict.together) : undefined;
    group?.lines.push(line);
    if (group) keepFee(line, desk);
    if (group && isSum(group.verdict.terms)) gone.push(line);
    return group === undefined;
  });
  const room = new Map(gone.map((line) => [line, line.amount]));
  for (const group of groups.values()) settle(desk, clause, group, room);
}

/** Of what is charged for several calls each has its part, one of as many as there are. */
function keepFee({ calls, amount }: Line, desk: Desk): void {
  for (const id of calls) {
    const item = desk.item(id);
    if (item) item.feeBeforeFall += divideRounded(amount, BigInt(calls.length));
  }
}

interface Group {
  readonly verdict: Verdict;
  readonly calls: string[];
  /** What they would have cost. */
  readonly lines: Line[];
}

/** Of lines for which sums are kept: what no sum has taken yet. No sum is more than its calls would have cost. */
type Room = Map<Line, bigint>;

type Verdicts = Map<string, Verdict | undefined>;

/** Calls judged by this clause that leave something, by what falls together. */
function fallenTogether(desk: Desk, clause: ClauseHead): Map<string, Group> {
  const groups = new Map<string, Group>();
  for (const { call, verdict } of desk.items) {
    if (verdict?.clause.id !== clause.id || verdict.terms.owes === 'nothing') continue;
    const group = groups.get(verdict.together);
    if (group) group.calls.push(call.id);
    else groups.set(verdict.together, { verdict, calls: [call.id], lines: [] });
  }
  return groups;
}

function isSum({ owes }: Owes): boolean {
  return owes === 'amount' || owes === 'deposit';
}

/** The verdict that a line goes by, worked out once for each: a share of shares would ask many times over. */
function verdictOn(line: Line, desk: Desk, known: Verdicts): Verdict | undefined {
  if (known.has(line.key)) return known.get(line.key);
  const verdict = judged(line, desk, known);
  known.set(line.key, verdict);
  return verdict;
}

/**
 * That on its call; for several calls that all fell, the one that leaves the
 * most; for a line without calls, as for all calls together; for a share, as for what it is taken of. Undefined
 * where any of them still stands. Hours covered are drawn already, and stay.
 */
function judged(line: Line, desk: Desk, known: Verdicts): Verdict | undefined {
  if (line.category === 'entitlement') return undefined;
  const bases = desk.lineage.basesOf(line);
  if (bases) return mostOf(bases.map((base) => verdictOn(base, desk, known)));
  const items =
    line.calls.length > 0
      ? line.calls.map((id) => desk.item(id))
      : desk.items.filter((item) => desk.counts(item));
  return mostOf(items.map((item) => item?.verdict));
}

/** The verdict that leaves the most; undefined where one is missing. */
function mostOf(verdicts: readonly (Verdict | undefined)[]): Verdict | undefined {
  let most: Verdict | undefined;
  for (const verdict of verdicts) {
    if (verdict === undefined) return undefined;
    if (!most || shareLeft(verdict.terms) > shareLeft(most.terms)) most = verdict;
  }
  return most;
}

/** The share of a fee that a verdict leaves, in basis points; a sum that stands instead of the fee leaves none of it. */
function shareLeft(terms: Owes): number {
  if (terms.owes === 'all') return 10_000;
  return terms.owes === 'share' ? terms.share : 0;
}

/** Where a verdict is carried out: on whose desk, by which clause, on what fell together. */
interface Place {
  readonly desk: Desk;
  readonly clause: ClauseHead;
  readonly group: Group;
}

function settle(desk: Desk, clause: ClauseHead, group: Group, room: Room): void {
  const { terms } = group.verdict;
  const place = { desk, clause, group };
  if (terms.owes === 'amount') chargeOnce({ what: 'Cancellation', sum: terms.amount }, room, place);
  else if (terms.owes === 'deposit')
    chargeOnce({ what: 'Cancellation, deposit kept', sum: depositKept(desk) }, room, place);
  else chargeShare(terms.owes === 'share' ? terms.share : 10_000, place);
}

/** Each payer owes what their own lines have room for, in the order of the lines, until the sum is reached. */
function chargeOnce({ what, sum }: { what: string; sum: bigint }, room: Room, place: Place): void {
  const touched = groupsOf(
    [...room.keys()].filter((line) => isOfAny(line, place.group.calls)),
    (line) => line.payer,
  );
  let left = sum;
  for (const [payer, theirs] of touched) {
    const rate = take(left, theirs, room);
    if (rate === 0n) continue;
    left -= rate;
    const one = { quantity: { count: 1, of: 1 }, unit: 'cancellation', rate };
    chargeFor(theirs, { ...headOf(payer, touched.size, place), what, ...one }, place);
  }
}

function chargeShare(share: number, place: Place): void {
  const { voice } = place.desk;
  const byPayer = groupsOf(place.group.lines, (line) => line.payer);
  for (const [payer, theirs] of byPayer) {
    const fee = theirs.reduce((sum, line) => sum + line.amount, 0n);
    const head = headOf(payer, byPayer.size, place);
    const charge = {
      ...head,
      what: 'Cancellation',
      facts: [...head.facts, { name: 'fee', value: voice.money(fee) }],
      quantity: { count: share, of: 10_000 },
      unit: `of ${voice.money(fee)}`,
      rate: fee,
      said: voice.share(share),
    };
    chargeFor(theirs, charge, place);
  }
}

function headOf(payer: string, payers: number, { group: { calls, verdict } }: Place) {
  return {
    category: 'cancellation' as const,
    calls,
    facts: [{ name: 'why', value: verdict.why }],
    about: payers > 1 ? `${verdict.together}/${payer}` : verdict.together,
    payer,
  };
}

/** A line that stands for what these lines charged. */
function chargeFor(lines: readonly Line[], charge: Charge, { desk, clause }: Place): void {
  const line = desk.charge(clause, charge);
  desk.lineage.stand(
    line,
    lines.map((one) => desk.lineage.whole(one)),
  );
}

/** The deposit is for the engagement: it is kept where the whole falls, and stays held while any call stands. */
function depositKept(desk: Desk): bigint {
  return desk.items.every(({ verdict }) => verdict) ? (desk.deposit?.amount ?? 0n) : 0n;
}

/** Whether a line is for one of these calls; one without calls is for all. */
function isOfAny({ calls }: Line, these: readonly string[]): boolean {
  return calls.length === 0 || calls.some((call) => these.includes(call));
}

/**
 * Takes a sum out of what these lines of one payer leave, those of fewer calls first: no more than they leave
 * together, nor than all lines of that payer.
 */
function take(sum: bigint, lines: readonly Line[], room: Room): bigint {
  const leftOf = (some: readonly Line[]) => some.reduce((total, line) => total + (room.get(line) ?? 0n), 0n);
  const all = [...room.keys()].filter((line) => line.payer === lines[0]?.payer);
  const taken = [leftOf(lines), leftOf(all)].reduce((least, most) => (most < least ? most : least), sum);
  if (taken <= 0n) return 0n;
  let left = taken;
  for (const line of lines.toSorted((one, other) => one.calls.length - other.calls.length)) {
    const there = room.get(line) ?? 0n;
    if (there <= 0n) continue;
    const part = there < left ? there : left;
    room.set(line, there - part);
    left -= part;
  }
  return taken;
}
