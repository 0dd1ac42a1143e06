// The hours of each week below the staves, on their time axis, held against the weekly limit.

import type { WeekOfHours } from '@colla/invoicing';
import { useMemo } from 'react';
import { season } from '../../catalogue/season.ts';
import { sayHours, sayNumber } from '../../locale.ts';
import { BarsChart } from '../../ui/bars-chart.tsx';
import { minutesIn, WORKING } from './view.ts';

const PATTERNS = { played: 'filled', agreed: 'open', held: 'hatched' } as const;

interface HoursByWeekProps {
  weeks: readonly WeekOfHours[];
  /** Minutes of a week. */
  limit: number;
  /** Hours at the top of the axis. */
  top: number;
  width: number;
  height: number;
  label: string;
}

export function HoursByWeek({ weeks, limit, top, width, height, label }: HoursByWeekProps) {
  const data = useMemo(
    () => ({
      labels: weeks.map(({ monday }) => monday),
      series: WORKING.map((is) => ({
        label: season(is),
        pattern: PATTERNS[is],
        values: weeks.map((week) => week[is] / 60),
      })),
      limit: limit / 60,
      top,
      over: (hours: number) => sayHours(hours * 60),
    }),
    [weeks, limit, top],
  );
  return (
    <div className="score-hours">
      <BarsChart label={label} data={data} width={width} height={height} />
    </div>
  );
}

/** Hours at the top of the axis: the fullest week and the limit, with room above for a figure. */
export function topOf(weeks: readonly WeekOfHours[], limit: number): number {
  const fullest = Math.max(limit, ...weeks.map(minutesIn)) / 60;
  return Math.max(fullest * 1.25, 4);
}

export function HoursAxis({ height, top, limit }: { height: number; top: number; limit: number }) {
  const y = (hours: number) => height - (hours / top) * height;
  const hours = limit / 60;
  return (
    <div className="score-name score-axis" style={{ height }}>
      <span style={{ top: height }}>0 {season('hours')}</span>
      {limit > 0 && (
        <span className="limit" style={{ top: y(hours) }}>
          {season('limit', { hours: sayNumber(hours, Number.isInteger(hours) ? 0 : 2) })}
        </span>
      )}
    </div>
  );
}
