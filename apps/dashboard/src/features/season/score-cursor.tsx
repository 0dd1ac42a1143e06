// The link that stands on one call of a stave, and what it tells of the call.
import { useLayoutEffect, useRef } from 'react';
import { Link } from 'wouter';
import { headPath, type Placed } from './drawing.ts';
import { headOf, type Ruler, widthOf } from './ruler.ts';
import { sayCall } from './say-call.ts';

interface CursorProps {
  on: Placed;
  ruler: Ruler;
  pointed: boolean;
  /** Whether it was moved here by a key: then it takes the focus, and is read. */
  focus: boolean;
  /** Whether a click may lead on: the first touch only shows the call, the second follows it. */
  mayFollow: () => boolean;
  /** What is told was pressed itself: it may be followed at once. */
  onToldPress: () => void;
}

export function ScoreCursor({
  on: { mark, x, y, length },
  ruler,
  pointed,
  focus,
  mayFollow,
  onToldPress,
}: CursorProps) {
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
      aria-label={sayCall(mark)}
      onClick={(event) => {
        // Enter is a click of no press.
        if (event.detail > 0 && !mayFollow()) event.preventDefault();
      }}
      style={{ left: x - 6, top: y - head / 2 - 6, width: length + 12, height: head + 12 }}
    >
      <svg width={length + 12} height={head + 12} aria-hidden="true">
        <path d={headPath(3, head / 2 + 6, length + 6, head + 6)} />
      </svg>
      <span
        className="told"
        aria-hidden="true"
        onPointerDown={(event) => {
          event.stopPropagation();
          onToldPress();
        }}
      >
        {sayCall(mark)}
      </span>
    </Link>
  );
}
