// Statements on the wire, and the preview that prices an engagement without keeping anything.

import { toDecimal } from '@colla/money';
import { CATEGORIES, type PaymentDue, type Statement, writtenTariffSchema } from '@colla/rates';
import { z } from 'zod';
import { deposit, due, showDeposit } from './deposit.ts';
import {
  callInput,
  costInput,
  legInput,
  movedInput,
  rolledOver,
  soloistFacts,
  spanInput,
  wordInput,
  workInput,
} from './engagements.ts';
import { term } from './organisations.ts';
import { amount, currencyCode, day, instant, locale, price, words } from './words.ts';

export const statementLine = z.object({
  key: z.string(),
  clause: z.string(),
  category: z.enum(CATEGORIES),
  payer: z.string(),
  what: z.string(),
  calls: z.array(z.string()),
  /** The day of a journey or a cost. */
  on: day.optional(),
  facts: z.array(z.object({ name: z.string(), value: z.string() })),
  quantity: z.object({ count: z.int(), of: z.int() }),
  unit: z.string(),
  rate: amount,
  amount,
  arithmetic: z.string(),
});
export type StatementLineJson = z.output<typeof statementLine>;

/** A call that drew on hours covered, in minutes; `says` is its sentence. */
const draw = z.object({ call: z.string(), minutes: z.int(), left: z.int(), says: z.string() });

export const statement = z.object({
  currency: currencyCode,
  asOf: instant,
  tariff: z.object({ name: z.string(), version: z.int() }),
  lines: z.array(statementLine),
  /** What the payers owe to others than the pianist; in none of the sums. */
  toOthers: z.array(statementLine.extend({ payee: z.string() })),
  taxes: z.array(
    z.object({
      clause: z.string(),
      name: z.string(),
      rate: z.number(),
      code: z.string(),
      inside: z.boolean(),
      /** What the law wants to be said beside it: “VAT is owed by the recipient”. */
      wording: z.string().optional(),
      /** The kinds of line it is not on. */
      not: z.array(z.enum(CATEGORIES)).optional(),
      payer: z.string(),
      base: amount,
      amount,
      arithmetic: z.string(),
    }),
  ),
  payers: z.array(z.object({ payer: z.string(), net: amount, tax: amount, total: amount })),
  net: amount,
  tax: amount,
  total: amount,
  deposit: deposit.optional(),
  payment: z
    .object({
      clause: z.string(),
      due,
      gate: z.boolean(),
      /** Monthly parts, the first due on the day itself, or parts with days of their own. */
      instalments: z.array(z.object({ payer: z.string(), ordinal: z.int(), due: due.optional(), amount })),
      /** The share (basis points) that may be taken off what is paid by the earliest of some days. */
      early: z.object({ share: z.int(), until: due }).optional(),
    })
    .optional(),
  entitlements: z.array(
    z.object({
      clause: z.string(),
      granted: z.int(),
      used: z.int(),
      /** Of what is used, what calls to come are to draw. */
      planned: z.int(),
      left: z.int(),
      lapsed: z.int(),
      occasions: z.object({ granted: z.int(), used: z.int() }).optional(),
      /** Why it is lost altogether. */
      lost: z.string().optional(),
      draws: z.array(draw),
      /** Its own statement, occasion by occasion. */
      grants: z.array(
        z.object({
          /** “the week of 2 March 2026”; left out for the whole engagement. */
          name: z.string().optional(),
          brought: z.int(),
          granted: z.int(),
          used: z.int(),
          planned: z.int(),
          left: z.int(),
          lapsed: z.int(),
          passedOn: z.int(),
          draws: z.array(draw),
          /** Calls that found nothing to draw, and why. */
          missed: z.array(draw),
          begins: z.string(),
          /** What became of the rest; empty where all was drawn. */
          ends: z.string(),
        }),
      ),
    }),
  ),
  fallen: z.array(z.object({ call: z.string(), clause: z.string(), owes: z.string(), why: z.string() })),
  /** Parts that came late, and what follows from it. */
  late: z.array(
    z.object({ clause: z.string(), work: z.string(), dueOn: day, daysLate: z.int(), means: z.string() }),
  ),
  unpriced: z.array(z.string()),
  ifCancelled: z.object({ total: amount, lines: z.array(statementLine) }).optional(),
});
export type StatementJson = z.output<typeof statement>;

/** The statement of an engagement with the sentences its lines open to, and what is left to invoice by payer. */
export const statementAnswer = z.object({
  statement,
  sentences: z.array(z.object({ clause: z.string(), sentence: z.string() })),
  toInvoice: z.array(z.object({ payer: z.string(), total: amount })),
});
export type StatementAnswerJson = z.output<typeof statementAnswer>;

