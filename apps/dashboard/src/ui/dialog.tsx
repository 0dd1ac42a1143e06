// A question asked before the page: on a desk in the middle, on a phone a sheet at the thumb. Focus goes to
// the first field, stays in, and comes back to where it was; Escape closes.
import { type ReactNode, type RefObject, useEffect, useId, useRef } from 'react';
import { ui } from '../catalogue/ui.ts';
import { beginIn } from './begin-in.ts';
import { Button } from './button.tsx';
import './dialog.css';

interface DialogProps {
  title: string;
  onClose: () => void;
  /** Set true where what it was opened from goes with what was done in it: focus then comes back to the title. */
  gone?: RefObject<boolean>;
  children: ReactNode;
}

/** Drawn while it is open; whoever draws it decides when. */
export function Dialog({ title, onClose, gone, children }: DialogProps) {
  const dialog = useRef<HTMLDialogElement>(null);
  const id = useId();
  useEffect(() => {
    const before = document.activeElement;
    if (dialog.current) {
      dialog.current.showModal();
      beginIn(dialog.current);
    }
    return () => {
      const isThere = before instanceof HTMLElement && before.isConnected && !gone?.current;
      (isThere ? before : document.querySelector<HTMLElement>('main h1'))?.focus();
    };
  }, [gone]);
  return (
    <dialog
      ref={dialog}
      className="dialog"
      aria-labelledby={id}
      onCancel={(event) => {
        // A sheet that was opened from within this one is closed by itself.
        if (event.target !== event.currentTarget) return;
        event.preventDefault();
        onClose();
      }}
    >
      <header>
        <h2 id={id} tabIndex={-1}>
          {title}
        </h2>
        <Button kind="quiet" onPress={onClose}>
          {ui('close')}
        </Button>
      </header>
      {children}
    </dialog>
  );
}
