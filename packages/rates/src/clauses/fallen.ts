// What fallen calls leave on the statement: their lines as if held are replaced by one that says what is owed.

import type { Charge } from '../charge.ts';
import type { Desk } from '../desk.ts';
import type { ClauseHead } from '../kind.ts';
import type { Line } from '../line.ts';
import type { Owes, Verdict } from '../verdict.ts';

/** Replaces the lines of the calls this clause judged by what its verdicts leave to pay. */
export function leave(desk: Desk, clause: ClauseHead): void {
  const groups = fallenTogether(desk, clause);
  if (groups.size === 0) return;
  const kept: Line[] = [];
  for (const line of desk.lines) {
    const verdict = verdictOn(line, desk);
    const group = verdict?.clause.id === clause.id ? groups.get(verdict.together) : undefined;
    (group?.lines ?? kept).push(line);
  }
  desk.lines = kept;
  for (const group of groups.values()) settle(desk, clause, group);
}

interface Group {
  readonly verdict: Verdict;
  readonly calls: string[];
  /** What they would have cost. */
  readonly lines: Line[];
}

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

/**
 * The verdict that a line goes by: that on its call; for several calls that all fell, the one that leaves the
 * most; for a line without calls, as for all calls together; for a share, as for what it is taken of. Undefined
 * where any of them still stands. Hours covered are drawn already, and stay.
 */
function verdictOn(line: Line, desk: Desk): Verdict | undefined {
  if (line.category === 'entitlement') return undefined;
  const bases = desk.takenOf.get(line.key);
  if (bases) return mostOf(bases.map((base) => verdictOn(base, desk)));
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

function settle(desk: Desk, clause: ClauseHead, { verdict, calls, lines }: Group): void {
  const { terms, together, why } = verdict;
  const payers = [...new Set(lines.map((line) => line.payer))];
  const head = { category: 'cancellation' as const, calls, facts: [{ name: 'why', value: why }] };
  if (terms.owes === 'amount') chargeOnce('Cancellation', terms.amount);
  else if (terms.owes === 'deposit') chargeOnce('Cancellation, deposit kept', desk.deposit?.amount ?? 0n);
  else for (const payer of payers) chargeShare(payer, terms.owes === 'share' ? terms.share : 10_000);

  function chargeOnce(what: string, rate: bigint): void {
    const charge: Charge = {
      ...head,
      what,
      about: together,
      quantity: { count: 1, of: 1 },
      unit: 'cancellation',
      rate,
    };
    desk.stand(desk.charge(clause, { ...charge, payer: payers[0] ?? clause.payer }), lines);
  }

  function chargeShare(payer: string, share: number): void {
    const theirs = lines.filter((line) => line.payer === payer);
    const fee = theirs.reduce((sum, line) => sum + line.amount, 0n);
    const line = desk.charge(clause, {
      ...head,
      what: 'Cancellation',
      about: payers.length > 1 ? `${together}/${payer}` : together,
      payer,
      facts: [...head.facts, { name: 'fee', value: desk.voice.money(fee) }],
      quantity: { count: share, of: 10_000 },
      unit: `of ${desk.voice.money(fee)}`,
      rate: fee,
      said: desk.voice.share(share),
    });
    desk.stand(line, theirs);
  }
}
