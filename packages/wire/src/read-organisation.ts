// What is changed of whoever keeps the books, and of the parties they work with.

import { readDay, zone } from '@colla/calendar';
import { type Organisation, type Party, termsApart } from '@colla/engagements';
import { currency } from '@colla/money';
import type { Term } from '@colla/rates';
import { type OrRefusal, Refusal, refused } from '@colla/refusal';
import type { z } from 'zod';
import type { organisationChange, partyChange, partyInput, TermJson } from './organisations.ts';
import { present, readEach, readTerm, without } from './read.ts';
import { isLocale } from './words.ts';

/** The organisation as changed; refuses a currency, zone, locale, holiday or term that is none. */
export function readOrganisationChange(
  organisation: Organisation,
  change: z.output<typeof organisationChange>,
): OrRefusal<Organisation> {
  const { terms: written, closedThrough, ...named } = change;
  const to = { ...organisation, ...present(named) };
  const money = currency(to.currency);
  if (refused(money)) return money.at('/currency');
  const place = zone(to.zone);
  if (refused(place)) return place.at('/zone');
  const holidays = readEach(to.holidays, '/holidays', readDay);
  if (refused(holidays)) return holidays;
  if (!isLocale(to.locale)) return noSuchLocale(to.locale);
  const terms = written ? readTerms(written) : to.terms;
  if (refused(terms)) return terms.at('/terms');
  const changed = { ...withoutEmpty(to, 'email', 'taxNumber'), currency: money, zone: place, terms };
  const closed = readClosed(changed, closedThrough);
  return refused(closed) ? closed.at('/closedThrough') : closed;
}

/** The organisation with the day up to which its years are closed; empty text stands for none. */
function readClosed(organisation: Organisation, closedThrough: string | undefined): OrRefusal<Organisation> {
  if (closedThrough === undefined) return organisation;
  const { closedThrough: _, ...open } = organisation;
  if (closedThrough === '') return open;
  const day = readDay(closedThrough);
  return refused(day) ? day : { ...open, closedThrough: day };
}

function readTerms(written: readonly TermJson[]): OrRefusal<readonly Term[]> {
  const terms = readEach(written, '', readTerm);
  return refused(terms) ? terms : termsApart(terms);
}

function noSuchLocale(name: string): Refusal {
  return new Refusal(
    'organisations/unknown-locale',
    `“${name}” is not a language this program can write figures in. Give a language, or a language with its country, such as en or de-AT.`,
    { locale: name },
    '/locale',
  );
}

export function readParty(input: z.output<typeof partyInput>, id: string): Party {
  return readPartyChange({ id, name: input.name, address: [] }, input);
}

export function readPartyChange(party: Party, change: z.output<typeof partyChange>): Party {
  return withoutEmpty({ ...party, ...present(change) }, 'email', 'reference');
}

/** An empty text stands for none. */
function withoutEmpty<Of extends object>(of: Of, ...keys: (keyof Of)[]): Of {
  return without(of, (key, value) => value === '' && keys.includes(key));
}
