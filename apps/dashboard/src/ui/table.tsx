// A table; on a phone its rows become labelled lists, or, where figures must stay in columns, it moves sideways.
import type { ReactNode } from 'react';
import { ui } from '../catalogue/ui.ts';
import './table.css';

export interface Column<Row> {
  readonly key: string;
  readonly head: string;
  readonly cell: (row: Row) => ReactNode;
  /** A figure: aligned right. */
  readonly figure?: boolean;
  /** What the column comes to, in the foot. */
  readonly sum?: ReactNode;
}

interface TableProps<Row> {
  /** What the table shows; read first by those who do not see it. */
  caption: string;
  captionUnseen?: boolean;
  /** The first column names the row. */
  columns: readonly Column<Row>[];
  rows: readonly Row[];
  rowKey: (row: Row) => string;
  /** What becomes of it on a phone. */
  narrow?: 'rows' | 'sideways';
}

export function Table<Row>({
  caption,
  captionUnseen,
  columns,
  rows,
  rowKey,
  narrow = 'rows',
}: TableProps<Row>) {
  const table = (
    <table className={`table ${narrow === 'rows' ? 'rows' : ''}`}>
      <caption>{captionUnseen ? <span className="unseen">{caption}</span> : <h2>{caption}</h2>}</caption>
      <thead>
        <tr>
          {columns.map(({ key, head, figure }) => (
            <th key={key} scope="col" className={figure ? 'figure' : undefined}>
              {head}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <Row key={rowKey(row)} row={row} columns={columns} />
        ))}
      </tbody>
      {columns.some(({ sum }) => sum !== undefined) && <Sums columns={columns} />}
    </table>
  );
  if (narrow === 'rows') return table;
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard
    <section className="sideways" tabIndex={0} aria-label={ui('table', { caption })}>
      {table}
    </section>
  );
}

function Row<Of>({ row, columns }: { row: Of; columns: readonly Column<Of>[] }) {
  return (
    <tr>
      {columns.map(({ key, head, figure, cell }, at) =>
        at === 0 ? (
          <th key={key} scope="row">
            {cell(row)}
          </th>
        ) : (
          <td key={key} className={figure ? 'figure' : undefined} data-head={head}>
            {cell(row)}
          </td>
        ),
      )}
    </tr>
  );
}

function Sums<Of>({ columns }: { columns: readonly Column<Of>[] }) {
  return (
    <tfoot>
      <tr>
        {columns.map(({ key, head, figure, sum }, at) =>
          at === 0 ? (
            <th key={key} scope="row">
              {sum}
            </th>
          ) : (
            <td
              key={key}
              className={figure ? 'figure' : undefined}
              data-head={sum === undefined ? undefined : head}
            >
              {sum}
            </td>
          ),
        )}
      </tr>
    </tfoot>
  );
}
