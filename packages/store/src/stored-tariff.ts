// A tariff out of the books: read by the clauses' own schemas, once for each text.

import { readTariff, type Tariff } from '@colla/rates';
import { Refusal, refused } from '@colla/refusal';
import { Refused } from './refused.ts';

/** So many tariffs are kept in memory; the longest unused goes first. */
const KEPT = 500;
const read = new Map<string, Tariff>();

/** Reads the JSON text of a written tariff. Throws `Refused` where a clause of it cannot be read. */
export function storedTariff(text: string): Tariff {
  const known = read.get(text);
  if (known) read.delete(text);
  const tariff = known ?? readAnew(text);
  read.set(text, tariff);
  const oldest = read.size > KEPT ? read.keys().next() : undefined;
  if (oldest?.done === false) read.delete(oldest.value);
  return tariff;
}

function readAnew(text: string): Tariff {
  const written = JSON.parse(text) as { name?: unknown; version?: unknown };
  const tariff = readTariff(written);
  if (!refused(tariff)) return tariff;
  const { name, version } = written;
  throw new Refused(
    new Refusal(
      'store/unreadable-tariff',
      `Tariff “${String(name)}”, version ${String(version)}, is in the books but cannot be read. ${tariff.sentence}`,
      { tariff: String(name), why: tariff.code },
    ),
  );
}
