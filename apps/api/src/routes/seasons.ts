import type { Engagement } from '@colla/engagements';
import { seasonScore } from '@colla/invoicing';
import { readSeason, showPage, showSeason, showSeasonScore } from '@colla/wire';
import type { Handlers } from '../answer.ts';
import { found, must } from '../refusals.ts';

export const seasons = {
  listSeasons: async ({ query, books }) => showPage(await books.seasons(query), showSeason),

  addSeason: async ({ body, books, newId }) => {
    const season = must(readSeason(body, newId()));
    await books.saveSeason(season);
    return showSeason(season);
  },

  getSeasonScore: async ({ params, books, now }) => {
    const [organisation, kept] = await Promise.all([books.organisation(), books.season(params.id)]);
    const season = found(kept, 'season');
    const engagements = await books.engagementsBetween(season.from, season.to);
    const [invoices, names] = await Promise.all([
      books.invoicesOf(engagements.map(({ id }) => id)),
      books.partyNames(engagements.flatMap(partiesOf)),
    ]);
    const { zone, weeklyLimit } = organisation;
    const score = seasonScore(
      {
        season,
        engagements,
        invoices: invoices.map(({ invoice }) => invoice),
        paid: new Map(invoices.map(({ invoice, paid }) => [invoice.id, paid])),
        names,
        house: organisation,
        weeklyLimit,
      },
      now.toZonedDateTimeISO(zone),
    );
    return showSeasonScore(score);
  },
} satisfies Partial<Handlers>;

/** Whoever may give an engagement its stave. */
function partiesOf({ institutionParty, soloistParty, payers }: Engagement): string[] {
  return [institutionParty, soloistParty, ...Object.values(payers)].filter((id) => id !== undefined);
}
