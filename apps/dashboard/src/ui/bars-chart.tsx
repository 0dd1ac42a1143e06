// A canvas of stacked bars. Chart.js comes by itself, after what is read first; until then its room is kept.
import { useEffect, useLayoutEffect, useRef, useSyncExternalStore } from 'react';
import type { Bars, BarsData } from './bars.ts';
import { schemeInSight, watchScheme } from './scheme.ts';

const loading = typeof window === 'undefined' ? undefined : import('./bars.ts');

interface BarsChartProps {
  /** What the picture shows, for who does not see it; its figures belong in a table beside it. */
  label: string;
  data: BarsData;
  width: number;
  height: number;
}

export function BarsChart({ label, data, width, height }: BarsChartProps) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const chart = useRef<Bars>(undefined);
  const scheme = useSyncExternalStore(watchScheme, schemeInSight);
  // Before the page is painted, and before it is printed.
  useLayoutEffect(() => {
    let left = false;
    const show = (bars: Bars) => bars.show(data, scheme, { width, height });
    if (chart.current) show(chart.current);
    else
      loading?.then(({ bars }) => {
        if (left || !canvas.current) return;
        chart.current ??= bars(canvas.current);
        show(chart.current);
      });
    return () => {
      left = true;
    };
  }, [data, scheme, width, height]);
  useEffect(
    () => () => {
      chart.current?.end();
      chart.current = undefined;
    },
    [],
  );
  return (
    <canvas
      ref={canvas}
      role="img"
      aria-label={label}
      width={width}
      height={height}
      style={{ width, height }}
    />
  );
}
