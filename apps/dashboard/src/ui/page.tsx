// The frame of every screen: its title is the subject of the one question that it answers, over a stave.
import { type ReactNode, useEffect, useId, useRef } from 'react';
import './page.css';
import { Stave } from './stave.tsx';

interface PageProps {
  title: string;
  /** One line below the title: whose, when, how it stands. */
  under?: ReactNode;
  /** What can be done here, the primary action first. */
  actions?: ReactNode;
  children: ReactNode;
}

/** True once a first screen has been shown. */
let begun = false;

export function Page({ title, under, actions, children }: PageProps) {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    document.title = `${title} · Colla Parte`;
  }, [title]);
  useEffect(() => {
    // Who comes from another screen begins at its title, even where the link that led here is gone by now; who
    // opens the program begins at the top.
    if (begun) heading.current?.focus();
    begun = true;
  }, []);
  return (
    <main className="page" id="page">
      <header>
        <div className="title">
          <h1 ref={heading} tabIndex={-1}>
            {title}
          </h1>
          {actions && <div className="buttons">{actions}</div>}
        </div>
        {under && <div className="under">{under}</div>}
        <Stave />
      </header>
      {children}
    </main>
  );
}

/** A part of a screen under its own heading. */
export function Part({
  title,
  actions,
  children,
}: {
  title: string;
  actions?: ReactNode;
  children: ReactNode;
}) {
  const id = useId();
  return (
    <section className="part" aria-labelledby={id}>
      <header>
        <h2 id={id}>{title}</h2>
        {actions && <div className="buttons">{actions}</div>}
      </header>
      {children}
    </section>
  );
}
