// The head of the score: months, the Monday of each week, and where today is.
import { season } from '../../catalogue/season.ts';
import { dayAt } from '../../local-time.ts';
import { sayDay, sayNumber } from '../../locale.ts';
import { type Ruler, widthOf, xOfDay } from './ruler.ts';

export const HEAD_HEIGHT = 44;

export function ScoreHead({ ruler, today }: { ruler: Ruler; today: string }) {
  const mondays = Array.from({ length: ruler.weeks }, (_, week) => dayAt(ruler.first + 7 * week));
  const width = widthOf(ruler);
  const here = xOfDay(today, ruler) + ruler.week / 14;
  const inSight = here >= 0 && here <= width;
  return (
    <svg className="score-head" width={width} height={HEAD_HEIGHT} aria-hidden="true">
      {mondays.map((monday, week) => (
        <text key={monday} className="monday" x={week * ruler.week + 3} y={38}>
          {sayNumber(Number(monday.slice(8)))}
        </text>
      ))}
      {mondays.filter(beginsMonth).map((monday) => (
        <text key={monday} className="month" x={xOfDay(monday, ruler) + 3} y={18}>
          {sayDay(monday, 'month')}
        </text>
      ))}
      {inSight && (
        <text className="today" x={here} y={38} textAnchor="middle">
          {season('today')}
        </text>
      )}
    </svg>
  );
}

function beginsMonth(monday: string, at: number): boolean {
  return at === 0 || Number(monday.slice(8)) <= 7;
}
