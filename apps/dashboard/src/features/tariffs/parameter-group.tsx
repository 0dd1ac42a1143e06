// Parameters that hold others: a list of steps, one of several variants, something that may be left out.
import type { ReactNode } from 'react';
import { plainWord, tariffs as say } from '../../catalogue/tariffs.ts';
import { Button, Options, Tick } from '../../ui/index.ts';
import type { Parameter, Shape } from './parameter.ts';
import { slipsAt } from './reading.ts';
import { turnTo } from './shown.ts';
import type { Fields, Filling, Typed } from './typed.ts';

interface Held {
  title: string;
  at: string;
  filling: Filling;
  onChange: (value: Typed) => void;
}

/** A named set of fields; where it may be left out, a tick opens it. */
export function OptionalFields(
  props: Held & {
    optional: boolean;
    shape: Shape;
    value: Typed;
    /** With what it begins where it is added. */
    begin: () => Typed;
    children: ReactNode;
  },
) {
  const { title, optional, shape, value, begin, onChange, children } = props;
  const on = value !== undefined;
  const toggle = (say: boolean) => onChange(say ? begin() : undefined);
  return (
    <fieldset className="field tariff-wide" aria-label={title}>
      {optional && <Tick label={title} on={on} onChange={toggle} />}
      {!optional && shape.is === 'group' && <p className="tariff-head">{title}</p>}
      {(on || !optional) && children}
    </fieldset>
  );
}

interface VariantFieldProps extends Held {
  shape: Extract<Shape, { is: 'variant' }>;
  fields: Fields;
  /** Draws the fields of the variant chosen. */
  inside: (parts: readonly Parameter[]) => ReactNode;
}

/** One of some variants, and the fields of the one chosen. What two variants both ask for is kept. */
export function VariantField({ title, shape, fields, at, filling, onChange, inside }: VariantFieldProps) {
  const word = String(fields[shape.by] ?? '');
  const chosen = shape.variants.find((variant) => variant.word === word);
  const choose = (next: string) => onChange(turnTo(shape, fields, next, filling.reader));
  const options = shape.variants.map((variant) => ({ value: variant.word, label: plainWord(variant.word) }));
  return (
    <>
      {!filling.said.has(at) && (
        <Options label={title} at={`${at}/${shape.by}`} value={word} options={options} onChoose={choose} />
      )}
      {chosen && chosen.parts.length > 0 && inside(chosen.parts)}
    </>
  );
}

interface ListFieldProps extends Held {
  optional: boolean;
  shape: Extract<Shape, { is: 'list' }>;
  items: readonly Typed[];
  /** With what the first begins. */
  first: () => Typed;
  /** Draws one item. */
  inside: (item: Typed, place: number, onChange: (value: Typed) => void) => ReactNode;
}

/** A list of groups: each can be taken out, another like the last added. */
export function ListField({
  title,
  optional,
  shape,
  items,
  first,
  at,
  filling,
  onChange,
  inside,
}: ListFieldProps) {
  const wrong = slipsAt(filling.slips, at);
  const change = (place: number) => (value: Typed) =>
    onChange(items.map((other, index) => (index === place ? value : other)));
  return (
    <fieldset className="field tariff-wide" data-at={at} tabIndex={-1}>
      <legend>{title}</legend>
      {wrong && <p className="wrong">{wrong}</p>}
      <ol className="clause-items">
        {items.map((item, place) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a step has no name but its place
          <li key={place}>
            {inside(item, place, change(place))}
            {(optional || items.length > shape.least) && (
              <Button
                kind="quiet"
                label={say('removeItemLabel', { number: place + 1, title })}
                onPress={() => onChange(items.filter((_, index) => index !== place))}
              >
                {say('removeItem')}
              </Button>
            )}
          </li>
        ))}
      </ol>
      {items.length < shape.most && (
        <Button onPress={() => onChange([...items, items.at(-1) ?? first()])}>{say('addItem')}</Button>
      )}
    </fieldset>
  );
}
