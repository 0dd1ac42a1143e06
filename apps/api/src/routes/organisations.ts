import { readOrganisationChange, showOrganisation } from '@colla/wire';
import type { Handlers } from '../answer.ts';
import { must } from '../refusals.ts';

export const organisations = {
  getOrganisation: async ({ books }) => showOrganisation(await books.organisation()),

  changeOrganisation: async ({ body, books }) => {
    const changed = must(readOrganisationChange(await books.lockOrganisation(), body));
    await books.changeOrganisation(changed);
    return showOrganisation(changed);
  },
} satisfies Partial<Handlers>;
