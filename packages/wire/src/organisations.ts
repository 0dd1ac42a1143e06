// Organisations and parties on the wire.

import { z } from 'zod';
import { addressLines, currencyCode, day, email, id, words } from './words.ts';

/** A term into which the place divides its year; both days belong to it. */
export const term = z.strictObject({ name: words, from: day, to: day });
export type TermJson = z.output<typeof term>;

export const organisation = z.object({
  id,
  name: z.string(),
  address: addressLines,
  email: z.string().optional(),
  taxNumber: z.string().optional(),
  payTo: addressLines,
  currency: currencyCode,
  zone: z.string(),
  locale: z.string(),
  paper: z.enum(['A4', 'Letter']),
  /** Minutes of calls a week beyond which the season says so. */
  weeklyLimit: z.int(),
  holidays: z.array(day),
  terms: z.array(term),
  /** The last day of the years that are closed; nothing is posted on it or before. */
  closedThrough: day.optional(),
});
export type OrganisationJson = z.output<typeof organisation>;

/** What is left out stays as it is; an empty e-mail address or tax number takes it away. */
export const organisationChange = z
  .strictObject({
    name: words,
    address: addressLines,
    email,
    taxNumber: z.string().max(60),
    payTo: addressLines,
    currency: currencyCode,
    zone: z.string().max(60),
    locale: z.string().max(35),
    paper: z.enum(['A4', 'Letter']),
    weeklyLimit: z.int().min(0).max(10_080),
    holidays: z.array(day).max(400),
    /** None may overlap another. */
    terms: z.array(term).max(100),
    /** The last day of a year that is over; an empty text opens all years again. */
    closedThrough: z.union([day, z.literal('')]),
  })
  .partial();

export const party = z.object({
  id,
  name: z.string(),
  address: addressLines,
  email: z.string().optional(),
  reference: z.string().optional(),
});
export type PartyJson = z.output<typeof party>;

const partyFields = z.strictObject({
  name: words,
  address: addressLines,
  email,
  reference: z.string().trim().max(120),
});

export const partyInput = partyFields.partial().required({ name: true });
/** What is left out stays as it is; an empty e-mail address or reference takes it away. */
export const partyChange = partyFields.partial();
