// Figures as people type them: minutes as 75, 1:15 or 1.25 h; shares and rates in per cent; counts and days plain.

import { type OrRefusal, Refusal } from '@colla/refusal';
import { tariffs as say } from '../../catalogue/tariffs.ts';
import type { FigureUnit } from './parameter.ts';

interface Bounds {
  readonly unit: FigureUnit;
  readonly least: number;
  readonly most: number;
}

/** Reads a figure in the unit the books keep it in: minutes, basis points, a count. Refuses one out of bounds. */
export function readFigure(text: string, bounds: Bounds, title: string): OrRefusal<number> {
  const plain = text.trim().replace('\u2212', '-');
  const figure = readers[bounds.unit](plain);
  if (figure === undefined) return notAFigure(text, bounds.unit);
  if (figure >= bounds.least && figure <= bounds.most) return figure;
  const [least, most] = [bounds.least, bounds.most].map((bound) => sayFigure(bound, bounds.unit));
  return new Refusal(
    'tariffs/out-of-range',
    say('outOfRange', { title, least: least ?? '', most: most ?? '', text }),
  );
}

const readers: Record<FigureUnit, (text: string) => number | undefined> = {
  minutes: readMinutes,
  share: (text) => scaled(text.replace(/\s*%$/, ''), 2),
  rate: readRate,
  count: (text) => scaled(text, 0),
  days: (text) => scaled(text, 0),
};

/** Rates of tax are finer than shares: 9.975 % is 997.5 basis points. */
function readRate(text: string): number | undefined {
  const hundredths = scaled(text.replace(/\s*%$/, ''), 4);
  return hundredths === undefined ? undefined : hundredths / 100;
}

function readMinutes(text: string): number | undefined {
  const clock = /^(\d{1,3}):([0-5]\d)$/.exec(text);
  if (clock) return Number(clock[1]) * 60 + Number(clock[2]);
  const hours = /^([\d.,]+)\s*(?:h|hours?)$/i.exec(text);
  if (!hours) return scaled(text.replace(/\s*(?:min|minutes?)$/i, ''), 0);
  const thousandths = scaled(hours[1] ?? '', 3);
  return thousandths === undefined ? undefined : Math.round((thousandths * 60) / 1000);
}

/** A decimal number as a whole number of its smallest step: `7.5` with two decimals is 750. */
function scaled(text: string, decimals: number): number | undefined {
  const match = /^(-?\d{1,9})(?:[.,](\d+))?$/.exec(text);
  const fraction = (match?.[2] ?? '').replace(/0+$/, '');
  if (!match || fraction.length > decimals) return undefined;
  return Number(`${match[1]}${fraction.padEnd(decimals, '0')}`);
}

function notAFigure(text: string, unit: FigureUnit): Refusal {
  return new Refusal('tariffs/not-a-figure', say(`not_${unit}`, { text }));
}

/** The figure as it stands in its field: a share of 750 basis points is `7.5`, a rate of 997.5 is `9.975`. */
export function sayFigure(figure: number, unit: FigureUnit): string {
  return unit === 'share' || unit === 'rate' ? String(Number((figure / 100).toFixed(4))) : String(figure);
}
