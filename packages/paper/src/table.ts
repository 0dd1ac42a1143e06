// The table: heads over a thin rule, rows parted by space alone. Each column is as wide as its widest figure.

import { type Band, beside, ruled, tied, together } from './band.ts';
import type { Desk } from './desk.ts';
import type { Column, Manuscript, Row } from './manuscript.ts';
import { type Part, part } from './page.ts';
import { type Measure, setLines, widthOf } from './setting.ts';
import { STYLES } from './style.ts';

const SPACE_ABOVE = 28;
const BETWEEN_ROWS = 5;
const BETWEEN_COLUMNS = 16;
/** No column but the one that grows takes more of the width than this. */
const WIDEST = 0.3;
/** A row of more lines than this may be parted by the end of a page. */
const KEPT_WHOLE = 8;
/** So many rows at least stand on the page of the sums. */
const KEPT_WITH_SUMS = 3;

/** A column that has found its place. */
type PlacedColumn = Column & Measure;

/** The table's bands. The head is tied to the first row, the last rows to what follows: no sum stands alone. */
export function table({ table: { columns, rows } }: Manuscript, desk: Desk): Band[] {
  const placed = placeColumns(columns, rows, desk);
  const whole = part('Table', desk.root);
  const head = tied(headBands(placed, desk, whole));
  const again = headBands(placed, desk);
  const body = rows.map((row, index) => {
    const bands = rowBands(row, placed, desk, { whole, before: index === 0 ? 4 : BETWEEN_ROWS });
    return bands.map((band) => ({ ...band, again }));
  });
  const last = body.splice(-KEPT_WITH_SUMS);
  return [...head, ...body.flat(), ...tied(last.flat())];
}

function placeColumns(columns: readonly Column[], rows: readonly Row[], desk: Desk): PlacedColumn[] {
  const all = desk.figures - desk.box.left;
  const widths = columns.map((column, at) =>
    column.grows ? 0 : widest(column, at, rows, desk, all * WIDEST),
  );
  const gaps = BETWEEN_COLUMNS * (columns.length - 1);
  const left = all - gaps - widths.reduce((sum, width) => sum + width, 0);
  let x = desk.box.left;
  return columns.map((column, at) => {
    const width = column.grows ? left : (widths[at] ?? 0);
    const placed: PlacedColumn = { ...column, x, width, align: column.figures ? 'right' : 'left' };
    x += width + BETWEEN_COLUMNS;
    return placed;
  });
}

function widest(column: Column, at: number, rows: readonly Row[], { faces }: Desk, most: number): number {
  const cells = rows.map(({ cells }) => widthOf(cells[at] ?? '', STYLES.text, faces));
  return Math.min(most, Math.max(widthOf(column.head, STYLES.label, faces), ...cells));
}

/** The heads. Said again on a further page they belong to no part, since they have been read. */
function headBands(columns: readonly PlacedColumn[], { faces, box }: Desk, whole?: Part): Band[] {
  const row = whole && part('TR', whole);
  const heads = columns.map((column) =>
    setLines(column.head, STYLES.label, column, {
      faces,
      ...(row ? { part: part('TH', row, 'Column') } : {}),
    }),
  );
  return [...beside(heads, SPACE_ABOVE), ruled(box, { above: 3, below: 1 })];
}

function rowBands(
  { cells, small }: Row,
  columns: readonly PlacedColumn[],
  { faces }: Desk,
  { whole, before }: { whole: Part; before: number },
): Band[] {
  const row = part('TR', whole);
  const lines = columns.map((column, at) => {
    const within = { faces, part: part('TD', row) };
    const words = setLines(cells[at] ?? '', STYLES.text, column, within);
    return column.grows && small ? [...words, ...setLines(small, STYLES.small, column, within)] : words;
  });
  const bands = beside(lines, before);
  return bands.length <= KEPT_WHOLE ? together(bands) : bands;
}
