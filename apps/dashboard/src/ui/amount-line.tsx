// A line of a list with its amount, and what that opens to: the clause's sentence, what it is for, the facts, the
// arithmetic, and the lines it is put together from, which open in the same way.
import type { ReactNode } from 'react';
import { Link } from 'wouter';
import { why as say } from '../catalogue/why.ts';
import './amount.css';
import { CopyText } from './copy-text.tsx';
import { Figure } from './figure.tsx';
import { Opens } from './opens.tsx';
import { aboutOnly, type Why, whyText } from './why.ts';

interface AmountLineProps {
  why: Why;
  /** Said small below what it is: when it was, of what. */
  under?: ReactNode;
  /** In a column whose head or foot says the currency. */
  bare?: boolean;
}

export function AmountLine({ why, under, bare = false }: AmountLineProps) {
  const summary = (
    <>
      <span>
        {why.what}
        {under && <span className="aside opens-amount-under">{under}</span>}
      </span>
      <Figure amount={why.amount} currency={why.currency} bare={bare} />
    </>
  );
  return <Opens summary={summary}>{() => <Opened why={why} />}</Opens>;
}

/** What an amount opens to: at once, or when it has been asked for. */
export function Opened({ why }: { why: Why }) {
  return why.later ? why.later() : <WhyView why={why} />;
}

export function WhyView({ why }: { why: Why }) {
  const { sentence, parts = [], more } = why;
  return (
    <div className="why">
      {sentence && <blockquote>{sentence}</blockquote>}
      <Told why={why} />
      {parts.length > 0 && <Parts parts={parts} />}
      <div className="buttons">
        {more && <Link href={more.to}>{more.label}</Link>}
        <CopyText text={() => whyText(why)} />
      </div>
    </div>
  );
}

/** What it is for, from which facts, and how it is worked out. */
function Told({ why: { about = [], facts = [], arithmetic = '' } }: { why: Why }) {
  const rows = (
    [
      ['about', about.join('; ')],
      ['facts', facts.join('; ')],
      ['arithmetic', arithmetic],
    ] as const
  ).filter(([, value]) => value !== '');
  if (rows.length === 0) return null;
  return (
    <dl>
      {rows.map(([name, value]) => (
        <div key={name}>
          <dt>{say(name)}</dt>
          <dd>{joined(value)}</dd>
        </div>
      ))}
    </dl>
  );
}

function Parts({ parts }: { parts: readonly Why[] }) {
  return (
    <ul className="why-parts">
      {parts.map((part, at) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: two parts may say the same, and none changes its place
        <li key={at}>
          <AmountLine why={part} under={aboutOnly(part)} bare />
        </li>
      ))}
    </ul>
  );
}

/** Hours keep their sign on the line of their figure: “1.5 h”. */
function joined(text: string): string {
  return text.replaceAll(/(\d) h\b/g, '$1\u00a0h');
}
