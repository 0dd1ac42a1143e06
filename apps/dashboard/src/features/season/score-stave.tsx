// One stave of the score: five lines, its calls, and one link that stands on one call at a time. Arrow keys move the
// link along the stave and between staves, a pointer draws it to the nearest call, Enter opens the engagement.
import { memo, type PointerEvent, useMemo } from 'react';
import { season } from '../../catalogue/season.ts';
import { draw, nearest } from './drawing.ts';
import { heightOf, LINE_HOURS, type Ruler, widthOf, xOfDay, yOfLine } from './ruler.ts';
import { ScoreCursor } from './score-cursor.tsx';
import { useCursor } from './use-cursor.ts';
import { STANDINGS, type StaveJson } from './view.ts';

interface ScoreStaveProps {
  stave: StaveJson;
  ruler: Ruler;
  today: string;
  /** Whether a call of this stave is told; one stave tells at a time. */
  told: boolean;
  onTell: (party: string | undefined) => void;
}

export const ScoreStave = memo(function ScoreStave({ stave, ruler, today, told, onTell }: ScoreStaveProps) {
  const drawing = useMemo(() => draw(stave.marks, ruler), [stave.marks, ruler]);
  const cursor = useCursor({
    placed: drawing.placed,
    today,
    told,
    onTell: (tell) => onTell(tell ? stave.party : undefined),
  });
  const callAt = (event: PointerEvent<HTMLElement>) => {
    const box = event.currentTarget.getBoundingClientRect();
    return nearest(drawing.placed, event.clientX - box.left, event.clientY - box.top);
  };
  return (
    <fieldset
      className="score-stave"
      aria-label={season('stave', { name: stave.name, count: stave.marks.length })}
      onPointerMove={(event) => cursor.point(callAt(event))}
      onPointerDown={(event) => cursor.press(callAt(event), event.pointerType)}
      onPointerLeave={({ pointerType }) => {
        // A finger that is lifted has left, and still wants to read.
        if (pointerType !== 'touch') cursor.point(undefined);
      }}
      onKeyDown={cursor.onKeyDown}
    >
      <svg width={widthOf(ruler)} height={heightOf(ruler)} aria-hidden="true">
        <path className="lines" d={linesOf(ruler)} />
        <path className="bars" d={barsOf(ruler)} />
        <path className="first" d={`M0.5 0v${heightOf(ruler)}`} />
        <path className="last" d={`M${widthOf(ruler) - 7.5} 0v${heightOf(ruler)}`} />
        <path className="final" d={`M${widthOf(ruler) - 2} 0v${heightOf(ruler)}`} />
        <path className="now" d={`M${xOfDay(today, ruler) + ruler.week / 14} 0v${heightOf(ruler)}`} />
        <path className="stems" d={drawing.stems} />
        {STANDINGS.map((is) => (
          <path key={is} className={`mark ${is}`} d={drawing.paths[is]} />
        ))}
      </svg>
      {cursor.on && (
        <ScoreCursor
          key={cursor.on.mark.call}
          on={cursor.on}
          ruler={ruler}
          pointed={told}
          focus={cursor.focus}
          mayFollow={cursor.mayFollow}
          onToldPress={cursor.allow}
        />
      )}
    </fieldset>
  );
});

function linesOf(ruler: Ruler): string {
  const width = widthOf(ruler);
  return LINE_HOURS.map((_, line) => `M0 ${yOfLine(line, ruler)}h${width}`).join('');
}

function barsOf(ruler: Ruler): string {
  const height = heightOf(ruler);
  return Array.from({ length: ruler.weeks }, (_, week) => `M${week * ruler.week + 0.5} 0v${height}`).join('');
}
