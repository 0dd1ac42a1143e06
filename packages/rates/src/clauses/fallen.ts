// What fallen calls leave on the statement: their lines as if held are replaced by one that says what is owed.

import type { Charge, Desk, Verdict } from '../desk.ts';
import type { ClauseHead } from '../kind.ts';
import type { Line } from '../line.ts';

/** Replaces the lines of the calls this clause judged by what its verdicts leave to pay. */
export function leave(desk: Desk, clause: ClauseHead): void {
  for (const [together, calls] of groups(desk, clause)) {
    const verdict = desk.items.find((item) => calls.has(item.call.id))?.verdict;
    if (verdict) settle(desk, clause, { verdict, together, calls });
  }
}

interface Group {
  readonly verdict: Verdict;
  readonly together: string;
  readonly calls: ReadonlySet<string>;
}

/** Calls judged by this clause that leave something, by what falls together. */
function groups(desk: Desk, clause: ClauseHead): Map<string, Set<string>> {
  const found = new Map<string, Set<string>>();
  for (const { call, verdict } of desk.items) {
    if (verdict?.clause.id !== clause.id || verdict.terms.owes === 'nothing') continue;
    const group = found.get(verdict.together) ?? new Set();
    found.set(verdict.together, group.add(call.id));
  }
  return found;
}

function settle(desk: Desk, clause: ClauseHead, { verdict, together, calls }: Group): void {
  const everything = desk.items.every((item) => item.verdict !== undefined);
  const falls = (line: Line) =>
    line.category !== 'entitlement' &&
    (line.calls.length === 0 ? everything : line.calls.every((id) => calls.has(id)));
  const fallen = desk.lines.filter(falls);
  desk.lines = desk.lines.filter((line) => !falls(line));
  const head = {
    category: 'cancellation' as const,
    calls: [...calls],
    facts: [{ name: 'why', value: verdict.why }],
  };
  const payers = [...new Set(fallen.map((line) => line.payer))];
  const sole = payers[0] ?? clause.payer;
  const once = (what: string, rate: bigint): Charge => ({
    ...head,
    what,
    about: together,
    payer: sole,
    quantity: { count: 1, of: 1 },
    unit: 'cancellation',
    rate,
  });
  switch (verdict.terms.owes) {
    case 'amount':
      desk.charge(clause, once('Cancellation', verdict.terms.amount));
      return;
    case 'deposit':
      desk.charge(clause, once('Cancellation, deposit kept', desk.deposit?.amount ?? 0n));
      return;
    default:
      for (const payer of payers) chargeShare(payer, payers.length > 1 ? `${together}/${payer}` : together);
  }

  function chargeShare(payer: string, about: string): void {
    const share = verdict.terms.owes === 'share' ? verdict.terms.share : 10_000;
    const fee = fallen.filter((line) => line.payer === payer).reduce((sum, line) => sum + line.amount, 0n);
    desk.charge(clause, {
      ...head,
      what: 'Cancellation',
      about,
      payer,
      facts: [...head.facts, { name: 'fee', value: desk.voice.money(fee) }],
      quantity: { count: share, of: 10_000 },
      unit: `of ${desk.voice.money(fee)}`,
      rate: fee,
      said: desk.voice.share(share),
    });
  }
}