/** Shows a statement: every minor unit as decimal text of its currency. */
export function showStatement(of: Statement): StatementJson {
  const text = (minor: bigint) => toDecimal(minor, of.currency);
  const line = ({ on, ...line }: Statement['lines'][number]): StatementLineJson => ({
    ...line,
    ...(on ? { on: on.toString() } : {}),
    calls: [...line.calls],
    facts: [...line.facts],
    rate: text(line.rate),
    amount: text(line.amount),
  });
  const { deposit, payment, ifCancelled, ...rest } = of;
  return {
    ...rest,
    asOf: of.asOf.toString(),
    lines: of.lines.map(line),
    toOthers: of.toOthers.map(({ payee, ...owed }) => ({ ...line(owed), payee })),
    taxes: of.taxes.map(({ not, on: _, ...tax }) => ({
      ...tax,
      ...(not ? { not: [...not] } : {}),
      base: text(tax.base),
      amount: text(tax.amount),
    })),
    payers: of.payers.map((sum) => ({
      payer: sum.payer,
      net: text(sum.net),
      tax: text(sum.tax),
      total: text(sum.total),
    })),
    net: text(of.net),
    tax: text(of.tax),
    total: text(of.total),
    ...(deposit ? { deposit: showDeposit(deposit, of.currency) } : {}),
    ...(payment ? { payment: showPaymentTerms(payment, text) } : {}),
    entitlements: of.entitlements.map((drawn) => ({
      ...drawn,
      draws: [...drawn.draws],
      grants: drawn.grants.map((grant) => ({
        ...grant,
        draws: [...grant.draws],
        missed: [...grant.missed],
      })),
    })),
    fallen: [...of.fallen],
    late: of.late.map((part) => ({ ...part, dueOn: part.dueOn.toString() })),
    unpriced: [...of.unpriced],
    ...(ifCancelled
      ? { ifCancelled: { total: text(ifCancelled.total), lines: ifCancelled.lines.map(line) } }
      : {}),
  };
}

type Text = (minor: bigint) => string;

function showPaymentTerms(of: PaymentDue, text: Text): NonNullable<StatementJson['payment']> {
  const { due, early, instalments, ...rest } = of;
  return {
    ...rest,
    due: [...due],
    instalments: instalments.map(({ due, amount, ...part }) => ({
      ...part,
      ...(due ? { due: [...due] } : {}),
      amount: text(amount),
    })),
    ...(early ? { early: { ...early, until: [...early.until] } } : {}),
  };
}

/** What lines name a call, journey or cost by, where whoever asks has a name for it. */
const named = { id: z.string().min(1).max(60).optional() };

/** A call and how it turned out, for a preview. */
const previewCall = callInput
  .extend({
    ...named,
    played: spanInput.optional(),
    cancelled: wordInput.optional(),
    missed: wordInput.pick({ by: true, reason: true }).optional(),
  })
  .refine(
    ({ played, cancelled, missed }) => [played, cancelled, missed].filter(Boolean).length < 2,
    'turned out in two ways; say only one of played, cancelled, missed',
  );

/** A call that was moved, by the name it has in the preview. */
const previewMove = z.strictObject({ call: z.string().min(1).max(60), was: spanInput, moved: movedInput });

/** A tariff and the facts of an engagement, priced and forgotten. */
export const previewInput = z.strictObject({
  tariff: writtenTariffSchema,
  choices: z.record(z.string(), price).default({}),
  engagement: z.strictObject({
    calls: z.array(previewCall).max(5000).default([]),
    programme: z.array(workInput).max(500).default([]),
    legs: z.array(legInput.extend(named)).max(500).default([]),
    costs: z.array(costInput.extend(named)).max(500).default([]),
    soloist: soloistFacts.default({}),
    sharers: z.int().min(1).max(20).default(1),
    pianistClass: words.optional(),
    circumstances: z.array(words).max(20).default([]),
    holidays: z.array(day).max(400).default([]),
    /** False once it is agreed: held calls then no longer count. */
    offered: z.boolean().default(false),
    terms: z.array(term).max(100).default([]),
    /** Calls that were moved: where each stood before, and the word by which it was moved. */
    moves: z.array(previewMove).max(500).default([]),
    rolledOver: rolledOver.default({}),
    soFar: z.int().min(0).max(100_000).optional(),
  }),
  locale: locale.default('en'),
  asOf: instant.optional(),
});
export const previewAnswer = statementAnswer.omit({ toInvoice: true });
