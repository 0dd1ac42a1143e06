// The embedded database: PostgreSQL inside this process, in a folder. Each statement is prepared once and spoken
// to in one message of PostgreSQL's own protocol; the library's `query` would plan it anew each time.

import { PGlite, protocol, types } from '@electric-sql/pglite';
import type { Connection } from './connection.ts';

const { serialize } = protocol;
const { DatabaseError, DataRowMessage, RowDescriptionMessage } = protocol.messages;

/** A statement that the database knows by name, and the types of its columns. */
interface Prepared {
  readonly name: string;
  readonly columns: readonly number[];
}

/** Opens the database in a folder; makes it where the folder is empty. */
export async function openEmbedded(folder: string): Promise<Connection> {
  const database = await PGlite.create(folder);
  const known = new Map<string, Prepared>();
  const prepare = async (text: string): Promise<Prepared> => {
    const name = `colla_${known.size}`;
    const answers = await say(database, [
      serialize.parse({ name, text }),
      serialize.describe({ type: 'S', name }),
      serialize.sync(),
    ]);
    const described = answers.find((answer) => answer instanceof RowDescriptionMessage);
    const prepared = { name, columns: described?.fields.map(({ dataTypeID }) => dataTypeID) ?? [] };
    known.set(text, prepared);
    return prepared;
  };
  return inTurn({
    losses: 0,
    async query(text, values) {
      const { name, columns } = known.get(text) ?? (await prepare(text));
      const answers = await say(database, [
        serialize.bind({ statement: name, values: values.map(written) }),
        serialize.execute(),
        serialize.sync(),
      ]);
      const rows = answers.filter((answer) => answer instanceof DataRowMessage);
      return rows.map(({ fields }) => fields.map((field, at) => read(field, columns[at])));
    },
    async run(text) {
      await say(database, [serialize.query(text)]);
    },
    close: () => database.close(),
  });
}

/** One statement after the other, in the order in which they were asked for. */
function inTurn(connection: Connection): Connection {
  let last: Promise<unknown> = Promise.resolve();
  const next = <Answer>(statement: () => Promise<Answer>): Promise<Answer> => {
    const answer = last.then(statement);
    last = answer.catch(() => undefined);
    return answer;
  };
  return {
    losses: connection.losses,
    query: (text, values) => next(() => connection.query(text, values)),
    run: (text) => next(() => connection.run(text)),
    close: () => next(() => connection.close()),
  };
}

async function say(database: PGlite, words: readonly Uint8Array[]) {
  const { messages } = await database.execProtocol(Buffer.concat(words), { throwOnError: false });
  const failure = messages.find((message) => message instanceof DatabaseError);
  if (failure) throw failure;
  return messages;
}

function written(value: unknown): string | null {
  return value === null || value === undefined ? null : String(value);
}

function read(text: string | null | undefined, type: number | undefined): unknown {
  if (text === null || text === undefined) return null;
  if (type === types.BOOL) return text === 't';
  return type === types.INT4 ? Number(text) : text;
}
