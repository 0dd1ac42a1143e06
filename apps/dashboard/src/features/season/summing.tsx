// The season in two sentences: its hours, its money.
import { season } from '../../catalogue/season.ts';
import { sayHours, sayMoney } from '../../locale.ts';
import { isOwing, minutesByStanding, moneyIn } from './sums.ts';
import type { StaveJson, WeekInView } from './view.ts';

export function Summing({ staves, weeks }: { staves: readonly StaveJson[]; weeks: readonly WeekInView[] }) {
  const minutes = minutesByStanding(weeks);
  const sums = moneyIn(staves).filter(isOwing);
  return (
    <p className="summing">
      {season('sumHours', {
        played: sayHours(minutes.played),
        agreed: sayHours(minutes.agreed),
        held: sayHours(minutes.held),
      })}{' '}
      {sums.length === 0 && season('sumNothing')}
      {sums
        .map(({ currency, toInvoice, owed, overdue }) =>
          season('sumMoney', {
            toInvoice: sayMoney(toInvoice, currency),
            owed: sayMoney(owed, currency),
            overdue: sayMoney(overdue, currency),
          }),
        )
        .join(' ')}
    </p>
  );
}
