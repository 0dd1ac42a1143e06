// One connection to a database, whichever it is, and the pool that lends connections out.

/** What both databases can do. Statements run in the order in which they are asked for. */
export interface Connection {
  /**
   * The rows of one statement, column by column: numbers and booleans as such, everything else as PostgreSQL's
   * own text. `values` are text, numbers, booleans or null.
   */
  query(text: string, values: readonly unknown[]): Promise<unknown[][]>;
  /** Runs statements that take no values and give no rows. */
  run(text: string): Promise<void>;
  /** How often the connection was lost so far: what was begun before a loss did not live through it. */
  readonly losses: number;
  close(): Promise<void>;
}

/** Lends each connection to one borrower at a time, first come, first served. */
export class Pool {
  readonly #connections: readonly Connection[];
  readonly #free: Connection[];
  readonly #waiting: ((connection: Connection) => void)[] = [];

  constructor(connections: readonly Connection[]) {
    this.#connections = connections;
    this.#free = [...connections];
  }

  async lend<Answer>(work: (connection: Connection) => Promise<Answer>): Promise<Answer> {
    const connection = this.#free.pop() ?? (await this.#turn());
    try {
      return await work(connection);
    } finally {
      const next = this.#waiting.shift();
      if (next) next(connection);
      else this.#free.push(connection);
    }
  }

  async close(): Promise<void> {
    await Promise.all(this.#connections.map((connection) => connection.close()));
  }

  #turn(): Promise<Connection> {
    return new Promise((resolve) => this.#waiting.push(resolve));
  }
}
