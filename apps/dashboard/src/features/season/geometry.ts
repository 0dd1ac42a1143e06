// How large the score is drawn: to the width that there is, and while it is printed to one landscape page.
import { type RefObject, useEffect, useMemo, useState } from 'react';
import { flushSync } from 'react-dom';
import type { Ruler } from './ruler.ts';

export interface Geometry {
  /** Pixels of the column of names. */
  readonly names: number;
  readonly ruler: Ruler;
  readonly chart: number;
}

interface Extent {
  readonly first: number;
  readonly weeks: number;
  readonly staves: number;
}

/** What fits between the margins of a landscape page, of A4 and of Letter alike, in CSS pixels. */
const PAGE = { width: 960, height: 520 };

export function useGeometry(of: RefObject<HTMLElement | null>, { first, weeks, staves }: Extent): Geometry {
  const width = useWidth(of);
  const printing = usePrinting();
  return useMemo(
    () => (printing ? onPaper({ first, weeks, staves }) : onScreen(width, { first, weeks })),
    [width, printing, first, weeks, staves],
  );
}

/** Room for a long call on the last day. */
const BEYOND = 20;

export function onScreen(width: number, { first, weeks }: Omit<Extent, 'staves'>): Geometry {
  const narrow = width < 640;
  const names = narrow ? 116 : 232;
  const least = narrow ? 63 : 36;
  const week = Math.max(least, Math.floor((width - names - BEYOND) / weeks));
  return { names, ruler: { first, weeks, week, gap: narrow ? 10 : 11 }, chart: 128 };
}

export function onPaper({ first, weeks, staves }: Extent): Geometry {
  const names = 190;
  const chart = 84;
  // A stave takes seven gaps of height; 44 is the row of months above.
  const gap = Math.min(10, (PAGE.height - chart - 44) / Math.max(staves, 1) / 7);
  return { names, chart, ruler: { first, weeks, week: (PAGE.width - names) / weeks, gap } };
}

function useWidth(of: RefObject<HTMLElement | null>): number {
  const [width, setWidth] = useState(() => Math.min(window.innerWidth, 1344) - 48);
  useEffect(() => {
    if (!of.current) return;
    const observer = new ResizeObserver(([entry]) => {
      if (entry) setWidth(Math.floor(entry.contentRect.width));
    });
    observer.observe(of.current);
    return () => observer.disconnect();
  }, [of]);
  return width;
}

function usePrinting(): boolean {
  const [printing, setPrinting] = useState(false);
  useEffect(() => {
    // The page is taken as it stands when the event ends: what changes must have changed by then.
    const before = () => flushSync(() => setPrinting(true));
    const after = () => setPrinting(false);
    window.addEventListener('beforeprint', before);
    window.addEventListener('afterprint', after);
    return () => {
      window.removeEventListener('beforeprint', before);
      window.removeEventListener('afterprint', after);
    };
  }, []);
  return printing;
}
