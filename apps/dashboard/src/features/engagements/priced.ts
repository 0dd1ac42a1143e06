// What a feature hands to the page to be shown as a statement.

import { type Statement, sentencesOf, type Tariff } from '@colla/rates';
import type { EngagementWholeJson } from '@colla/wire';
import { type StatementAnswerJson, showStatement } from '@colla/wire';
import type { ReactNode } from 'react';
import { callNames, payerNames } from './names.ts';

export interface Priced {
  readonly statement: StatementAnswerJson['statement'];
  readonly sentences: StatementAnswerJson['sentences'];
  readonly callNames: Readonly<Record<string, string>>;
  readonly payerNames: Readonly<Record<string, string>>;
  /** How many there are, so that what no line charges can be seen. */
  readonly journeys: number;
  readonly costs: number;
}

/** How the page shows a statement; features do not know one another. */
export type ShowPriced = (priced: Priced) => ReactNode;

/** A statement worked out here, with the names that its lines open to. */
export function pricedHere(
  { tariff, statement }: { tariff: Tariff; statement: Statement },
  engagement: EngagementWholeJson,
  locale: string,
): Priced {
  return pricedBy(
    { statement: showStatement(statement), sentences: sentencesOf(tariff, locale) },
    engagement,
  );
}

/** The same for one that the server worked out. */
export function pricedBy(
  { statement, sentences }: Pick<StatementAnswerJson, 'statement' | 'sentences'>,
  engagement: EngagementWholeJson,
): Priced {
  return {
    statement,
    sentences,
    callNames: callNames(engagement.calls),
    payerNames: payerNames(engagement),
    journeys: engagement.legs.length,
    costs: engagement.costs.length,
  };
}
