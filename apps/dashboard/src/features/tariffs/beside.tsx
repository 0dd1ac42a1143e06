// What stands beside the clauses. On a narrow window it is folded below them, and a bar keeps its sums in sight.
import { type ReactNode, useId, useRef, useState } from 'react';
import { tariffs as say } from '../../catalogue/tariffs.ts';
import { useNarrow } from './narrow.ts';

interface BesideProps {
  /** The sums, in one line. */
  bar: ReactNode;
  children: ReactNode;
}

export function Beside({ bar, children }: BesideProps) {
  const narrow = useNarrow();
  const [open, setOpen] = useState(false);
  const id = useId();
  const below = useRef<HTMLDivElement>(null);
  if (!narrow) return <div className="tariff-beside">{children}</div>;
  const toggle = () => {
    setOpen(!open);
    if (!open) requestAnimationFrame(() => below.current?.scrollIntoView({ block: 'start' }));
  };
  return (
    <>
      <button type="button" className="tariff-bar" aria-expanded={open} aria-controls={id} onClick={toggle}>
        {bar}
        <span className="tariff-bar-does">{say(open ? 'examplesHide' : 'examplesShow')}</span>
      </button>
      <div ref={below} id={id} className="tariff-beside" hidden={!open}>
        {children}
      </div>
    </>
  );
}
