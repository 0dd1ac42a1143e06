// A call that is moved: so many changes are free with enough notice, the next cost a share of the call's fee.

import { whenOf } from '@colla/calendar';
import { divideRounded } from '@colla/money';
import { z } from 'zod';
import type { Desk } from '../desk.ts';
import type { Move } from '../facts.ts';
import { amountField, countField, shareField } from '../fields.ts';
import { groupsOf } from '../groups.ts';
import type { Item } from '../item.ts';
import { type ClauseHead, clauseKind, perCurrency } from '../kind.ts';
import { capital, sayCalls } from '../phrases.ts';
import type { Voice } from '../voice.ts';

const schema = perCurrency((currency) =>
  z.strictObject({
    free: countField('Free changes').default(0),
    noticeHours: countField('With at least this notice (hours)').default(0),
    after: z
      .array(shareField('Share of the call’s fee'))
      .min(1)
      .max(10)
      .readonly()
      .meta({ title: 'Then, change by change' }),
    sum: amountField(currency, 'And a sum for each of them').optional(),
  }),
);
type Terms = z.output<ReturnType<typeof schema>>;

export const change = clauseKind({
  kind: 'change',
  title: 'Changes of time',
  help: 'Says what it costs to move a call: some changes are free with enough notice, the next cost a share of its fee.',
  schema,
  rivalry: () => undefined,
  sentence,
  phases: { supplements: chargeChanges },
  examples: [
    {
      case: 'One free change with 48 hours’ notice, then half, then all: three changes of calls of 60.00',
      terms: { free: 1, noticeHours: 48, after: [5000, 10_000] },
      given: {
        calls: ['3 × rehearsal 60'],
        moves: [
          { call: 0, at: '2026-02-20T10:00', was: '2026-02-26T10:00' },
          { call: 1, at: '2026-02-21T10:00', was: '2026-02-27T10:00' },
          { call: 2, at: '2026-02-22T10:00', was: '2026-02-28T10:00' },
        ],
      },
      with: [{ id: 'fee', kind: 'hourly', for: {}, terms: { price: '60.00' } }],
      owed: '90.00',
    },
    {
      case: 'A change 47 hours before is not free, and the free one is still there for the next',
      terms: { free: 1, noticeHours: 48, after: [5000] },
      given: {
        calls: ['2 × rehearsal 60'],
        moves: [
          { call: 0, at: '2026-02-24T11:00', was: '2026-02-26T10:00' },
          { call: 1, at: '2026-02-25T10:00', was: '2026-02-27T10:00' },
        ],
      },
      with: [{ id: 'fee', kind: 'hourly', for: {}, terms: { price: '60.00' } }],
      owed: '30.00',
    },
    {
      case: 'Each change beyond the first two is 12.50',
      terms: { free: 2, after: [0], sum: '12.50' },
      given: {
        calls: ['3 × rehearsal 60'],
        moves: [
          { call: 0, at: '2026-02-20T10:00', was: '2026-02-26T10:00' },
          { call: 1, at: '2026-02-21T10:00', was: '2026-02-27T10:00' },
          { call: 2, at: '2026-02-22T10:00', was: '2026-02-28T10:00' },
        ],
      },
      with: [{ id: 'fee', kind: 'hourly', for: {}, terms: { price: '60.00' } }],
      owed: '12.50',
    },
  ],
});

/** In the order in which word of them came; two at one instant in the order of their calls. */
function chargeChanges(terms: Terms, desk: Desk, clause: ClauseHead): void {
  let free = terms.free;
  let charged = 0;
  for (const { move, item } of movesOf(desk, clause)) {
    if (free > 0 && noticeHours(move) >= terms.noticeHours) {
      free -= 1;
      continue;
    }
    const share = terms.after[Math.min(charged, terms.after.length - 1)] ?? 0;
    charged += 1;
    if (share > 0) chargeOne(share, { move, item, number: charged }, desk, clause);
    if (terms.sum !== undefined) chargeSum(terms.sum, { move, item, number: charged }, desk, clause);
  }
}

function movesOf(desk: Desk, clause: ClauseHead): { move: Move; item: Item }[] {
  const standing = new Map(desk.standing(clause).map((item) => [item.call.id, item]));
  return (desk.facts.moves ?? [])
    .filter(({ by }) => by === 'payer')
    .toSorted((a, b) => a.at.epochMilliseconds - b.at.epochMilliseconds || (a.call < b.call ? -1 : 1))
    .flatMap((move) => {
      const item = standing.get(move.call);
      return item ? [{ move, item }] : [];
    });
}

/** Notice before the time the call had. */
function noticeHours({ at, was }: Move): number {
  return (whenOf(was).at - at.epochMilliseconds) / 3_600_000;
}

interface Change {
  readonly move: Move;
  readonly item: Item;
  readonly number: number;
}

function chargeSum(sum: bigint, change: Change, desk: Desk, clause: ClauseHead): void {
  desk.charge(clause, {
    ...head(change, desk),
    about: `${change.number}:sum`,
    quantity: { count: 1, of: 1 },
    unit: 'change',
    rate: sum,
  });
}

function head({ move, item: { call } }: Change, { voice }: Desk) {
  const notice = voice.number(String(Math.floor(noticeHours(move) * 10) / 10));
  return {
    category: 'supplement' as const,
    what: `${capital(call.label ?? call.kind)} moved`,
    calls: [call.id],
    facts: [{ name: 'notice', value: `${notice} h` }],
  };
}

/**
 * A share of what is charged for the call, without supplements and discounts, for each of its payers: with its part, one
 * of as many as there are calls, of what is charged for several.
 */
function chargeOne(share: number, change: Change, desk: Desk, clause: ClauseHead): void {
  const { item, number } = change;
  const common = head(change, desk);
  const lines = desk.lines.filter(
    ({ calls, category }) =>
      calls.includes(item.call.id) && category !== 'supplement' && category !== 'discount',
  );
  for (const [payer, theirs] of groupsOf(lines, (line) => line.payer)) {
    const fee = theirs.reduce(
      (sum, { amount, calls }) => sum + divideRounded(amount, BigInt(calls.length)),
      0n,
    );
    desk.charge(clause, {
      ...common,
      about: `${number}:${payer}`,
      payer,
      facts: [...common.facts, { name: 'fee', value: desk.voice.money(fee) }],
      quantity: { count: share, of: 10_000 },
      unit: `of ${desk.voice.money(fee)}`,
      rate: fee,
      said: desk.voice.share(share),
    });
  }
}

function sentence(terms: Terms, { voice, for: selector }: { voice: Voice; for: ClauseHead['for'] }): string {
  const { free, noticeHours, after, sum } = terms;
  const hours = noticeHours === 1 ? 'one hour’s' : `${noticeHours} hours’`;
  const notice = noticeHours > 0 ? ` with ${hours} notice` : '';
  const first =
    free > 0
      ? `${free === 1 ? 'one change is' : `${free} changes are`} free${notice}, then `
      : 'a change costs ';
  const steps = after.map((share) => sayStep(share, sum, voice));
  return `Moving ${sayCalls(selector, voice, 'calls')}: ${first}${steps.join(', then ')}.`;
}

function sayStep(share: number, sum: bigint | undefined, voice: Voice): string {
  const fee = share === 10_000 ? 'all of the fee' : `${voice.share(share)} of the fee`;
  if (sum === undefined) return fee;
  return share === 0 ? voice.money(sum) : `${fee} and ${voice.money(sum)}`;
}
