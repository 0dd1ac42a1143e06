// Stacked bars on a given axis, with a line that they are held against: the parts of Chart.js that this needs, and no
// more. Loaded on demand.
import { BarController, BarElement, CategoryScale, Chart, LinearScale, type Plugin } from 'chart.js';
import { colours, type Scheme } from './tokens.ts';

Chart.register(BarController, BarElement, CategoryScale, LinearScale);

/** How a series is drawn: each is told from the others without its colour. */
export type Pattern = 'filled' | 'open' | 'hatched';

export interface BarsData {
  readonly labels: readonly string[];
  readonly series: readonly {
    readonly label: string;
    readonly pattern: Pattern;
    readonly values: readonly number[];
  }[];
  readonly limit: number;
  /** The figure that the axis ends at. */
  readonly top: number;
  /** What is written over a bar that passes the limit. */
  readonly over: (value: number) => string;
}

export interface Bars {
  readonly show: (data: BarsData, scheme: Scheme, size: { width: number; height: number }) => void;
  readonly end: () => void;
}

export function bars(canvas: HTMLCanvasElement): Bars {
  let shown: { data: BarsData; scheme: Scheme } | undefined;
  const chart = new Chart<'bar', number[], string>(canvas, {
    type: 'bar',
    data: { labels: [], datasets: [] },
    options: {
      responsive: false,
      maintainAspectRatio: false,
      animation: false,
      events: [],
      layout: { padding: 0 },
      plugins: { legend: { display: false }, tooltip: { enabled: false } },
      datasets: { bar: { categoryPercentage: 1, barPercentage: 0.56, borderSkipped: false } },
      scales: { x: { display: false, stacked: true }, y: { display: false, stacked: true, min: 0 } },
    },
    plugins: [limitLine(() => shown)],
  });
  return {
    show: (data, scheme, { width, height }) => {
      shown = { data, scheme };
      chart.data.labels = [...data.labels];
      chart.data.datasets = data.series.map(({ label, pattern, values }) => ({
        label,
        data: [...values],
        ...inkOf(pattern, scheme, chart.ctx),
      }));
      if (chart.options.scales?.y) chart.options.scales.y.max = data.top;
      if (chart.width !== width || chart.height !== height) chart.resize(width, height);
      chart.update('none');
    },
    end: () => chart.destroy(),
  };
}

function inkOf(pattern: Pattern, scheme: Scheme, context: CanvasRenderingContext2D) {
  const ebony = colours.ebony[scheme];
  const fill = { filled: ebony, open: colours.ivory[scheme], hatched: hatch(scheme, context) }[pattern];
  return {
    backgroundColor: fill,
    borderColor: pattern === 'hatched' ? colours.wire[scheme] : ebony,
    borderWidth: 1,
  };
}

function hatch(scheme: Scheme, context: CanvasRenderingContext2D): CanvasPattern | string {
  const tile = document.createElement('canvas');
  tile.width = 6;
  tile.height = 6;
  const pen = tile.getContext('2d');
  if (!pen) return colours.ivory[scheme];
  pen.fillStyle = colours.ivory[scheme];
  pen.fillRect(0, 0, 6, 6);
  pen.strokeStyle = colours.wire[scheme];
  for (const shift of [-6, 0, 6]) {
    pen.moveTo(shift, 6);
    pen.lineTo(shift + 6, 0);
  }
  pen.stroke();
  return context.createPattern(tile, 'repeat') ?? colours.wire[scheme];
}

/** The limit as a dashed line, and over each bar that passes it what the bar comes to, where there is room. */
function limitLine(shown: () => { data: BarsData; scheme: Scheme } | undefined): Plugin<'bar'> {
  return {
    id: 'limit',
    afterDatasetsDraw: ({ ctx, scales, width }) => {
      const now = shown();
      const { x, y } = scales;
      if (!now || !x || !y || now.data.limit <= 0) return;
      ctx.save();
      ctx.strokeStyle = colours.plate[now.scheme];
      ctx.setLineDash([6, 4]);
      ctx.lineWidth = 1.5;
      const height = y.getPixelForValue(now.data.limit);
      ctx.beginPath();
      ctx.moveTo(0, height);
      ctx.lineTo(width, height);
      ctx.stroke();
      ctx.fillStyle = colours.feltRed[now.scheme];
      ctx.font = '600 14px "Source Serif 4", serif';
      ctx.textAlign = 'center';
      totals(now.data).forEach((total, at) => {
        const figure = now.data.over(total);
        if (total <= now.data.limit || ctx.measureText(figure).width > x.width / now.data.labels.length)
          return;
        ctx.fillText(figure, x.getPixelForValue(at), y.getPixelForValue(total) - 5);
      });
      ctx.restore();
    },
  };
}

function totals({ labels, series }: BarsData): number[] {
  return labels.map((_, at) => series.reduce((sum, { values }) => sum + (values[at] ?? 0), 0));
}
