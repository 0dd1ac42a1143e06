// A form that shows each refusal beside the field that it is about, goes to that field, and loses no sentence.
import {
  type ChangeEvent,
  createContext,
  type ReactNode,
  type SubmitEvent,
  use,
  useEffect,
  useRef,
  useState,
} from 'react';
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
export function useWrong({ at, label }: { at?: string | undefined; label: string }): string | undefined {
  const said = use(Wrong);
  if (!said || at === undefined) return undefined;
  const saying = sayings(said).find(({ pointer }) => isAt(pointer, at));
  return saying && asLabelled(saying, label);
}

/** Whoever refuses knows a field by its name on the wire; whoever reads knows it by its label. */
function asLabelled({ pointer, detail }: { pointer: string; detail: string }, label: string): string {
  return pointer
    .split('/')
    .filter((name) => /^[a-z]/i.test(name))
    .reduce((sentence, name) => sentence.replaceAll(`“${name}”`, `“${label}”`), detail);
}

/** What is still to be mended once the fields at some pointers have been written in; nothing where no sentence is left. */
function unmended(said: Said | undefined, mended: readonly string[]): Said | undefined {
  if (!said || mended.length === 0) return said;
  const { pointer, errors = [], detail } = said;
  const stands = (pointer: string) => !mended.some((at) => isAt(pointer, at));
  const left = errors.filter(({ pointer }) => stands(pointer));
  if (pointer !== undefined && stands(pointer)) return { detail, pointer, errors: left };
  if (pointer === undefined && errors.length === 0) return said;
  return left.length > 0 ? { detail, errors: left } : undefined;
}

function sayings({ detail, pointer, errors = [] }: Said): { pointer: string; detail: string }[] {
  return [...errors, ...(pointer === undefined ? [] : [{ pointer, detail }])];
}

function isAt(pointer: string, at: string): boolean {
  return pointer === at || pointer.startsWith(`${at}/`);
}

/** The fields written in since a problem was said: what was wrong there is no longer what stands there. */
interface Mended {
  readonly of: Said | undefined;
  readonly at: readonly string[];
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
  const [mended, setMended] = useState<Mended>({ of: problem, at: [] });
  const left = unmended(problem, mended.of === problem ? mended.at : []);
  const mend = (event: ChangeEvent<HTMLFormElement>) => {
    const at = event.target.closest<HTMLElement>('[data-at]')?.dataset.at;
    if (!problem || at === undefined) return;
    setMended({ of: problem, at: mended.of === problem ? [...mended.at, at] : [at] });
  };
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
    <form ref={form} className="form" onSubmit={submit} onChange={mend} noValidate>
      <Wrong value={left}>{children}</Wrong>
      {left && (
        <p className="wrong" role="alert">
          {placed ? ui('notKept') : left.detail}
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
