import type { Temporal } from '@colla/calendar';
import type { Organisation } from '@colla/engagements';
import { readOrganisationChange, showOrganisation } from '@colla/wire';
import type { Handlers } from '../answer.ts';
import { booksBegun, must, refuse, yearNotOver } from '../refusals.ts';

export const organisations = {
  getOrganisation: async ({ books }) => showOrganisation(await books.organisation()),

  changeOrganisation: async ({ body, books, now }) => {
    const before = await books.lockOrganisation();
    const changed = must(readOrganisationChange(before, body));
    if (changed.currency !== before.currency && (await books.begun())) refuse(booksBegun(before));
    if (isAhead(changed, now)) refuse(yearNotOver);
    await books.changeOrganisation(changed);
    return showOrganisation(changed);
  },
} satisfies Partial<Handlers>;

/** A year is closed once its last day is over. */
function isAhead({ closedThrough, zone }: Organisation, now: Temporal.Instant): boolean {
  const today = now.toZonedDateTimeISO(zone).toPlainDate();
  return closedThrough !== undefined && closedThrough.until(today).sign <= 0;
}
