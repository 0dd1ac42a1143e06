// One transaction: everything in it happens, or nothing does.

import { Refusal } from '@colla/refusal';
import type { Connection } from './connection.ts';
import { Refused } from './refused.ts';

/** What statements are run in. It is of no use once the transaction has ended, or a statement in it has failed. */
export class Transaction {
  readonly #connection: Connection;
  readonly #losses: number;
  #ended = false;
  #failure: { readonly reason: unknown } | undefined;
  #last: Promise<unknown>;

  constructor(connection: Connection, opening: string) {
    this.#connection = connection;
    this.#losses = connection.losses;
    // Not awaited: the first statements travel with it.
    this.#last = this.#noting(connection.run(opening));
  }

  /** Rows as `Connection.query` gives them. */
  query(text: string, values: readonly unknown[]): Promise<unknown[][]> {
    const refused = this.#ended
      ? new Error('The books were used after their transaction had ended.')
      : this.#whyNot();
    if (refused) return Promise.reject(refused);
    const rows = this.#noting(this.#connection.query(text, values));
    this.#last = rows.catch(() => undefined);
    return rows;
  }

  /** Makes it happen. Throws where any statement failed, even if somebody looked away from that. */
  async commit(): Promise<void> {
    await this.#answered();
    await this.#connection.run('commit');
  }

  /**
   * Ends what has only read. Throws as `commit` does, but waits for no answer: nothing hangs on it, and whoever
   * uses the connection next comes after it.
   */
  async leave(): Promise<void> {
    await this.#answered();
    this.#connection.run('commit').catch(() => undefined);
  }

  /** Undoes it. */
  async rollBack(): Promise<void> {
    this.#ended = true;
    await this.#last;
    // A lost connection has undone it already.
    await this.#connection.run('rollback').catch(() => undefined);
  }

  async #answered(): Promise<void> {
    this.#ended = true;
    await this.#last;
    const refused = this.#whyNot();
    if (refused) throw refused;
  }

  #noting<Answer>(answer: Promise<Answer>): Promise<Answer> {
    const noted = answer.catch((reason: unknown) => {
      const mended = sayable(reason);
      this.#failure ??= { reason: mended };
      throw mended;
    });
    noted.catch(() => undefined);
    return noted;
  }

  #whyNot(): unknown {
    if (this.#failure) return this.#failure.reason;
    return this.#connection.losses === this.#losses
      ? undefined
      : new Error(
          'The connection to the database was lost in the middle of a transaction; nothing of it was kept.',
        );
  }
}

/** What a transaction may do: `write`, or only `read`, which the database holds it to. */
export type May = 'write' | 'read';

/** Runs `work` in a transaction whose first statements are `opening`. */
export async function inTransaction<Answer>(
  connection: Connection,
  { may, opening }: { may: May; opening: string },
  work: (transaction: Transaction) => Promise<Answer>,
): Promise<Answer> {
  const transaction = new Transaction(connection, `begin ${may === 'read' ? 'read only' : ''}; ${opening}`);
  try {
    const answer = await work(transaction);
    await (may === 'read' ? transaction.leave() : transaction.commit());
    return answer;
  } catch (reason) {
    await transaction.rollBack();
    throw reason;
  }
}

/** SQLSTATEs with which PostgreSQL turns down a character that text cannot hold. */
const NO_SUCH_CHARACTER = ['22021', '22P05'];

function sayable(reason: unknown): unknown {
  const code = (reason as { code?: unknown } | null)?.code;
  if (typeof code !== 'string' || !NO_SUCH_CHARACTER.includes(code)) return reason;
  return new Refused(
    new Refusal(
      'store/no-such-character',
      'The text holds a character that cannot be kept, such as an invisible zero. Type that line again.',
    ),
  );
}
