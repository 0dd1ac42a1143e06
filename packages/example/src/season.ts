// The example season: half a year of one freelance pianist around `now`, told through the moves of the domain.

import { type Season, season, type Temporal } from '@colla/calendar';
import type { Engagement, Organisation, Party } from '@colla/engagements';
import type { InvoiceDraft, Payment } from '@colla/invoicing';
import type { Tariff } from '@colla/rates';
import { granted } from '@colla/refusal';
import { billAll, inIssueOrder, receiveAll, settled } from './bill.ts';
import { castParties, pianist, ZONE } from './cast.ts';
import { type Clock, clockAt } from './clock.ts';
import { engage, engageFurther, type Stage } from './engage.ts';
import { story } from './story.ts';
import { exampleTariffs } from './tariffs.ts';

/** Everything a book needs to hold the season, in the order in which it can be saved. */
export interface ExampleSeason {
  /** What the organisation changes of its own page. */
  readonly organisation: Omit<Organisation, 'id'>;
  readonly parties: readonly Party[];
  /** Versions in order: a tariff that has two comes twice under one id. */
  readonly tariffs: readonly { readonly id: string; readonly tariff: Tariff }[];
  readonly season: Season;
  readonly engagements: readonly Engagement[];
  /** In the order of issue. */
  readonly invoices: readonly {
    readonly id: string;
    readonly draft: InvoiceDraft;
    readonly series: string;
  }[];
  readonly payments: readonly Payment[];
}

/** The weeks of the season before and after the present one: 26 with it. */
const WEEKS_BEFORE = 15;
const WEEKS_AFTER = 10;

/** The season as it stands at `now`. Pure: the same ids and the same instant tell the same story. */
export function exampleSeason(given: { newId: () => string; now: Temporal.ZonedDateTime }): ExampleSeason {
  const { newId } = given;
  const clock = clockAt(given.now.withTimeZone(ZONE));
  const span = spanOf(newId(), clock);
  const organisation = pianist(yearsOf(span));
  const house = { id: '', ...organisation };
  const parties = castParties(newId);
  const tariffs = tariffsFor(span, clock);
  const { locale, holidays, terms } = organisation;
  const stage: Stage = { newId, clock, locale, holidays, terms, parties, tariffs };
  const tellings = story.map((told) => {
    const engagement = engage(told, stage);
    const billed = billAll(engagement, told, stage, house);
    return { told, engagement: engageFurther(engagement, told, stage), billed };
  });
  const billed = inIssueOrder(tellings.flatMap(({ billed }) => billed));
  const payments = billed.flatMap((invoice) => receiveAll(invoice, stage));
  return {
    organisation,
    parties: Object.values(parties),
    tariffs: tariffsKept(tariffs, newId),
    season: span,
    engagements: tellings.map(({ told, engagement }) =>
      settled(engagement, told, { billed, payments, stage, house }),
    ),
    invoices: billed.map(({ id, draft, series }) => ({ id, draft, series })),
    payments,
  };
}

/** The 26 weeks around the present one. */
export function spanOf(id: string, clock: Clock): Season {
  const from = clock.day([-WEEKS_BEFORE, 'mon']);
  const to = clock.day([WEEKS_AFTER, 'sun']);
  const name = from.year === to.year ? `Season ${from.year}` : `Season ${from.year}/${to.year}`;
  return granted(season({ id, name, from, to }));
}

/** The years the season touches, and one more at each end, for holidays near its edges. */
export function yearsOf({ from, to }: Season): number[] {
  const first = from.year - 1;
  return Array.from({ length: to.year + 2 - first }, (_, index) => first + index);
}

/** Old prices from the year before; new ones from the month in which the season has been seven weeks old. */
export function tariffsFor({ from }: Season, clock: Clock) {
  return exampleTariffs({
    oldPrices: from.with({ month: 1, day: 1 }).subtract({ years: 1 }),
    newPrices: clock.day([-8, 'mon']).with({ day: 1 }),
  });
}

/** Each version beside the id its tariff is kept under. */
export function tariffsKept(
  tariffs: Stage['tariffs'],
  newId: () => string,
): { readonly id: string; readonly tariff: Tariff }[] {
  return Object.values(tariffs).flatMap((versions) => {
    const id = newId();
    return versions.map((tariff) => ({ id, tariff }));
  });
}
