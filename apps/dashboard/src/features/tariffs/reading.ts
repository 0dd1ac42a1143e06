// What a draft says so far: the tariff that can be read of it, and what is wrong where it cannot.

import { readTariff, type Tariff } from '@colla/rates';
import { refused } from '@colla/refusal';
import { tariffs as say } from '../../catalogue/tariffs.ts';
import { type TariffDraft, type WrittenDraft, writeDraft } from './draft.ts';
import type { Reader, Slip } from './typed.ts';

export interface Reading {
  /** The draft as it would be kept. */
  readonly written: WrittenDraft;
  /** The clauses that can be read, as a tariff; undefined while its head cannot be. */
  readonly tariff: Tariff | undefined;
  /** Everything wrong, one slip for each clause at most beyond what cannot be read as typed. */
  readonly slips: readonly Slip[];
}

interface Placed {
  readonly clause: WrittenDraft['clauses'][number];
  readonly place: number;
}

/** Reads a draft. A clause that is wrong does not silence the others: they are read without it. */
export function readDraft(draft: TariffDraft, reader: Reader): Reading {
  const { written, slips } = writeDraft(draft, reader);
  const broken = new Set(slips.map(({ pointer }) => placeIn(pointer)));
  const placed = written.clauses
    .map((clause, place) => ({ clause, place }))
    .filter(({ place }) => !broken.has(place));
  // A tariff that has no name yet is priced all the same.
  const unnamed: Slip[] = written.name === '' ? [{ pointer: '/name', detail: say('nameMissing') }] : [];
  const head = { ...written, name: written.name || say('nameField') };
  const read = readWhatReads(head, placed, brokenNames(written, broken));
  return { written, tariff: read.tariff, slips: [...unnamed, ...slips, ...read.slips] };
}

/** Leaves out one wrong clause after another until the rest can be read. */
function readWhatReads(
  head: WrittenDraft,
  placed: readonly Placed[],
  brokenNames: ReadonlySet<string>,
): { tariff: Tariff | undefined; slips: Slip[] } {
  const slips: Slip[] = [];
  const silenced = new Set(brokenNames);
  let kept = placed;
  for (;;) {
    const tariff = readTariff({ ...head, version: 1, clauses: kept.map(({ clause }) => clause) });
    if (!refused(tariff)) return { tariff, slips };
    const index = placeIn(tariff.field ?? '');
    const wrong = index === undefined ? undefined : kept[index];
    // A clause that speaks of one which is itself wrong is not to blame.
    const owed = tariff.code === 'rates/no-such-clause' && silenced.has(String(tariff.facts.missing));
    const field = wrong ? (tariff.field ?? '').replace(/^\/clauses\/\d+/, '') : '';
    const pointer = wrong ? `/clauses/${wrong.place}${field}` : (tariff.field ?? '');
    if (!owed) slips.push({ pointer, detail: tariff.sentence });
    if (!wrong) return { tariff: undefined, slips };
    silenced.add(wrong.clause.id);
    kept = kept.filter((other) => other !== wrong);
  }
}

function brokenNames({ clauses }: WrittenDraft, broken: ReadonlySet<number | undefined>): Set<string> {
  return new Set(clauses.filter((_, place) => broken.has(place)).map(({ id }) => id));
}

function placeIn(pointer: string): number | undefined {
  const place = /^\/clauses\/(\d+)/.exec(pointer)?.[1];
  return place === undefined ? undefined : Number(place);
}

/** What is wrong at a pointer or, where `below`, anywhere under it. */
export function slipsAt(slips: readonly Slip[], pointer: string, { below = false } = {}): string | undefined {
  return slips.find((slip) => slip.pointer === pointer || (below && slip.pointer.startsWith(`${pointer}/`)))
    ?.detail;
}
