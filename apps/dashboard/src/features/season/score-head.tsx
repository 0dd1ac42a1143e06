// The head of the score: months, the Monday of each week, and where today is.

import { dayAt } from '@colla/calendar';
import { season } from '../../catalogue/season.ts';
import { sayDay, sayNumber } from '../../locale.ts';
import { type Ruler, widthOf, xOfDay } from './ruler.ts';

export const HEAD_HEIGHT = 44;

export function ScoreHead({ ruler, today }: { ruler: Ruler; today: string }) {
  const mondays = Array.from({ length: ruler.weeks }, (_, week) => dayAt(ruler.first + 7 * week));
  const width = widthOf(ruler);
  const here = xOfDay(today, ruler) + ruler.week / 14;
  const inSight = here >= 0 && here <= width;
  const apart = (monday: string) => !inSight || Math.abs(xOfDay(monday, ruler) + 9 - here) > 30;
  return (
    <svg className="score-head" width={width} height={HEAD_HEIGHT} aria-hidden="true">
      {mondays
        .filter(every(24 / ruler.week))
        .filter(apart)
        .map((monday) => (
          <text key={monday} className="monday" x={xOfDay(monday, ruler) + 3} y={38}>
            {sayNumber(Number(monday.slice(8)))}
          </text>
        ))}
      {mondays.filter(beginsMonth).map((monday) => (
        <text key={monday} className="month" x={xOfDay(monday, ruler) + 3} y={18}>
          {sayDay(monday, ruler.week < 24 ? 'monthShort' : 'month')}
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

/** Where weeks are narrow only some are numbered, so that the figures stand apart. */
function every(step: number): (monday: string, at: number) => boolean {
  return (_, at) => at % Math.ceil(step) === 0;
}

/** The first week names its month too, unless the next one follows at its heels. */
function beginsMonth(monday: string, at: number, mondays: readonly string[]): boolean {
  return isFirstOfMonth(monday) || (at === 0 && !isFirstOfMonth(mondays[1] ?? monday));
}

function isFirstOfMonth(monday: string): boolean {
  return Number(monday.slice(8)) <= 7;
}
