// Something that opens to its why: an amount to its lines, a line to its clause and its facts.
import type { ReactNode } from 'react';
import './opens.css';

interface OpensProps {
  /** What is read while it is shut. Its first child takes the room; a second, such as a figure, stands at the right. */
  summary: ReactNode;
  open?: boolean;
  children: ReactNode;
}

export function Opens({ summary, open, children }: OpensProps) {
  return (
    <details className="opens" open={open}>
      <summary>{summary}</summary>
      <div className="inside">{children}</div>
    </details>
  );
}
