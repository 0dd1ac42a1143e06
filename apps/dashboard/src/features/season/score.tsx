// The season score: staves from left to right over the weeks, money told beside each, and below them on the same axis
// the hours of each week.

import { dayNumber } from '@colla/calendar';
import type { SeasonScoreJson } from '@colla/wire';
import { useEffect, useMemo, useRef, useState } from 'react';
import { season } from '../../catalogue/season.ts';
import { sayHours } from '../../locale.ts';
import { useGeometry } from './geometry.ts';
import { HoursAxis, HoursByWeek, topOf } from './hours-chart.tsx';
import { ScoreHead } from './score-head.tsx';
import './score.css';
import type { WeekOfHours } from '@colla/invoicing';
import { heightOf, xOfDay } from './ruler.ts';
import { ScoreName } from './score-name.tsx';
import { ScoreStave } from './score-stave.tsx';
import type { StaveJson } from './view.ts';
import type { Explained } from './whys.ts';

/** Below this height of a stave its name and its money stand on one line. */
const TIGHT = 36;

interface ScoreProps {
  score: SeasonScoreJson;
  staves: readonly StaveJson[];
  weeks: readonly WeekOfHours[];
  today: string;
  explained: Explained;
}

export function Score({ score, staves, weeks, today, explained }: ScoreProps) {
  const box = useRef<HTMLElement>(null);
  const [told, setTold] = useState<string>();
  const first = dayNumber(weeks[0]?.monday ?? score.season.from);
  const { names, ruler, chart } = useGeometry(box, { first, weeks: weeks.length, staves: staves.length });
  useEffect(() => {
    // The last week stays in sight, for what has just been played.
    if (box.current) box.current.scrollLeft = xOfDay(today, ruler) - ruler.week;
  }, [today, ruler]);
  const top = useMemo(() => topOf(weeks, score.weeklyLimit), [weeks, score.weeklyLimit]);
  return (
    <section
      ref={box}
      className={heightOf(ruler) < TIGHT ? 'score tight' : 'score'}
      aria-label={season('score')}
      style={{ gridTemplateColumns: `${names}px max-content`, scrollPaddingLeft: names }}
    >
      <div className="score-name" />
      <ScoreHead ruler={ruler} today={today} />
      {staves.map((stave) => (
        <StaveRow key={stave.party} stave={stave} explained={explained}>
          <ScoreStave
            stave={stave}
            ruler={ruler}
            today={today}
            told={told === stave.party}
            onTell={setTold}
          />
        </StaveRow>
      ))}
      <HoursAxis height={chart} top={top} limit={score.weeklyLimit} />
      <HoursByWeek
        weeks={weeks}
        limit={score.weeklyLimit}
        top={top}
        width={ruler.week * ruler.weeks}
        height={chart}
        label={season('hoursChart', { limit: sayHours(score.weeklyLimit) })}
      />
    </section>
  );
}

interface StaveRowProps {
  stave: StaveJson;
  explained: Explained;
  children: React.ReactNode;
}

function StaveRow({ stave, explained, children }: StaveRowProps) {
  return (
    <>
      <ScoreName stave={stave} explained={explained} />
      {children}
    </>
  );
}
