import { readParty, readPartyChange, showPage, showParty } from '@colla/wire';
import type { Handlers } from '../answer.ts';
import { found } from '../refusals.ts';

export const parties = {
  listParties: async ({ query, books }) => showPage(await books.parties(query), showParty),

  addParty: async ({ body, books, newId }) => {
    const party = readParty(body, newId());
    await books.saveParty(party);
    return showParty(party);
  },

  getParty: async ({ params, books }) => showParty(found(await books.party(params.id), 'party')),

  changeParty: async ({ params, body, books }) => {
    const party = readPartyChange(found(await books.lockParty(params.id), 'party'), body);
    await books.saveParty(party);
    return showParty(party);
  },
} satisfies Partial<Handlers>;
