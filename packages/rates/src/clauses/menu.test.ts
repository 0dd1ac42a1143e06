// Every kind of clause keeps its own promises: its worked examples, a sentence, parameters that can be read back.

import { Temporal } from '@colla/calendar';
import { currency, toDecimal } from '@colla/money';
import { granted } from '@colla/refusal';
import { describe, expect, it } from 'vitest';
import type { z } from 'zod';
import { given } from '../given.ts';
import type { ClauseKind } from '../kind.ts';
import { statement } from '../statement.ts';
import { readTariff, sentencesOf } from '../tariff.ts';
import { menu } from './index.ts';

const pounds = granted(currency('GBP'));
const asOf = Temporal.ZonedDateTime.from('2026-07-01T12:00[Europe/London]');
const kinds: readonly ClauseKind<string, z.ZodType>[] = Object.values(menu) as never;

function tariffOf(kind: string, example: (typeof kinds)[number]['examples'][number]) {
  const clause = { id: 'it', kind, for: example.for ?? {}, terms: example.terms };
  return granted(
    readTariff({
      name: 'Example',
      currency: 'GBP',
      version: 1,
      from: '2026-01-01',
      clauses: [...(example.with ?? []), clause],
    }),
  );
}

describe.each(kinds.map((kind) => [kind.title, kind] as const))('%s', (_, kind) => {
  it.each(kind.examples.map((example) => [example.case, example] as const))('%s', (_, example) => {
    const bill = statement(
      given(example.given, pounds),
      { tariff: tariffOf(kind.kind, example), locale: 'en-GB' },
      asOf,
    );
    const owed = bill.lines
      .filter((line) => line.clause === 'it')
      .reduce((sum, line) => sum + line.amount, 0n);
    expect(toDecimal(owed, pounds)).toBe(example.owed);
  });

  it('says itself in one sentence that a client can read', () => {
    for (const example of kind.examples) {
      const said = sentencesOf(tariffOf(kind.kind, example), 'en-GB').at(-1)?.sentence ?? '';
      expect(said).toMatch(/^[A-Z].+\.$/);
      expect(said).not.toMatch(/undefined|NaN|\[object| {2}|,\s*,/);
    }
  });

  it('refuses a parameter it does not know', () => {
    const schema = kind.schema(pounds);
    expect(schema.safeParse({ ...(kind.examples[0].terms as object), surprise: 1 }).success).toBe(false);
  });
});
