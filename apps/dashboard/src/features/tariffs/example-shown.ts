// A priced example as the page shows it: features do not know one another.

import { type Statement, sentencesOf, type Tariff } from '@colla/rates';
import { type StatementAnswerJson, showStatement } from '@colla/wire';
import type { ReactNode } from 'react';
import type { Example } from './example.ts';
import { namesOf } from './example-form.tsx';

/** A priced statement with the names of its calls. */
export interface ShownExample {
  readonly statement: StatementAnswerJson['statement'];
  readonly sentences: StatementAnswerJson['sentences'];
  readonly callNames: Record<string, string>;
  readonly payerNames: Record<string, string>;
}

/** The page says how a statement is shown. */
export type ShowStatement = (of: ShownExample) => ReactNode;

export function shownBy(
  statement: Statement,
  { tariff, example, locale }: { tariff: Tariff; example: Example; locale: string },
): ShownExample {
  return {
    statement: showStatement(statement),
    sentences: sentencesOf(tariff, locale),
    callNames: namesOf(example.calls),
    payerNames: {},
  };
}
