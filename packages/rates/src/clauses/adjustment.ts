// What supplements and discounts have in common: a condition, and a sum or a share.

import { z } from 'zod';
import type { Desk, Item } from '../desk.ts';
import { amountField, shareField, wordsField } from '../fields.ts';
import { type ClauseHead, perCurrency } from '../kind.ts';
import type { Line } from '../line.ts';
import { capital, fitsCall, fitsEngagement, sayCalls, sayConditions } from '../selector.ts';
import type { Voice } from '../voice.ts';

export const adjustmentSchema = perCurrency((currency) =>
  z.strictObject({
    what: wordsField('Called'),
    by: z
      .discriminatedUnion('as', [
        z.strictObject({
          as: z.literal('amount'),
          amount: amountField(currency, 'Amount'),
          each: z.enum(['call', 'day', 'engagement']).default('call').meta({ title: 'For each' }),
        }),
        z.strictObject({ as: z.literal('share'), share: shareField('Share', { most: 100_000 }) }),
      ])
      .meta({ title: 'By' }),
    on: z
      .array(z.string().min(1))
      .min(1)
      .readonly()
      .optional()
      .meta({ title: 'Only on what these clauses charge' }),
    most: amountField(currency, 'At most, together').optional(),
  }),
);
export type Adjustment = z.output<ReturnType<typeof adjustmentSchema>>;

interface Direction {
  readonly category: 'supplement' | 'discount';
  readonly sign: 1n | -1n;
}

/** Writes the lines of a supplement (sign 1) or discount (sign −1). */
export function applyAdjustment(
  terms: Adjustment,
  desk: Desk,
  clause: ClauseHead,
  direction: Direction,
): void {
  const from = desk.lines.length;
  if (terms.by.as === 'share') addShares(terms, terms.by.share, desk, clause, direction);
  else addAmounts(terms, terms.by, desk, clause, direction);
  if (terms.most !== undefined) hold(terms.most, from, desk, clause, { terms, direction });
}

/** A share of each line charged so far for the calls that fit. */
function addShares(
  terms: Adjustment,
  share: number,
  desk: Desk,
  clause: ClauseHead,
  { category, sign }: Direction,
): void {
  for (const line of desk.lines.filter((line) => bears(line, terms, desk, clause))) {
    desk.charge(clause, {
      category,
      what: terms.what,
      calls: line.calls,
      about: line.key,
      payer: line.payer,
      facts: [{ name: 'on', value: line.what }],
      quantity: { count: share, of: 10_000 },
      unit: `of ${desk.voice.money(line.amount)}`,
      rate: line.amount,
      sign,
      said: desk.voice.share(share),
    });
  }
}

/** Whether a line is one the share is taken of: named by `on`, or any fee of calls that fit. */
function bears(line: Line, terms: Adjustment, desk: Desk, clause: ClauseHead): boolean {
  if (terms.on && !terms.on.includes(line.clause)) return false;
  if (line.calls.length === 0) return fitsEngagement(clause.for, desk.facts);
  const calls = desk.items.filter((item) => line.calls.includes(item.call.id));
  return calls.some((item) => fitsCall(clause.for, item.call, desk.facts));
}

function addAmounts(
  terms: Adjustment,
  by: { amount: bigint; each: 'call' | 'day' | 'engagement' },
  desk: Desk,
  clause: ClauseHead,
  { category, sign }: Direction,
): void {
  for (const { about, items } of occasions(by.each, desk, clause)) {
    desk.charge(clause, {
      category,
      what: terms.what,
      calls: items.map((item) => item.call.id),
      ...(about === undefined ? {} : { about }),
      quantity: { count: 1, of: 1 },
      unit: by.each,
      rate: by.amount,
      sign,
    });
  }
}

/** The occasions on which a sum is due: each call that fits, each day with one, or the whole once. */
function occasions(
  each: 'call' | 'day' | 'engagement',
  desk: Desk,
  clause: ClauseHead,
): { about?: string; items: Item[] }[] {
  const fitting = desk.items.filter(
    (item) => desk.counts(item) && fitsCall(clause.for, item.call, desk.facts),
  );
  if (each === 'call') return fitting.map((item) => ({ about: item.call.id, items: [item] }));
  if (each === 'engagement') {
    const due = desk.items.length === 0 ? fitsEngagement(clause.for, desk.facts) : fitting.length > 0;
    return due ? [{ items: fitting }] : [];
  }
  const days = new Map<string, Item[]>();
  for (const item of fitting) {
    const day = item.call.planned.start.toPlainDate().toString();
    days.set(day, [...(days.get(day) ?? []), item]);
  }
  return [...days].map(([about, items]) => ({ about, items }));
}

/** Brings the lines written since `from` down to `most` together by one line that says so. */
function hold(
  most: bigint,
  from: number,
  desk: Desk,
  clause: ClauseHead,
  { terms, direction }: { terms: Adjustment; direction: Direction },
): void {
  const written = desk.lines.slice(from).reduce((sum, line) => sum + direction.sign * line.amount, 0n);
  if (written <= most) return;
  desk.charge(clause, {
    category: direction.category,
    what: `${terms.what}, at most ${desk.voice.money(most)}`,
    calls: [...new Set(desk.lines.slice(from).flatMap((line) => line.calls))],
    about: 'most',
    facts: [{ name: 'without limit', value: desk.voice.money(written) }],
    quantity: { count: 1, of: 1 },
    unit: 'limit',
    rate: written - most,
    sign: direction.sign === 1n ? -1n : 1n,
  });
}

/** The sentence of a supplement (`more`) or discount (`less`). */
export function sayAdjustment(
  terms: Adjustment,
  said: { voice: Voice; for: ClauseHead['for'] },
  word: 'more' | 'less',
): string {
  const { voice } = said;
  const most = terms.most === undefined ? '' : `, at most ${voice.money(terms.most)} together`;
  const on = terms.on
    ? ` (of what ${voice.list(terms.on.map((id) => `“${id}”`))} ${terms.on.length > 1 ? 'charge' : 'charges'})`
    : '';
  const by = terms.by;
  if (by.as === 'share')
    return `${capital(terms.what)}: ${sayCalls(said.for, voice).toLowerCase()} are ${voice.share(by.share)} ${word}${on}${most}.`;
  if (by.each === 'engagement')
    return `${capital(terms.what)}: the engagement${sayConditions(said.for, voice)} is ${voice.money(by.amount)} ${word}${most}.`;
  const each = by.each === 'day' ? 'for each day with one' : 'each';
  return `${capital(terms.what)}: ${sayCalls(said.for, voice).toLowerCase()} are ${voice.money(by.amount)} ${word} ${each}${most}.`;
}
