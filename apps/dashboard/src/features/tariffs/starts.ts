// From what a new tariff can start: nothing, one of the examples, a tariff that is there, a file.

import { Temporal } from '@colla/calendar';
import { type Currency, measure } from '@colla/money';
import { readTariff, type WrittenTariff } from '@colla/rates';
import { granted, refused } from '@colla/refusal';
import { tariffs as say } from '../../catalogue/tariffs.ts';
import { spokenLocale } from '../../locale.ts';
import { openDraft, type TariffDraft } from './draft.ts';

/** The examples come by themselves: who writes a tariff of their own does not wait for them. */
export const STARTS = ['hours', 'recital', 'rounds', 'school', 'church', 'pay'] as const;
export type Start = (typeof STARTS)[number];

export function isStart(name: string | null): name is Start {
  return STARTS.some((start) => start === name);
}

/** An example in the money of the house, where its figures can be written in it. */
export async function exampleStart(name: Start, { from, money }: { from: string; money: string }) {
  const { startingTariff } = await import('@colla/example/tariffs');
  const written = startingTariff(name, from);
  const ours = { ...written, currency: money };
  return draftOf(refused(readTariff(ours)) ? written : ours);
}

/** A tariff once more for another season: under a new name, from the next return of the day on which it began. */
export function seasonStart(written: WrittenTariff, today: string): TariffDraft {
  return draftOf({
    ...written,
    name: say('duplicateName', { name: written.name }),
    from: nextReturn(written.from, today),
  });
}

/** A tariff as written, opened to be looked through and kept. */
export function draftOf(written: WrittenTariff): TariffDraft {
  const money: Currency = granted(measure(written.currency));
  return openDraft(written, { currency: money, locale: spokenLocale() });
}

/** The first return of a day, years later, that is after today; a year later at least. */
function nextReturn(day: string, today: string): string {
  const first = Temporal.PlainDate.from(day);
  const passed = Math.max(0, Temporal.PlainDate.from(today).year - first.year);
  const candidates = [passed, passed + 1].map((years) => first.add({ years: Math.max(1, years) }).toString());
  return candidates.find((candidate) => candidate > today) ?? today;
}
