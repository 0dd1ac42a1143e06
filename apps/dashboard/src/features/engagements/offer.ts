// A quote before it is made: the version, the prices chosen in its bands, and what it all comes to.

import type { Temporal } from '@colla/calendar';
import {
  type Facts,
  type Kind,
  menu,
  readTariff,
  type Statement,
  statement,
  type Tariff,
  withChoices,
} from '@colla/rates';
import { type OrRefusal, refused } from '@colla/refusal';
import type { TariffWholeJson } from '@colla/wire';

type Version = TariffWholeJson['latest'];

/** A price that is agreed one by one: its clause, and the band it must lie in; decimal text. */
export interface OpenPrice {
  readonly clause: string;
  readonly sentence: string;
  readonly price: string;
  readonly from: string;
  readonly to: string;
}

/** The prices of a version that an agreement chooses. */
export function openPrices({ written, sentences }: Version): OpenPrice[] {
  return written.clauses.flatMap(({ id, kind, terms }) => {
    const parameter = Object.hasOwn(menu, kind) ? menu[kind as Kind].choice : undefined;
    const { band } = terms;
    if (parameter === undefined || !isBand(band)) return [];
    const sentence = sentences.find(({ clause }) => clause === id)?.sentence ?? id;
    return [{ clause: id, sentence, price: String(terms[parameter]), from: band.from, to: band.to }];
  });
}

function isBand(band: unknown): band is { from: string; to: string } {
  return typeof band === 'object' && band !== null && 'from' in band && 'to' in band;
}

export interface Offer {
  readonly tariff: Tariff;
  readonly statement: Statement;
}

/** What the engagement comes to under a version with the prices chosen; the refusal where one lies outside its band. */
export function offerOf(
  facts: Facts,
  { written, choices }: { written: Version['written']; choices: Readonly<Record<string, string>> },
  asOf: Temporal.ZonedDateTime,
  locale: string,
): OrRefusal<Offer> {
  const read = readTariff(written);
  if (refused(read)) return read;
  const tariff = withChoices(read, choices);
  if (refused(tariff)) return tariff;
  return { tariff, statement: statement(facts, { tariff, locale }, asOf) };
}
