// One tax of a statement, and what it opens to.
import type { StatementJson } from '@colla/wire';
import { statements as say } from '../../catalogue/statements.ts';
import { sayFigure } from '../../locale.ts';
import { Figure, Opens } from '../../ui/index.ts';
import { type Reckoned, sentenceFor } from './reckoning.ts';
import { Why } from './why.tsx';

export function TaxView({ tax, of }: { tax: StatementJson['taxes'][number]; of: Reckoned }) {
  const { currency } = of.statement;
  const summary = (
    <>
      <span>{say(tax.inside ? 'inside' : 'added', { name: tax.name })}</span>
      <Figure amount={tax.amount} currency={currency} bare />
    </>
  );
  return (
    <li>
      <Opens summary={summary}>
        <Why
          sentence={sentenceFor(tax.clause, of)}
          rows={[
            [say('facts'), say('taxWhy', { base: sayFigure(tax.base, currency) })],
            [say('arithmetic'), tax.arithmetic],
          ]}
        />
      </Opens>
    </li>
  );
}
