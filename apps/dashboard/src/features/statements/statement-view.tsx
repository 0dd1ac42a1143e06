// A statement on the screen: every amount opens to its clause, its facts and its arithmetic.
import { statements as say } from '../../catalogue/statements.ts';
import { Figure } from '../../ui/index.ts';
import { Covered } from './covered.tsx';
import { LineView } from './line-view.tsx';
import { namedCalls, type PayerPart, partsOf, type Reckoned, sentenceFor, uncharged } from './reckoning.ts';
import './statement.css';
import { TaxView } from './tax-view.tsx';
import { TermsView } from './terms-view.tsx';

export function StatementView({ of }: { of: Reckoned }) {
  const { statement } = of;
  const parts = partsOf(of);
  return (
    <div className="statement">
      <Unpriced of={of} />
      <Uncharged of={of} />
      {parts.length === 0 && <p>{say('nothing')}</p>}
      {parts.map((part) => (
        <PayerView key={part.payer} part={part} of={of} named={parts.length > 1} />
      ))}
      {parts.length > 1 && <Total of={of} amount={statement.total} />}
      {statement.entitlements.map((drawn) => (
        <Covered
          key={drawn.clause}
          drawn={drawn}
          sentence={sentenceFor(drawn.clause, of)}
          names={of.callNames}
        />
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

function PayerView({ part, of, named }: { part: PayerPart; of: Reckoned; named: boolean }) {
  const { currency } = of.statement;
  return (
    <section className="statement-payer">
      {named && <h3>{say('payer', { name: part.name })}</h3>}
      <ul className="statement-lines">
        {part.lines.map((line) => (
          <LineView key={line.key} line={line} of={of} />
        ))}
      </ul>
      {part.taxes.length > 0 && (
        <>
          <p className="statement-sum">
            <span>{say('net')}</span>
            <Figure amount={part.net} currency={currency} bare />
          </p>
          <ul className="statement-lines">
            {part.taxes.map((tax) => (
              <TaxView key={`${tax.clause} ${tax.rate} ${tax.code}`} tax={tax} of={of} />
            ))}
          </ul>
        </>
      )}
      <Total of={of} amount={part.total} />
    </section>
  );
}

function Total({ of, amount }: { of: Reckoned; amount: string }) {
  return (
    <p className="statement-sum total">
      <span>{say('total')}</span>
      <Figure amount={amount} currency={of.statement.currency} />
    </p>
  );
}
