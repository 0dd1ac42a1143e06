// One stave of the score: five lines, its calls, and one link that stands on one call at a time. Arrow keys move the
// link along the stave and between staves, a pointer draws it to the nearest call, Enter opens the engagement.
import {
  type KeyboardEvent,
  memo,
  type PointerEvent,
  useLayoutEffect,
  useMemo,
  useRef,
  useState,
} from 'react';
import { Link } from 'wouter';
import { season } from '../../catalogue/season.ts';
import { dayOf } from '../../local-time.ts';
import { draw, headPath, nearest, type Placed } from './drawing.ts';
import { headOf, heightOf, LINE_HOURS, type Ruler, widthOf, xOfDay, yOfLine } from './ruler.ts';
import { sayCall } from './say-call.ts';
import { STANDINGS, type StaveJson } from './view.ts';

interface ScoreStaveProps {
  stave: StaveJson;
  ruler: Ruler;
  today: string;
}

export const ScoreStave = memo(function ScoreStave({ stave, ruler, today }: ScoreStaveProps) {
  const drawing = useMemo(() => draw(stave.marks, ruler), [stave.marks, ruler]);
  const cursor = useCursor(drawing.placed, today);
  const onPointerMove = (event: PointerEvent<HTMLElement>) => {
    const box = event.currentTarget.getBoundingClientRect();
    cursor.point(nearest(drawing.placed, event.clientX - box.left, event.clientY - box.top));
  };
  return (
    <fieldset
      className="score-stave"
      aria-label={season('stave', { name: stave.name, count: stave.marks.length })}
      onPointerMove={onPointerMove}
      onPointerDown={onPointerMove}
      onPointerLeave={() => cursor.point(undefined)}
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
        <Cursor
          key={cursor.on.mark.call}
          on={cursor.on}
          ruler={ruler}
          pointed={cursor.pointed}
          focus={cursor.focus}
        />
      )}
    </fieldset>
  );
});

interface CursorProps {
  on: Placed;
  ruler: Ruler;
  pointed: boolean;
  /** Whether it was moved here by a key: then it takes the focus, and is read. */
  focus: boolean;
}

function Cursor({ on: { mark, x, y, length }, ruler, pointed, focus }: CursorProps) {
  const link = useRef<HTMLAnchorElement>(null);
  useLayoutEffect(() => {
    if (focus) link.current?.focus();
  }, [focus]);
  const head = headOf(ruler);
  const side = x > widthOf(ruler) / 2 ? 'leftward' : 'rightward';
  return (
    <Link
      ref={link}
      href={`/engagements/${mark.engagement}?call=${mark.call}`}
      className={`score-cursor ${side} ${pointed ? 'pointed' : ''}`}
      style={{ left: x - 6, top: y - head / 2 - 6, width: length + 12, height: head + 12 }}
    >
      <svg width={length + 12} height={head + 12} aria-hidden="true">
        <path d={headPath(3, head / 2 + 6, length + 6, head + 6)} />
      </svg>
      <span className="told">{sayCall(mark)}</span>
    </Link>
  );
}

function useCursor(placed: readonly Placed[], today: string) {
  const [call, setCall] = useState<string>();
  const [pointed, setPointed] = useState(false);
  const [focus, setFocus] = useState(false);
  const chosen = placed.findIndex(({ mark }) => mark.call === call);
  const at = chosen >= 0 ? chosen : firstFrom(placed, today);
  const stand = (index: number, byKey: boolean) => {
    setCall(placed[index]?.mark.call);
    setFocus(byKey);
  };
  return {
    on: placed[at],
    pointed,
    focus,
    point: (index: number | undefined) => {
      setPointed(index !== undefined);
      if (index !== undefined && index !== at) stand(index, false);
    },
    onKeyDown: (event: KeyboardEvent<HTMLElement>) => {
      const next = movedTo(event.key, at, placed.length);
      if (next !== undefined) stand(next, true);
      if (next !== undefined || toOtherStave(event)) event.preventDefault();
    },
  };
}

function firstFrom(placed: readonly Placed[], today: string): number {
  const ahead = placed.findIndex(({ mark }) => dayOf(mark.start) >= today);
  return ahead >= 0 ? ahead : placed.length - 1;
}

function movedTo(key: string, at: number, count: number): number | undefined {
  const to = { ArrowRight: at + 1, ArrowLeft: at - 1, Home: 0, End: count - 1 }[key];
  return to === undefined ? undefined : Math.min(Math.max(to, 0), count - 1);
}

function toOtherStave(event: KeyboardEvent<HTMLElement>): boolean {
  const step = { ArrowUp: -1, ArrowDown: 1 }[event.key];
  if (!step) return false;
  const staves = [...(event.currentTarget.closest('.score')?.querySelectorAll('.score-stave') ?? [])];
  const other = staves[staves.indexOf(event.currentTarget) + step];
  other?.querySelector<HTMLElement>('.score-cursor')?.focus();
  return true;
}

function linesOf(ruler: Ruler): string {
  const width = widthOf(ruler);
  return LINE_HOURS.map((_, line) => `M0 ${yOfLine(line, ruler)}h${width}`).join('');
}

function barsOf(ruler: Ruler): string {
  const height = heightOf(ruler);
  return Array.from({ length: ruler.weeks }, (_, week) => `M${week * ruler.week + 0.5} 0v${height}`).join('');
}
