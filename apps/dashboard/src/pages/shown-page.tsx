// A screen whose title is part of its answer: until that is here, or where it is refused, it stands under another.
import type { ReactNode } from 'react';
import type { Answer } from '../books.ts';
import { Loading, Page, ProblemNote } from '../ui/index.ts';

interface ShownPageProps<Value> {
  answer: Answer<Value>;
  /** Completes “Fetching …”. */
  what: string;
  /** The title where the answer is a no. */
  title: string;
  children: (value: Value) => ReactNode;
}

export function ShownPage<Value>({ answer, what, title, children }: ShownPageProps<Value>) {
  if (answer.is === 'here') return children(answer.value);
  if (answer.is === 'failed') {
    return (
      <Page title={title}>
        <ProblemNote problem={answer.problem} again={answer.again} />
      </Page>
    );
  }
  // No heading yet: it would take the focus that belongs to the one to come.
  return (
    <main className="page" id="page">
      <Loading what={what} />
    </main>
  );
}
