// Minutes forgiven before a new step begins. Several kinds have them.

/** Why forgiven minutes and the steps they belong to cannot stand together; empty where they can. */
export function graceContradiction({ grace, increment }: { grace: number; increment: number }): string[] {
  return grace < increment
    ? []
    : [`Forgiving ${grace} minutes of a ${increment}-minute step would never begin it: forgive fewer.`];
}
