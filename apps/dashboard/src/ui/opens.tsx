// Something that opens to its why: an amount to its lines, a line to its clause and its facts.
import { type ReactNode, useLayoutEffect, useRef, useState } from 'react';
import './opens.css';

interface OpensProps {
  /** What is read while it is shut. Its first child takes the room; a second, such as a figure, stands at the right. */
  summary: ReactNode;
  /** Opens it when it becomes true, and shuts it when it becomes false and nobody is writing in it. */
  open?: boolean;
  /** As a function where it is long: called once it is opened. */
  children: ReactNode | (() => ReactNode);
}

export function Opens({ summary, open = false, children }: OpensProps) {
  const details = useRef<HTMLDetailsElement>(null);
  const [isOpen, setIsOpen] = useState(open);
  useLayoutEffect(() => {
    const of = details.current;
    if (of && (open || !of.contains(document.activeElement))) of.open = open;
  }, [open]);
  return (
    <details ref={details} className="opens" onToggle={(event) => setIsOpen(event.currentTarget.open)}>
      <summary>{summary}</summary>
      <div className="inside">{typeof children === 'function' ? isOpen && children() : children}</div>
    </details>
  );
}
