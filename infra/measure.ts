// What one row of `npm run bench` is: something of ours beside its reference, measured in the same run.

/** What one round cost, in the same unit on both sides (milliseconds unless the row says otherwise). */
export interface Round {
  readonly ours: number;
  readonly reference: number;
}

export interface Row {
  /** as in the table of goals, and the name of the file: `start-1` */
  readonly id: string;
  /** what is measured, in words */
  readonly ours: string;
  /** what it is held against, in words */
  readonly reference: string;
  /** the ratio ours / reference that is allowed, or asked for */
  readonly goal: { readonly atMost: number } | { readonly atLeast: number };
  readonly unit?: string;
  /** five unless the row needs more */
  readonly rounds?: number;
  /** before the first round, unmeasured: data folders, warming up */
  prepare?(): Promise<void>;
  run(): Promise<Round>;
  /** after the last round, also when one failed */
  end?(): Promise<void>;
}

type Measured = () => Promise<number>;

/** Runs both sides in turn, and the other one first the next time, so that neither always finds a warm machine. */
export function alternately(ours: Measured, reference: Measured): () => Promise<Round> {
  let oursFirst = false;
  return async () => {
    oursFirst = !oursFirst;
    if (oursFirst) return { ours: await ours(), reference: await reference() };
    const cost = await reference();
    return { ours: await ours(), reference: cost };
  };
}

/** The milliseconds that some work takes. */
export function timed(work: () => unknown): Measured {
  return async () => {
    const before = performance.now();
    await work();
    return performance.now() - before;
  };
}
