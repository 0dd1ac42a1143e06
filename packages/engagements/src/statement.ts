// The statement of an engagement: the one pricing function, given the engagement as its own facts.

import type { Temporal } from '@colla/calendar';
import { type Facts, type Statement, statement, type Tariff, type Term } from '@colla/rates';
import {
  type Agreement,
  type Engagement,
  type EngagementFacts,
  hasAgreement,
  type Quote,
} from './engagement.ts';

/**
 * What is fixed outside the engagement: the reader's locale, and for what is not agreed yet the holidays and terms of
 * the place, and how many engagements of the same payer were agreed before it in its season.
 */
export interface House {
  readonly locale: string;
  readonly holidays: readonly string[];
  readonly terms: readonly Term[];
  readonly soFar?: number;
}

/**
 * What a price may depend on, read off an engagement. Until it is agreed, held calls are priced as offered; once it
 * is, what is fixed outside it is as it was that day.
 */
export function factsOf(engagement: EngagementFacts, house: House, agreement?: Agreement): Facts {
  const { holidays, terms, soFar } = agreement ?? house;
  return {
    ...engagement,
    offered: agreement === undefined,
    ...(agreement ? { agreedAt: agreement.agreedAt, agreedCalls: agreement.calls } : {}),
    ...(agreement?.deposit ? { agreedDeposit: agreement.deposit } : {}),
    holidays: new Set(holidays),
    terms,
    ...(soFar === undefined ? {} : { soFar }),
  };
}

/** What the engagement costs at `asOf` under its agreement. Pure. */
export function statementUnder(
  engagement: EngagementFacts,
  agreement: Agreement,
  asOf: Temporal.ZonedDateTime,
  house: House,
): Statement {
  return statement(
    factsOf(engagement, house, agreement),
    { tariff: agreement.tariff, locale: house.locale },
    asOf,
  );
}

/** What it would cost as offered under a tariff. Pure. */
export function statementOffered(
  engagement: EngagementFacts,
  tariff: Tariff,
  asOf: Temporal.ZonedDateTime,
  house: House,
): Statement {
  return statement(factsOf(engagement, house), { tariff, locale: house.locale }, asOf);
}

/** The tariff an engagement stands under: agreed, or quoted; undefined for a mere inquiry. */
export function termsOf(engagement: Engagement): Agreement | Quote | undefined {
  if (hasAgreement(engagement)) return engagement.agreement;
  return engagement.stage === 'quoted' ? engagement.quote : undefined;
}

/** The statement as the engagement stands: agreed, or as quoted; undefined for a mere inquiry. */
export function statementOf(
  engagement: Engagement,
  asOf: Temporal.ZonedDateTime,
  house: House,
): Statement | undefined {
  if (hasAgreement(engagement)) return statementUnder(engagement, engagement.agreement, asOf, house);
  return engagement.stage === 'quoted'
    ? statementOffered(engagement, engagement.quote.tariff, asOf, house)
    : undefined;
}
