// How the trade's "no" is said: a code for programs, a sentence for people, the facts behind both.

/** Facts that a refusal carries so that a screen can point at them; plain words and figures only. */
export type RefusalFacts = Readonly<Record<string, string | number | boolean>>;

/**
 * An expected "no". Functions that may refuse return it as a value; nothing is thrown.
 * `code` is `noun/what` (`invoices/already-issued`), `sentence` says what is wrong and how to mend it,
 * `field` is the JSON pointer of the input that caused it, where there is one.
 */
export class Refusal {
  constructor(
    readonly code: `${string}/${string}`,
    readonly sentence: string,
    readonly facts: RefusalFacts = {},
    readonly field?: string,
  ) {}

  /** The same refusal, pointing at `field` (a JSON pointer such as `/calls/0/until`). */
  at(field: string): Refusal {
    return new Refusal(this.code, this.sentence, this.facts, field + (this.field ?? ''));
  }
}

/** A value, or the reason why there is none. */
export type OrRefusal<T> = T | Refusal;

/** True where a function answered "no". */
export function refused<T>(answer: T | Refusal): answer is Refusal {
  return answer instanceof Refusal;
}

/** The value of an answer that cannot be a refusal here; a refusal is a broken invariant and throws. */
export function granted<T>(answer: T | Refusal): T {
  if (answer instanceof Refusal) throw new Error(`${answer.code}: ${answer.sentence}`);
  return answer;
}
