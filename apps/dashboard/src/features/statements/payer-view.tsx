// What one payer owes: lines, taxes, and what they come to.
import { statements as say } from '../../catalogue/statements.ts';
import { AmountLine } from '../../ui/index.ts';
import { LineView } from './line-view.tsx';
import type { PayerPart, Reckoned } from './reckoning.ts';
import { instalmentsWhy, netWhy, payerWhy, taxWhy } from './whys.ts';

export function PayerView({ part, of, named }: { part: PayerPart; of: Reckoned; named: boolean }) {
  const instalments = instalmentsWhy(part, of);
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
          <AmountLine why={netWhy(part, of)} bare />
          <ul className="statement-lines">
            {part.taxes.map((tax) => (
              <li key={`${tax.clause} ${tax.name} ${tax.rate} ${tax.code}`}>
                <AmountLine why={taxWhy(tax, of)} bare />
              </li>
            ))}
          </ul>
        </>
      )}
      <div className="statement-total">
        <AmountLine why={payerWhy(part, of)} />
      </div>
      {instalments && <AmountLine why={instalments} />}
    </section>
  );
}
