// Where the link of a stave stands: arrow keys move it along the stave and between staves, a pointer draws it near.
import { type KeyboardEvent, useRef, useState } from 'react';
import { dayOf } from '../../local-time.ts';
import type { Placed } from './drawing.ts';

interface CursorInput {
  placed: readonly Placed[];
  today: string;
  /** Whether this is the stave whose call is told. */
  told: boolean;
  onTell: (told: boolean) => void;
}

export function useCursor({ placed, today, told, onTell }: CursorInput) {
  const [call, setCall] = useState<string>();
  const [focus, setFocus] = useState(false);
  const seen = useRef(true);
  const chosen = placed.findIndex(({ mark }) => mark.call === call);
  const at = chosen >= 0 ? chosen : firstFrom(placed, today);
  const stand = (index: number, byKey: boolean) => {
    setCall(placed[index]?.mark.call);
    setFocus(byKey);
  };
  const point = (index: number | undefined) => {
    onTell(index !== undefined);
    if (index !== undefined && index !== at) stand(index, false);
  };
  return {
    on: placed[at],
    focus,
    point,
    press: (index: number | undefined, by: string) => {
      seen.current = by !== 'touch' || (told && index === at);
      point(index);
    },
    mayFollow: () => seen.current,
    allow: () => {
      seen.current = true;
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
