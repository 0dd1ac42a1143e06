// Every kind of clause keeps its own promises: its worked examples, a sentence, parameters that can be read back.

import { Temporal } from '@colla/calendar';
import { describe, expect, it } from 'vitest';
import type { z } from 'zod';
import { dueOn } from '../due.ts';
import { given } from '../given.ts';
import type { ClauseKind } from '../kind.ts';
import { POUNDS, pounds, priced, tariffOf } from '../priced.ts';
import { sentencesOf, type WrittenClause } from '../tariff.ts';
import { menu } from './index.ts';

const INVOICED = Temporal.PlainDate.from('2026-04-01');

const kinds: readonly ClauseKind<string, z.ZodType>[] = Object.values(menu) as never;

/** An example's clause, after those it needs. */
function clausesOf(kind: string, example: (typeof kinds)[number]['examples'][number]): WrittenClause[] {
  const terms = example.terms as WrittenClause['terms'];
  return [...(example.with ?? []), { id: 'it', kind, for: example.for ?? {}, terms }];
}

describe.each(kinds.map((kind) => [kind.title, kind] as const))('%s', (_, kind) => {
  it.each(kind.examples.map((example) => [example.case, example] as const))('%s', (_, example) => {
    const bill = priced(clausesOf(kind.kind, example), example.given);
    const owed = bill.lines
      .filter((line) => line.clause === 'it')
      .reduce((sum, line) => sum + line.amount, 0n);
    expect(pounds(owed)).toBe(example.owed);
    const { deposit, tax, payers, due, parts } = example.also ?? {};
    if (deposit !== undefined) expect(bill.deposit && pounds(bill.deposit.amount)).toBe(deposit);
    if (tax !== undefined) expect(pounds(bill.tax)).toBe(tax);
    if (payers !== undefined)
      expect(Object.fromEntries(bill.payers.map(({ payer, total }) => [payer, pounds(total)]))).toEqual(
        payers,
      );
    if (due !== undefined)
      expect(
        bill.payment && dueOn(bill.payment.due, given(example.given, POUNDS), INVOICED)?.toString(),
      ).toBe(due);
    if (parts !== undefined)
      expect(bill.payment?.instalments.map(({ amount }) => pounds(amount))).toEqual(parts);
  });

  it('says itself in one sentence that a client can read', () => {
    for (const example of kind.examples) {
      const said = sentencesOf(tariffOf(clausesOf(kind.kind, example)), 'en-GB').at(-1)?.sentence ?? '';
      expect(said).toMatch(/^[A-Z].+\.$/);
      expect(said).not.toMatch(/undefined|NaN|\[object| {2}|,\s*,/);
    }
  });

  it('refuses a parameter it does not know', () => {
    const schema = kind.schema(POUNDS);
    expect(schema.safeParse({ ...(kind.examples[0].terms as object), surprise: 1 }).success).toBe(false);
  });
});
