// Beside each stave: whose it is, and in words and figures what money stands there.
import { season } from '../../catalogue/season.ts';
import { sayMoney } from '../../locale.ts';
import { isSome } from './sums.ts';
import type { StaveJson } from './view.ts';

export function ScoreName({ stave }: { stave: StaveJson }) {
  const owed = stave.money.filter((money) => isSome(money.owed));
  return (
    <div className="score-name">
      <strong>{stave.name}</strong>
      <span className="aside">
        {stave.toInvoice > 0 && <span>{season('toInvoice', { count: stave.toInvoice })}</span>}
        {stave.overdue > 0 && <span className="overdue">{season('overdue', { count: stave.overdue })}</span>}
        {owed.map(({ currency, owed }) => (
          <span key={currency} className="amount">
            {season('owed', { amount: sayMoney(owed, currency) })}
          </span>
        ))}
      </span>
    </div>
  );
}
