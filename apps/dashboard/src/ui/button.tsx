// Something that acts, and something that leads elsewhere and looks the same.
import { type ReactNode, type RefObject, useLayoutEffect, useRef } from 'react';
import { Link } from 'wouter';
import './button.css';

/** `primary` once on a page; `quiet` within a line; `destructive` for what cannot be taken back. */
export type ButtonKind = 'primary' | 'plain' | 'quiet' | 'destructive';

interface ButtonProps {
  kind?: ButtonKind;
  /** Pressed and not answered yet: it stays where it is, says so, and does not act twice. */
  busy?: boolean | undefined;
  type?: 'button' | 'submit';
  /** What it does, where the word on it does not say enough by itself: “Take out the leg to Aldbury”. */
  label?: string | undefined;
  onPress?: (() => void) | undefined;
  children: ReactNode;
}

export function Button({
  kind = 'plain',
  busy = false,
  type = 'button',
  label,
  onPress,
  children,
}: ButtonProps) {
  const button = useRef<HTMLButtonElement>(null);
  useHandOver(button);
  return (
    <button
      ref={button}
      type={type}
      className={`button ${kind}`}
      aria-disabled={busy || undefined}
      aria-label={label}
      onClick={(event) => {
        if (busy) event.preventDefault();
        else onPress?.();
      }}
    >
      {children}
    </button>
  );
}

/** A button that goes once it is pressed leaves the focus to the title of its page, and nobody nowhere. */
function useHandOver(button: RefObject<HTMLButtonElement | null>): void {
  useLayoutEffect(() => {
    const going = button.current;
    return () => {
      if (going === document.activeElement) going?.closest('main')?.querySelector('h1')?.focus();
    };
  }, [button]);
}

export function ButtonLink({
  to,
  kind = 'plain',
  children,
}: {
  to: string;
  kind?: ButtonKind;
  children: ReactNode;
}) {
  return (
    <Link href={to} className={`button ${kind}`}>
      {children}
    </Link>
  );
}

/** Buttons beside one another, the primary one first. */
export function Buttons({ children }: { children: ReactNode }) {
  return <div className="buttons">{children}</div>;
}
