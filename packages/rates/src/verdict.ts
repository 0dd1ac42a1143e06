// How a fallen call is judged, and what that leaves to pay.

import type { ClauseHead } from './kind.ts';

/** What a fallen call leaves to pay: all of it, nothing, a share, a sum, or the deposit. */
export type Owes =
  | { readonly owes: 'all' }
  | { readonly owes: 'nothing' }
  | { readonly owes: 'share'; readonly share: number }
  | { readonly owes: 'amount'; readonly amount: bigint }
  | { readonly owes: 'deposit' };

/** How a fallen call was judged: by which clause, what is owed, and why in words. */
export interface Verdict {
  readonly clause: ClauseHead;
  readonly terms: Owes;
  readonly why: string;
  /** True where it is forgiven, or the pianist’s own: it costs the payer nothing, whatever else is kept. */
  readonly pardoned?: true;
  /** Calls with one key fall together, for one sum: each its own, unless the whole or one deposit is reckoned. */
  readonly together: string;
}
