// A statement on the screen: every amount opens to its clause, its facts and its arithmetic.
import { statements as say } from '../../catalogue/statements.ts';
import { AmountLine } from '../../ui/index.ts';
import { Covered } from './covered.tsx';
import { PayerView } from './payer-view.tsx';
import { namedCalls, partsOf, type Reckoned, uncharged } from './reckoning.ts';
import './statement.css';
import { TermsView } from './terms-view.tsx';
import { statementWhy } from './whys.ts';

export function StatementView({ of }: { of: Reckoned }) {
  const parts = partsOf(of);
  return (
    <div className="statement">
      <Unpriced of={of} />
      <Uncharged of={of} />
      {parts.length === 0 && <p>{say('nothing')}</p>}
      {parts.map((part) => (
        <PayerView key={part.payer} part={part} of={of} named={parts.length > 1} />
      ))}
      {parts.length > 1 && (
        <div className="statement-total">
          <AmountLine why={statementWhy(of)} />
        </div>
      )}
      {of.statement.entitlements.map((drawn) => (
        <Covered key={drawn.clause} drawn={drawn} of={of} />
      ))}
      <TermsView of={of} />
    </div>
  );
}

/** Said before any figure: a total with a gap in it is not yet one. */
function Unpriced({ of }: { of: Reckoned }) {
  const { unpriced } = of.statement;
  if (unpriced.length === 0) return null;
  const calls = namedCalls(unpriced, of).join('; ');
  return (
    <p className="statement-warning" role="note">
      {say('unpriced', { calls, count: unpriced.length })}
    </p>
  );
}

/** A journey or a cost without a clause vanishes from the total: that it does must be seen. */
function Uncharged({ of }: { of: Reckoned }) {
  return uncharged(of).map((what) => (
    <p key={what} className="statement-warning" role="note">
      {say(`uncharged_${what}`, { count: of[what] ?? 0 })}
    </p>
  ));
}
