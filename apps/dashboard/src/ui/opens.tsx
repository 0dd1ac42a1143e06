// Something that opens to its why: an amount to its lines, a line to its clause and its facts.
import { type ReactNode, useState } from 'react';
import './opens.css';

interface OpensProps {
  /** What is read while it is shut. Its first child takes the room; a second, such as a figure, stands at the right. */
  summary: ReactNode;
  open?: boolean;
  /** As a function where it is long: called once it is opened. */
  children: ReactNode | (() => ReactNode);
}

export function Opens({ summary, open = false, children }: OpensProps) {
  const [isOpen, setIsOpen] = useState(open);
  return (
    <details className="opens" open={open} onToggle={(event) => setIsOpen(event.currentTarget.open)}>
      <summary>{summary}</summary>
      <div className="inside">{typeof children === 'function' ? isOpen && children() : children}</div>
    </details>
  );
}
