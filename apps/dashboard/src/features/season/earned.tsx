// What is earned in a season, month by month; each opens to its engagements, and those to the lines of their statements.
import { season } from '../../catalogue/season.ts';
import { AmountLine } from '../../ui/index.ts';
import './owed.css';
import { type Earning, type Explained, earnedInAll, earnedWhys } from './whys.ts';

interface EarnedProps {
  earned: readonly Earning[];
  explained: Explained;
}

export function Earned({ earned, explained }: EarnedProps) {
  const months = earnedWhys(earned, explained);
  if (months.length === 0) return <p>{season('earnedNone')}</p>;
  return (
    <div className="earned">
      <p className="aside">{season('earnedUnder')}</p>
      <ul>
        {months.map((why) => (
          <li key={`${why.what} ${why.currency}`}>
            <AmountLine why={why} />
          </li>
        ))}
        {earnedInAll(months).map((why) => (
          <li key={why.currency} className="whole">
            <AmountLine why={why} />
          </li>
        ))}
      </ul>
    </div>
  );
}
