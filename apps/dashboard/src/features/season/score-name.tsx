// Beside each stave: whose it is, and in words and figures what money stands there, whoever pays it.
import { season } from '../../catalogue/season.ts';
import { Amount, Filled } from '../../ui/index.ts';
import { isSome, moneyIn, type OwedMoney, partsOf } from './sums.ts';
import type { StaveJson } from './view.ts';
import { type Explained, owedWhy } from './whys.ts';

export function ScoreName({ stave, explained }: { stave: StaveJson; explained: Explained }) {
  const owed = moneyIn([stave]).filter((money) => isSome(money.owed));
  return (
    <div className="score-name">
      <strong>{stave.name}</strong>
      <span className="aside">
        {stave.toInvoice > 0 && <span>{season('toInvoice', { count: stave.toInvoice })}</span>}
        {stave.overdue > 0 && <span className="overdue">{season('overdue', { count: stave.overdue })}</span>}
        {owed.map((money) => (
          <span key={money.currency} className="amount">
            <Filled
              text={season('owed')}
              values={{ amount: <StaveOwed stave={stave} money={money} explained={explained} /> }}
            />
          </span>
        ))}
      </span>
    </div>
  );
}

interface StaveOwedProps {
  stave: StaveJson;
  money: OwedMoney;
  explained: Explained;
}

function StaveOwed({ stave, money, explained }: StaveOwedProps) {
  const why = owedWhy('owed', money, partsOf(stave), explained);
  return <Amount why={{ ...why, what: season('owedOnStave', { stave: stave.name }) }} />;
}
