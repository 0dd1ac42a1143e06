import { readInstant } from '@colla/calendar';
import { type Engagement, hasAgreement, statementOf } from '@colla/engagements';
import { type Asked, billable, payersOf } from '@colla/invoicing';
import { toDecimal } from '@colla/money';
import { type Statement, sentencesOf, statement } from '@colla/rates';
import { readPreview, type StatementAnswerJson, showSentences, showStatement } from '@colla/wire';
import type { Handlers } from '../answer.ts';
import { houseOf } from '../move.ts';
import { found, must, noTerms } from '../refusals.ts';

export const statements = {
  getStatement: async ({ params: { id }, query, books, now }) => {
    const [organisation, kept, asked] = await Promise.all([
      books.organisation(),
      books.engagement(id),
      books.askedOf(id),
    ]);
    const engagement = found(kept, 'engagement');
    const asOf =
      query.asOf === undefined
        ? now.toZonedDateTimeISO(organisation.zone)
        : must(readInstant(query.asOf), '/asOf');
    const house = await houseOf(engagement, { organisation, books });
    const priced = must(statementOf(engagement, asOf, house) ?? noTerms);
    return {
      statement: showStatement(priced),
      sentences: showSentences(engagement, organisation.locale),
      toInvoice: toInvoice(engagement, priced, asked),
    };
  },

  previewStatement: async ({ body, now }) => {
    const { facts, tariff, asOf = now.toZonedDateTimeISO('UTC') } = must(readPreview(body));
    const { locale } = body;
    return {
      statement: showStatement(statement(facts, { tariff, locale }, asOf)),
      sentences: sentencesOf(tariff, locale),
    };
  },
} satisfies Partial<Handlers>;

/** Nothing can be asked for before it is agreed. */
function toInvoice(
  engagement: Engagement,
  priced: Statement,
  asked: readonly Asked[],
): StatementAnswerJson['toInvoice'] {
  if (!hasAgreement(engagement)) return [];
  return payersOf(priced, asked).map((payer) => ({
    payer,
    total: toDecimal(billable(priced, payer, asked).total, priced.currency),
  }));
}
