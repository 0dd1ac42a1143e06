// One line at the foot of the page that says what has just been done; read aloud, never in the way, gone with the next.
import { createContext, type ReactNode, use, useState } from 'react';
import './status.css';

const Saying = createContext<(sentence: string) => void>(() => undefined);

/** Says a sentence in the status line: “Invoice 2026-0007 is issued.” */
export function useStatus(): (sentence: string) => void {
  return use(Saying);
}

export function WithStatus({ children }: { children: ReactNode }) {
  const [sentence, say] = useState('');
  return (
    <Saying value={say}>
      {children}
      <p className="status" role="status" aria-live="polite">
        {sentence}
      </p>
    </Saying>
  );
}
