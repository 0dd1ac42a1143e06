// What the tariffs in the books ask, for a form that is about to be filled in.
import type { WrittenTariff } from '@colla/rates';
import { useMemo } from 'react';
import { type Answer, useAnswer } from '../../books.ts';
import { type Asked, askedBy } from './asked.ts';

/** Two answers that a form waits for together. */
export function bothOf<One, Other>(one: Answer<One>, other: Answer<Other>): Answer<readonly [One, Other]> {
  if (one.is !== 'here') return one;
  return other.is === 'here' ? { is: 'here', value: [one.value, other.value] } : other;
}

/** A tariff as written, as far as it asks something. */
export type Written = Pick<WrittenTariff, 'clauses'>;

/**
 * The newest version of every tariff, and the one that an engagement stands under. Where they cannot be had nothing is
 * asked: the form has every field all the same, further down.
 */
export function useAsked(under?: Written | undefined): Answer<Asked> {
  const tariffs = useAnswer('listTariffs', { query: { limit: 200 } });
  return useMemo(() => {
    if (tariffs.is === 'loading') return tariffs;
    const kept = tariffs.is === 'here' ? tariffs.value.items.map(({ latest }) => latest.written) : [];
    return { is: 'here', value: askedBy(under ? [...kept, under] : kept) };
  }, [tariffs, under]);
}
