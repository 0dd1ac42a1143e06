// What a feature hands to the page to be shown as a statement.

import { asAgreed, dueOn, type EventDay, type Statement, sentencesOf, type Tariff } from '@colla/rates';
import type { EngagementWholeJson, OrganisationJson } from '@colla/wire';
import { type StatementAnswerJson, showStatement } from '@colla/wire';
import type { ReactNode } from 'react';
import { factsOf, type House } from './facts.ts';
import { callNames, payerNames } from './names.ts';
import { isMore, stepReached } from './steps.ts';

export interface Priced {
  readonly statement: StatementAnswerJson['statement'];
  readonly sentences: StatementAnswerJson['sentences'];
  readonly callNames: Readonly<Record<string, string>>;
  readonly payerNames: Readonly<Record<string, string>>;
  /** How many there are, so that what no line charges can be seen. */
  readonly journeys: number;
  readonly costs: number;
  /** The day of the deposit; none where there is no deposit, or its event has no day yet. */
  readonly depositDue?: string;
  /** True once nothing of it will be asked for: it is all paid, or came to an end. */
  readonly over: boolean;
}

/** How the page shows a statement; features do not know one another. */
export type ShowPriced = (priced: Priced) => ReactNode;

/** A statement worked out here, with the names that its lines open to. */
export function pricedHere(
  { tariff, statement }: { tariff: Tariff; statement: Statement },
  engagement: EngagementWholeJson,
  organisation: OrganisationJson,
): Priced {
  return pricedBy(
    { statement: showStatement(statement), sentences: sentencesOf(tariff, organisation.locale) },
    engagement,
    organisation,
  );
}

/** The same for one that the server worked out. */
export function pricedBy(
  { statement, sentences, toInvoice = [] }: Partial<StatementAnswerJson> & PricedText,
  engagement: EngagementWholeJson,
  house: House,
): Priced {
  const day = depositDay(statement, engagement, house);
  return {
    statement,
    sentences,
    callNames: callNames(engagement.calls),
    payerNames: payerNames(engagement),
    journeys: engagement.legs.length,
    costs: engagement.costs.length,
    ...(day === undefined ? {} : { depositDue: day }),
    over: isOver(engagement, toInvoice),
  };
}

type PricedText = Pick<StatementAnswerJson, 'statement' | 'sentences'>;

/** The day its rule names, by the calls as they were agreed; a quote has no day of agreement yet. */
function depositDay(
  { deposit }: PricedText['statement'],
  engagement: EngagementWholeJson,
  house: House,
): string | undefined {
  // The events are those of the tariff, which the server has read; the wire says them as words.
  const due = deposit?.due as readonly EventDay[] | undefined;
  return due && dueOn(due, asAgreed(factsOf(engagement, house)))?.toString();
}

function isOver(engagement: EngagementWholeJson, toInvoice: StatementAnswerJson['toInvoice']): boolean {
  if (engagement.stage === 'cancelled') return true;
  const left = toInvoice.some(({ total }) => isMore(total));
  return stepReached(engagement, left) === 'paid';
}
