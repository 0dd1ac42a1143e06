// A list that comes in pages: the first at once, each further one when it is asked for.
import type { AnswerOf, Problem, RequestOf, RouteName } from '@colla/wire';
import { ProblemError } from '@colla/wire/client';
import { useEffect, useState } from 'react';
import { type Answer, ask, useAnswer } from './books.ts';

/** What is owed is one list, and has no pages. */
type ListName = Exclude<Extract<RouteName, `list${string}`>, 'listOwed'>;
type ItemOf<Name extends ListName> = AnswerOf<Name>['items'][number];

export interface Paged<Item> {
  readonly answer: Answer<readonly Item[]>;
  /** Asks for the next page; absent on the last. */
  readonly more?: () => void;
  /** Why the next page did not come. */
  readonly problem?: Problem;
}

interface Further<Item> {
  readonly items: readonly Item[];
  readonly next?: string | undefined;
  readonly problem?: Problem;
}

export function usePaged<Name extends ListName>(name: Name, request: RequestOf<Name>): Paged<ItemOf<Name>> {
  const first = useAnswer<ListName>(name, request) as Answer<AnswerOf<Name>>;
  const [further, setFurther] = useState<Further<ItemOf<Name>>>();
  const start = first.is === 'here' ? first.value : undefined;
  // biome-ignore lint/correctness/useExhaustiveDependencies: pages that followed an older first page are let go
  useEffect(() => setFurther(undefined), [start]);
  if (first.is !== 'here') return { answer: first };
  const items = [...first.value.items, ...(further?.items ?? [])] as ItemOf<Name>[];
  const next = further ? further.next : first.value.next;
  const fetchNext = async () => {
    const known = further?.items ?? [];
    try {
      const page = await ask<ListName>(name, { query: { ...queryOf(request), after: next } });
      setFurther({ items: [...known, ...(page.items as ItemOf<Name>[])], next: page.next });
    } catch (no) {
      if (!(no instanceof ProblemError)) throw no;
      setFurther({ items: known, next, problem: no.problem });
    }
  };
  return {
    answer: { is: 'here', value: items },
    ...(next === undefined ? {} : { more: fetchNext }),
    ...(further?.problem ? { problem: further.problem } : {}),
  };
}

function queryOf(request: object): object {
  return 'query' in request && typeof request.query === 'object' ? { ...request.query } : {};
}
