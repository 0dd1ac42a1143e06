// Tariffs on the wire: as written, with the sentences a person reads.

import { writtenTariffSchema } from '@colla/rates';
import { z } from 'zod';
import { day, id, words } from './words.ts';

export const sentence = z.object({ clause: z.string(), sentence: z.string() });

/** One version of a tariff. A version in use is never edited: another begins on a date. */
export const tariffVersion = z.object({
  version: z.int(),
  from: day,
  written: writtenTariffSchema,
  sentences: z.array(sentence),
});

export const tariff = z.object({
  id,
  name: z.string(),
  currency: z.string(),
  /** The version that is newest. */
  latest: tariffVersion,
});
export type TariffJson = z.output<typeof tariff>;

export const tariffWhole = tariff.extend({ versions: z.array(tariffVersion) });
export type TariffWholeJson = z.output<typeof tariffWhole>;

/** A tariff to be kept, or its next version. The server gives the version its number. */
export const tariffInput = writtenTariffSchema.omit({ version: true }).extend({ name: words });
