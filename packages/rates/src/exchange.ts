// A tariff as a file: written out, read in, and the JSON Schema that others can check it against.

import { currency } from '@colla/money';
import { granted, type OrRefusal, Refusal } from '@colla/refusal';
import { z } from 'zod';
import { menu } from './clauses/index.ts';
import type { ClauseKind } from './kind.ts';
import { readTariff, type Tariff, type WrittenTariff, writtenTariffSchema } from './tariff.ts';

/** The form of the file. It grows by one when a file of the new form would be misread by an older program. */
export const FORMAT = 1;

/** A tariff in a file: as written, with the form it is written in. */
export interface TariffFile extends WrittenTariff {
  readonly format: number;
}

/** A tariff for a file: reading it again gives this tariff. */
export function exportTariff({ written }: Tariff): TariffFile {
  return { format: FORMAT, ...written };
}

/**
 * Reads a file's tariff. Refuses, with the path, whatever `readTariff` refuses, and a form from the future: what an older
 * program does not know, it would leave out unsaid.
 */
export function importTariff(input: unknown): OrRefusal<Tariff> {
  if (typeof input !== 'object' || input === null || !('format' in input)) return readTariff(input);
  const { format, ...tariff } = input;
  if (format === FORMAT) return readTariff(tariff);
  const newer = typeof format === 'number' && format > FORMAT;
  return new Refusal(
    newer ? 'rates/from-the-future' : 'rates/malformed-tariff',
    newer
      ? `The tariff is written in form ${format}, and this program reads up to ${FORMAT}. Update the program to read it.`
      : `The tariff at “/format”: ${JSON.stringify(format)} is not a form that tariffs are written in. Give ${FORMAT}.`,
    { format: String(format) },
    '/format',
  );
}

/** A JSON Schema, as far as it is put together here. */
type Schema = Readonly<Record<string, unknown>>;

/**
 * The JSON Schema (draft 2020-12) of a tariff's file, put together from the menu. It says shapes and bounds; that clauses
 * do not contradict one another, and how many decimals a currency has, only `importTariff` can say.
 */
export function tariffJsonSchema(): Schema {
  const { $schema, properties, required, ...tariff } = schemaOf(writtenTariffSchema);
  const parts = properties as Readonly<Record<string, Schema>>;
  const { items, ...clauses } = parts.clauses as { items: Schema };
  return {
    $schema,
    title: 'Tariff',
    ...tariff,
    properties: {
      format: { const: FORMAT, title: 'Form of this file' },
      ...parts,
      clauses: { ...clauses, items: { oneOf: kinds.map((kind) => clauseSchema(kind, items)) } },
    },
    required,
  };
}

const kinds: readonly ClauseKind<string, z.ZodType>[] = Object.values(menu) as never;

/** A clause of one kind: what all clauses have, and the kind's own parameters. */
function clauseSchema(kind: ClauseKind<string, z.ZodType>, clause: Schema): Schema {
  const { $schema, ...terms } = schemaOf(kind.schema(granted(currency('EUR'))));
  const head = clause.properties as Readonly<Record<string, Schema>>;
  return {
    ...clause,
    title: kind.title,
    description: kind.help,
    properties: { ...head, kind: { const: kind.kind }, terms },
  };
}

function schemaOf(schema: z.ZodType): Schema {
  return z.toJSONSchema(schema, { io: 'input', target: 'draft-2020-12' }) as Schema;
}
