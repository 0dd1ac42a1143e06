// Minutes that an entitlement has over from an engagement before: some let what is left serve the next.

import type { WrittenTariff } from '@colla/rates';
import type { EngagementJson, EngagementSummaryJson } from '@colla/wire';
import { engagements as say } from '../../catalogue/engagements.ts';
import type { Slip } from './inquiry-slips.ts';

/** The clauses of a tariff under which what is left rolls over, by their short names. */
export function rollingIn({ clauses }: Pick<WrittenTariff, 'clauses'>): string[] {
  return clauses.filter(({ terms }) => terms.rollsOver === true).map(({ id }) => id);
}

/** Minutes as typed, by clause. */
export type TypedMinutes = Readonly<Record<string, string>>;

export function typedMinutes({ rolledOver }: EngagementJson): TypedMinutes {
  return Object.fromEntries(Object.entries(rolledOver).map(([clause, minutes]) => [clause, String(minutes)]));
}

/** What is sent: clauses with nothing over are left out, as are those whose minutes cannot be read. */
export function minutesOver(typed: TypedMinutes): Record<string, number> {
  const read = Object.entries(typed).map(([clause, text]) => [clause, Number(text.trim() || '0')] as const);
  return Object.fromEntries(read.filter(([, minutes]) => Number.isInteger(minutes) && minutes > 0));
}

export function slipsInMinutes(typed: TypedMinutes): Slip[] {
  return Object.entries(typed)
    .filter(([, text]) => !/^\d{0,5}$/.test(text.trim()))
    .map(([clause]) => ({ pointer: `/rolledOver/${clause}`, detail: say('wrongRolledOver') }));
}

/** The soloist's engagements that were over before this one began, the latest first. */
export function engagementsBefore(
  { id, calls }: Pick<EngagementJson, 'id' | 'calls'>,
  soloist: string | undefined,
  all: readonly EngagementSummaryJson[],
): EngagementSummaryJson[] {
  const first = calls.map(({ start }) => instantOf(start)).sort((a, b) => a - b)[0];
  const isBefore = ({ last }: EngagementSummaryJson) =>
    last !== undefined && (first === undefined || instantOf(last) < first);
  return all
    .filter((other) => other.id !== id && other.soloist === soloist && isBefore(other))
    .filter(({ stage }) => stage === 'agreed' || stage === 'settled')
    .sort((one, other) => instantOf(other.last ?? '') - instantOf(one.last ?? ''));
}

/** Milliseconds of an instant, which its text before the zone says. */
function instantOf(text: string): number {
  return Date.parse(text.replace(/\[.*$/, ''));
}
