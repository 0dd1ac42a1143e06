// One of several, some of several, yes or no.
import { useId } from 'react';
import { ui } from '../catalogue/ui.ts';
import { Field, type FieldProps } from './field.tsx';
import { useWrong } from './form.tsx';

export interface Option<Value extends string> {
  readonly value: Value;
  readonly label: string;
}

interface ChoiceProps<Value extends string> extends FieldProps {
  value: Value | '';
  options: readonly Option<Value>[];
  onChoose: (value: Value) => void;
}

/** One of several, folded: for more than four. */
export function Choice<Value extends string>({ value, options, onChoose, ...field }: ChoiceProps<Value>) {
  return (
    <Field {...field}>
      {(wiring) => (
        <select
          {...wiring}
          className="control"
          value={value}
          onChange={(event) => {
            const chosen = options.find((option) => option.value === event.target.value);
            if (chosen) onChoose(chosen.value);
          }}
        >
          {value === '' && <option value="">{ui('pick')}</option>}
          {options.map((option) => (
            <option key={option.value} value={option.value}>
              {option.label}
            </option>
          ))}
        </select>
      )}
    </Field>
  );
}

/** One of a few, all in sight. */
export function Options<Value extends string>({ value, options, onChoose, ...field }: ChoiceProps<Value>) {
  const name = useId();
  return (
    <FieldSet {...field}>
      {options.map((option) => (
        <label className="tick" key={option.value}>
          <input
            type="radio"
            name={name}
            checked={option.value === value}
            onChange={() => onChoose(option.value)}
          />
          {option.label}
        </label>
      ))}
    </FieldSet>
  );
}

interface TicksProps<Value extends string> extends FieldProps {
  values: readonly Value[];
  options: readonly Option<Value>[];
  onChange: (values: Value[]) => void;
}

/** Any of several, all in sight, kept in the order of the options. */
export function Ticks<Value extends string>({ values, options, onChange, ...field }: TicksProps<Value>) {
  const toggled = (value: Value, on: boolean) =>
    options.map((option) => option.value).filter((each) => (each === value ? on : values.includes(each)));
  return (
    <FieldSet {...field}>
      {options.map(({ value, label }) => (
        <Tick
          key={value}
          label={label}
          on={values.includes(value)}
          onChange={(on) => onChange(toggled(value, on))}
        />
      ))}
    </FieldSet>
  );
}

export function Tick({
  label,
  on,
  onChange,
}: {
  label: string;
  on: boolean;
  onChange: (on: boolean) => void;
}) {
  return (
    <label className="tick">
      <input type="checkbox" checked={on} onChange={(event) => onChange(event.target.checked)} />
      {label}
    </label>
  );
}

function FieldSet({
  label,
  hint,
  at,
  wrong,
  optional,
  children,
}: FieldProps & { children: React.ReactNode }) {
  const said = useWrong({ at, label });
  const sentence = wrong ?? said;
  return (
    <fieldset className="field" data-at={at} tabIndex={-1}>
      <legend>
        {label} {optional && <span className="optional">({ui('optional')})</span>}
      </legend>
      {hint && <p className="hint">{hint}</p>}
      <div className="options">{children}</div>
      {sentence && <p className="wrong">{sentence}</p>}
    </fieldset>
  );
}
