// How far an engagement has come on its way from inquiry to paid.

import type { EngagementWholeJson } from '@colla/wire';

export const STEPS = ['inquiry', 'quoted', 'agreed', 'played', 'invoiced', 'paid'] as const;
export type Step = (typeof STEPS)[number];

/** The step it has reached; undefined where it ended on the way: declined, lapsed or cancelled. */
export function stepReached(
  { stage, calls, invoices }: Pick<EngagementWholeJson, 'stage' | 'calls' | 'invoices'>,
  leftToInvoice: boolean,
): Step | undefined {
  if (stage === 'settled') return 'paid';
  if (stage === 'inquiry' || stage === 'quoted') return stage;
  if (stage !== 'agreed') return undefined;
  const open = calls.some(({ standing }) => standing.is === 'agreed' || standing.is === 'held');
  if (open || calls.length === 0) return 'agreed';
  if (leftToInvoice || invoices.length === 0) return 'played';
  return invoices.every(({ is }) => is === 'paid') ? 'paid' : 'invoiced';
}

/** Whether decimal text of the wire is more than nothing. */
export function isMore(amount: string): boolean {
  return !amount.startsWith('-') && /[1-9]/.test(amount);
}

/** How far decimal text of the wire lies below nought, as decimal text; undefined where it does not. */
export function belowNought(amount: string): string | undefined {
  return amount.startsWith('-') ? amount.slice(1) : undefined;
}
