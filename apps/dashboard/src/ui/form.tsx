// A form that shows each refusal beside the field that it is about, goes to that field, and loses no sentence.
import { createContext, type ReactNode, type SubmitEvent, use, useEffect, useRef, useState } from 'react';
import { ui } from '../catalogue/ui.ts';
import { beginLate } from './begin-in.ts';

/** How a "no" reaches the screen: a sentence, and the JSON pointer of what it is about (RFC 9457, RFC 6901). */
export interface Said {
  readonly detail: string;
  readonly pointer?: string | undefined;
  readonly errors?: readonly { readonly pointer: string; readonly detail: string }[] | undefined;
}

const Wrong = createContext<Said | undefined>(undefined);

/** The sentence for the field at a pointer, where there is one; a field of several lines answers for each of them. */
export function useWrong(at: string | undefined): string | undefined {
  const said = use(Wrong);
  if (!said || at === undefined) return undefined;
  return sayings(said).find(({ pointer }) => isAt(pointer, at))?.detail;
}

function sayings({ detail, pointer, errors = [] }: Said): { pointer: string; detail: string }[] {
  return [...errors, ...(pointer === undefined ? [] : [{ pointer, detail }])];
}

function isAt(pointer: string, at: string): boolean {
  return pointer === at || pointer.startsWith(`${at}/`);
}

interface FormProps {
  /** Why the last attempt was refused. */
  problem?: Said | undefined;
  onSubmit: () => void;
  /** The buttons, below the fields. */
  foot: ReactNode;
  children: ReactNode;
}

export function Form({ problem, onSubmit, foot, children }: FormProps) {
  const form = useRef<HTMLFormElement>(null);
  const [placed, setPlaced] = useState(false);
  useEffect(() => {
    const dialog = form.current?.closest('dialog');
    if (dialog) beginLate(dialog);
  }, []);
  useEffect(() => {
    const field = problem && form.current ? fieldFor(problem, form.current) : undefined;
    setPlaced(field !== undefined);
    if (field) goTo(field);
  }, [problem]);
  const submit = (event: SubmitEvent) => {
    event.preventDefault();
    // A form in a dialog is drawn within the page's form, and is not part of it.
    event.stopPropagation();
    // What the screen itself sees is wrong is gone to before anything is sent.
    if (!problem) form.current?.querySelector<HTMLElement>('[aria-invalid="true"]')?.focus();
    onSubmit();
  };
  return (
    <form ref={form} className="form" onSubmit={submit} noValidate>
      <Wrong value={problem}>{children}</Wrong>
      {problem && (
        <p className="wrong" role="alert">
          {placed ? ui('notKept') : problem.detail}
        </p>
      )}
      <div className="buttons">{foot}</div>
    </form>
  );
}

/** What is folded away is opened first: a field out of sight can neither be read nor take the focus. */
function goTo(field: HTMLElement): void {
  for (let fold = field.closest('details'); fold; fold = fold.parentElement?.closest('details') ?? null) {
    fold.open = true;
  }
  field.focus();
}

function fieldFor(said: Said, form: HTMLFormElement): HTMLElement | undefined {
  const fields = [...form.querySelectorAll<HTMLElement>('[data-at]')];
  return fields.find(({ dataset }) => sayings(said).some(({ pointer }) => isAt(pointer, dataset.at ?? '')));
}
