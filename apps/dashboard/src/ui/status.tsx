// One line at the foot of the page that says what has just been done; read aloud, never in the way, gone with the next
// or with the page.
import { createContext, type ReactNode, use, useEffect, useState } from 'react';
import { useLocation } from 'wouter';
import './status.css';

const Saying = createContext<(sentence: string) => void>(() => undefined);

/** Says a sentence in the status line: “Invoice 2026-0007 is issued.” */
export function useStatus(): (sentence: string) => void {
  return use(Saying);
}

interface Said {
  readonly sentence: string;
  /** The page on which it was first seen; nothing yet where it has just been said, maybe on the way to another. */
  readonly at?: string;
}

export function WithStatus({ children }: { children: ReactNode }) {
  const [said, setSaid] = useState<Said>({ sentence: '' });
  const [at] = useLocation();
  useEffect(() => {
    if (said.at === undefined) setSaid({ ...said, at });
    else if (said.at !== at) setSaid({ sentence: '', at });
  }, [said, at]);
  const [say] = useState(() => (sentence: string) => setSaid({ sentence }));
  return (
    <Saying value={say}>
      {children}
      <p className="status" role="status" aria-live="polite">
        {said.sentence}
      </p>
    </Saying>
  );
}
