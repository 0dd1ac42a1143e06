// A refusal on its way out of a transaction: thrown, so that the transaction is rolled back.

import type { Refusal } from '@colla/refusal';

/**
 * What the store throws where the books say no: a cursor that is none (`store/bad-cursor`), a stored tariff that
 * cannot be read (`store/unreadable-tariff`), a change made meanwhile by somebody else (`store/changed-meanwhile`).
 */
export class Refused extends Error {
  override readonly name = 'Refused';

  constructor(readonly refusal: Refusal) {
    super(refusal.sentence);
  }
}
