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

/** A kind that works in several belongs to the first of these. */
const GROUP_OF_PHASE: Readonly<Record<string, Group>> = {
  cancellation: 'changes',
  rates: 'price',
  coverage: 'covered',
  supplements: 'conditions',
  discounts: 'conditions',
  limits: 'conditions',
  travel: 'travel',
  split: 'payers',
  deposit: 'paying',
  terms: 'paying',
  tax: 'tax',
};

/** By the phases in which a kind works. One that works in none speaks of paying, unless it chooses among ways of charging. */
export function groupOf(kind: Kind): Group {
  if ('ways' in menu[kind]) return 'price';
  const phases = Object.keys(menu[kind].phases);
  const found = Object.entries(GROUP_OF_PHASE).find(([phase]) => phases.includes(phase));
  return found?.[1] ?? 'paying';
}
