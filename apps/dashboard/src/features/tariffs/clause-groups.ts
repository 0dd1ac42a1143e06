// The kinds of clause in groups a pianist would name, by the phase in which they work.

import { type Kind, menu } from '@colla/rates';

export const GROUPS = [
  'price',
  'covered',
  'conditions',
  'changes',
  'travel',
  'payers',
  'paying',
  'tax',
] as const;
export type Group = (typeof GROUPS)[number];

const GROUP_OF_PHASE: Readonly<Record<string, Group>> = {
  rates: 'price',
  coverage: 'covered',
  supplements: 'conditions',
  discounts: 'conditions',
  limits: 'conditions',
  cancellation: 'changes',
  travel: 'travel',
  split: 'payers',
  deposit: 'paying',
  terms: 'paying',
  tax: 'tax',
};

/**
 * By the last phase in which a kind works: what comes before prepares it. One that works in none speaks of paying, unless
 * it chooses among ways of charging.
 */
export function groupOf(kind: Kind): Group {
  if ('ways' in menu[kind]) return 'price';
  const phase = Object.keys(menu[kind].phases).findLast((phase) => GROUP_OF_PHASE[phase]);
  return (phase && GROUP_OF_PHASE[phase]) || 'paying';
}
