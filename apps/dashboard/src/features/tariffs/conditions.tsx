// Which calls a clause, or a part of it, is for: the conditions it has, one under another, and a list of those it could have.
import { type ReactNode, useState } from 'react';
import { tariffs as say } from '../../catalogue/tariffs.ts';
import { Button, Choice } from '../../ui/index.ts';
import { selectorParameters } from './clause-parameters.ts';
import type { Shape } from './parameter.ts';
import { freshOf } from './shown.ts';
import type { Fields, Filling, Typed } from './typed.ts';

interface ConditionsProps {
  title: string;
  fields: Fields;
  /** JSON pointer of the selector. */
  at: string;
  filling: Filling;
  onChange: (fields: Fields) => void;
  /** Draws the fields of one condition. */
  draw: (asked: AskedFor) => ReactNode;
}

interface AskedFor {
  readonly title: string;
  readonly optional: false;
  readonly shape: Shape;
  readonly value: Typed;
  readonly at: string;
  readonly filling: Filling;
  readonly onChange: (value: Typed) => void;
}

export function Conditions({ title, fields, at, filling, onChange, draw }: ConditionsProps) {
  // What is asked here stays, also where nothing stands in it any more or the sentence says it by now.
  const [asked, setAsked] = useState(() => namesAsked(fields, at, filling));
  const inUse = selectorParameters.filter(({ name }) => asks(fields[name]) || asked.includes(name));
  const others = selectorParameters.filter((part) => !inUse.includes(part));
  const left = inUse.filter(({ name }) => asked.includes(name) || !filling.said.has(`${at}/${name}`));
  const add = (name: string) => {
    const part = others.find((other) => other.name === name);
    if (!part) return;
    setAsked([...asked, name]);
    onChange({ ...fields, [name]: freshOf(part.shape, filling.reader) });
  };
  const remove = (name: string) => {
    setAsked(asked.filter((other) => other !== name));
    onChange({ ...fields, [name]: undefined });
  };
  return (
    <fieldset className="field tariff-wide clause-conditions">
      <legend>{title}</legend>
      {inUse.length === 0 && <p className="aside">{say('appliesToAll')}</p>}
      {inUse.length > 1 && <p className="aside">{say('appliesHint')}</p>}
      {left.map(({ name, title, shape }) => (
        <div key={name}>
          {draw({
            title,
            optional: false,
            shape,
            value: fields[name],
            at: `${at}/${name}`,
            filling: { ...filling, said: new Set() },
            onChange: (value) => onChange({ ...fields, [name]: value }),
          })}
          <Button kind="quiet" label={say('conditionRemoveLabel', { title })} onPress={() => remove(name)}>
            {say('remove')}
          </Button>
        </div>
      ))}
      <Choice
        label={say('conditionAdd')}
        value=""
        options={others.map(({ name, title }) => ({ value: name, label: title }))}
        onChoose={add}
      />
    </fieldset>
  );
}

/** The conditions that the sentence has no field for. */
function namesAsked(fields: Fields, at: string, { said }: Filling): readonly string[] {
  const names = selectorParameters.map(({ name }) => name);
  return names.filter((name) => asks(fields[name]) && !said.has(`${at}/${name}`));
}

/** Whether anything stands in the form for it. */
function asks(typed: Typed): boolean {
  return Array.isArray(typed) ? typed.length > 0 : typed !== undefined && typed !== '';
}
