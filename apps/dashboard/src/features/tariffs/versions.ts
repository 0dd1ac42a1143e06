// Which version of a tariff counts on a day.

interface Version {
  readonly version: number;
  /** The day it begins, `2026-09-01`. */
  readonly from: string;
}

/** The version in force on a day: the last that has begun; before the first, the first. Versions are in order. */
export function inForce<V extends Version>(versions: readonly V[], on: string): V | undefined {
  return versions.findLast(({ from }) => from <= on) ?? versions[0];
}

/** How a version stands on a day. */
export function standingOf(version: Version, versions: readonly Version[], on: string) {
  if (version.from > on) return 'later';
  return inForce(versions, on)?.version === version.version ? 'inForce' : 'earlier';
}

/** The day on which a next version may begin: today, or with the newest where that is still to begin. */
export function nextBegin(newest: Version, today: string): string {
  return newest.from < today ? today : newest.from;
}
