// What some tariffs ask of a work: how hard its part is, and how many pages it has.
import { useState } from 'react';
import { engagements as say } from '../../catalogue/engagements.ts';
import { NumberField, Opens, TextField } from '../../ui/index.ts';
import type { Asked } from './asked.ts';

interface AskedOfWorkProps {
  work: { readonly difficulty: string; readonly pages: string };
  /** JSON pointer of the work. */
  at: string;
  asked: Asked;
  onChange: (to: { difficulty: string } | { pages: string }) => void;
}

/** What a tariff asks, and no more. */
export function AskedOfWork(props: AskedOfWorkProps) {
  return NAMES.filter((name) => isAsked(name, props.asked)).map((name) => (
    <FieldOf key={name} {...props} name={name} />
  ));
}

/** What a tariff asks, and what somebody wrote; the rest folded away. */
export function AllOfWork(props: AskedOfWorkProps) {
  const { work, asked } = props;
  const [inSight] = useState(() => NAMES.filter((name) => isAsked(name, asked) || work[name] !== ''));
  const rest = NAMES.filter((name) => !inSight.includes(name));
  const fields = (names: readonly Name[]) => (
    <div className="fields">
      {names.map((name) => (
        <FieldOf key={name} {...props} name={name} />
      ))}
    </div>
  );
  return (
    <>
      {inSight.length > 0 && fields(inSight)}
      {rest.length > 0 && <Opens summary={<span>{say('moreWork')}</span>}>{fields(rest)}</Opens>}
    </>
  );
}

const NAMES = ['difficulty', 'pages'] as const;
type Name = (typeof NAMES)[number];

function isAsked(name: Name, asked: Asked): boolean {
  return name === 'pages' ? asked.pages : asked.words('difficulty').length > 0;
}

function FieldOf({ name, work, at, asked, onChange }: AskedOfWorkProps & { name: Name }) {
  const field = { label: say(name), at: `${at}/${name}`, optional: true };
  if (name === 'pages')
    return <NumberField {...field} value={work.pages} onType={(pages) => onChange({ pages })} />;
  const words = asked.words('difficulty');
  return (
    <TextField
      {...field}
      hint={words.length > 0 ? say('sameWord') : undefined}
      suggestions={words}
      value={work.difficulty}
      onType={(difficulty) => onChange({ difficulty })}
    />
  );
}
