// Minutes forgiven before a new step begins. Several kinds have them.

interface Steps {
  readonly grace: number;
  readonly increment: number;
  /** Up where left out. */
  readonly round?: 'up' | 'nearest' | 'down';
}

/** Why forgiven minutes and the steps they belong to cannot stand together; empty where they can. */
export function graceContradiction({ grace, increment, round = 'up' }: Steps): string[] {
  if (grace > 0 && round !== 'up')
    return ['Minutes are forgiven only where a step begun counts: forgive none, or round up.'];
  return grace < increment
    ? []
    : [`Forgiving ${grace} minutes of a ${increment}-minute step would never begin it: forgive fewer.`];
}

/** “5 minutes over are forgiven”; undefined where none are. */
export function sayGrace(grace: number): string | undefined {
  if (grace === 0) return undefined;
  return grace === 1 ? 'one minute over is forgiven' : `${grace} minutes over are forgiven`;
}
