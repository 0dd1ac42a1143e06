// The three states of a screen that has nothing to show: nothing yet, on its way, refused.
import type { ReactNode } from 'react';
import { ui } from '../catalogue/ui.ts';
import { Button } from './button.tsx';
import type { Said } from './form.tsx';
import './states.css';

/** Nothing yet: says what belongs here, and how it comes here. */
export function Empty({ title, children }: { title: string; children?: ReactNode }) {
  return (
    <div className="state">
      <h2>{title}</h2>
      {children}
    </div>
  );
}

export function Loading({ what }: { what: string }) {
  return (
    <p className="state loading" role="status">
      {ui('loading', { what })}
    </p>
  );
}

/** A "no", with its sentence, and the way to ask again where that can help. */
export function ProblemNote({ problem, again }: { problem: Said; again?: (() => void) | undefined }) {
  return (
    <div className="state refused" role="alert">
      <p>{problem.detail}</p>
      {again && <Button onPress={again}>{ui('again')}</Button>}
    </div>
  );
}

/** An answer on its way, here, or refused; structurally what ../books.ts gives. */
export type Awaited<Value> =
  | { readonly is: 'loading' }
  | { readonly is: 'here'; readonly value: Value }
  | { readonly is: 'failed'; readonly problem: Said; readonly again: () => void };

/** Shows an answer when it is here, and until then how it stands. `what` completes “Fetching …”. */
export function Shown<Value>({
  answer,
  what,
  children,
}: {
  answer: Awaited<Value>;
  what: string;
  children: (value: Value) => ReactNode;
}) {
  if (answer.is === 'loading') return <Loading what={what} />;
  if (answer.is === 'failed') return <ProblemNote problem={answer.problem} again={answer.again} />;
  return children(answer.value);
}
