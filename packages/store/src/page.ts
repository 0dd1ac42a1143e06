// Lists by page: a page begins after the row that its cursor names, however many rows were added meanwhile.

import { Temporal } from '@colla/calendar';
import { Refusal } from '@colla/refusal';
import { type SQL, sql } from 'drizzle-orm';
import type { Page, PageOf } from './books.ts';
import { Refused } from './refused.ts';
import { type Statement, statement } from './statement.ts';
import type { Transaction } from './transaction.ts';

/** What a list is sorted by: first this, then the id. */
type SortedBy = 'words' | 'day' | 'instant';

/** A list, its order and how a row of it is read. */
export interface List<Item> {
  /** The list's name in its cursors: a cursor of one list is of no use in another. */
  readonly name: string;
  readonly by: SortedBy;
  readonly newestFirst: boolean;
  /** The two columns of the order: what it is sorted by, and the id. */
  readonly order: readonly [SQL, SQL];
  /** What is selected, after the two columns of the order; and from where, with `where` but without order. */
  readonly select: SQL;
  readonly from: SQL;
  readonly where?: SQL;
  readonly read: (columns: unknown[]) => Item;
}

const UUID = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/i;
const SQL_TYPES = { words: 'text', day: 'date', instant: 'timestamp with time zone' } as const;

/** True for what can be an id of the books. Everything else names nothing there. */
export function isId(text: string): boolean {
  return UUID.test(text);
}

/** Ids as PostgreSQL reads an array of them. */
export function idList(ids: readonly string[]): string {
  return `{${ids.filter(isId).join(',')}}`;
}

/** Makes a list into the function that turns its pages. */
export function paging<Item>(
  list: List<Item>,
): (
  transaction: Transaction,
  page: PageOf,
  values?: Readonly<Record<string, string>>,
) => Promise<Page<Item>> {
  const [first, further] = statements(list);
  return async (transaction, { after, limit }, values = {}) => {
    const place = after === undefined ? undefined : readCursor(list, after);
    const ask: Statement = place ? further : first;
    const rows = await ask(transaction, {
      ...values,
      limit: limit + 1,
      ...(place ? { value: place.value, id: place.id } : {}),
    });
    const shown = rows.slice(0, limit);
    const last = shown.at(-1);
    const items = shown.map(([, , ...columns]) => list.read(columns));
    return rows.length > limit && last ? { items, next: writeCursor(list, last) } : { items };
  };
}

/** The statement of the first page, and of the pages after a cursor. */
function statements<Item>(list: List<Item>): [Statement, Statement] {
  const [value, id] = list.order;
  const type = sql.raw(SQL_TYPES[list.by]);
  const way = sql.raw(list.newestFirst ? 'desc' : 'asc');
  const beyond = sql.raw(list.newestFirst ? '<' : '>');
  const where = list.where ?? sql`true`;
  const place = sql`(${sql.placeholder('value')}::text::${type}, ${sql.placeholder('id')}::text::uuid)`;
  const page = (rest: SQL) =>
    statement(sql`select ${value}::text, ${id}::text, ${list.select} from ${list.from} where ${where} ${rest}
      order by ${value} ${way}, ${id} ${way} limit ${sql.placeholder('limit')}::integer`);
  return [page(sql``), page(sql`and (${value}, ${id}) ${beyond} ${place}`)];
}

function writeCursor({ name }: { name: string }, [value, id]: unknown[]): string {
  return Buffer.from(JSON.stringify([name, value, id])).toString('base64url');
}

/** Throws `Refused` where the cursor is not one of this list. */
function readCursor<Item>({ name, by }: List<Item>, cursor: string): { value: string; id: string } {
  try {
    const [of, value, id, ...more] = JSON.parse(Buffer.from(cursor, 'base64url').toString()) as unknown[];
    if (of === name && typeof value === 'string' && typeof id === 'string' && more.length === 0 && isId(id)) {
      if (isWritten(by, value)) return { value, id };
    }
  } catch {
    // falls through to the one refusal for cursors
  }
  throw new Refused(
    new Refusal(
      'store/bad-cursor',
      'This is not a place in the list. Begin again at its first page.',
      {},
      '/after',
    ),
  );
}

/** How PostgreSQL writes what a list is sorted by; it wrote the cursor, and must be able to read it again. */
const WRITTEN = {
  words: /^/,
  day: /^(?!0000)\d{4}-\d\d-\d\d$/,
  instant: /^(?!0000)\d{4}-\d\d-\d\d \d\d:\d\d:\d\d(\.\d{1,6})?[+-]\d\d(:\d\d)?$/,
};

/** Throws where the form is right and no such day or instant is. */
function isWritten(by: SortedBy, value: string): boolean {
  if (!WRITTEN[by].test(value)) return false;
  if (by === 'day') Temporal.PlainDate.from(value, { overflow: 'reject' });
  if (by === 'instant') Temporal.Instant.from(value);
  return true;
}

/** A name as lists are sorted by it: without accents and capitals, the same on every machine. */
export function filedAs(name: string): string {
  return name.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase();
}
