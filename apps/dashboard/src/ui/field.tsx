// A field: its label above, a hint below, and beside it what is wrong and how to mend it.
import { type InputHTMLAttributes, type ReactNode, useId } from 'react';
import { ui } from '../catalogue/ui.ts';
import './field.css';
import { useWrong } from './form.tsx';

export interface FieldProps {
  label: string;
  hint?: string | undefined;
  /** The JSON pointer of the value that it enters, by which a refusal of the form finds it: `/calls/0/planned/from`. */
  at?: string | undefined;
  /** A refusal known before anything is sent. */
  wrong?: string | undefined;
  optional?: boolean | undefined;
}

/** What a control inside a field must carry. */
export interface Wiring {
  id: string;
  'aria-describedby': string | undefined;
  'aria-invalid': boolean | undefined;
  'data-at': string | undefined;
}

interface FieldFrame extends FieldProps {
  /** What was understood of what is typed, said as it is typed. */
  understood?: string | undefined;
  /** What a refusal comes to while nothing stands in it. */
  unsaid?: string | undefined;
  children: (wiring: Wiring) => ReactNode;
}

export function Field({ label, hint, at, wrong, optional, understood, unsaid, children }: FieldFrame) {
  const id = useId();
  const said = useWrong({ at, label });
  const sentence = wrong ?? (said && (unsaid ?? said));
  const described = [hint && `${id}hint`, understood && `${id}read`, sentence && `${id}wrong`].filter(
    Boolean,
  );
  return (
    <div className="field">
      <label htmlFor={id}>
        {label} {optional && <span className="optional">({ui('optional')})</span>}
      </label>
      {children({
        id,
        'aria-describedby': described.join(' ') || undefined,
        'aria-invalid': sentence ? true : undefined,
        'data-at': at,
      })}
      {hint && (
        <p className="hint" id={`${id}hint`}>
          {hint}
        </p>
      )}
      {understood && (
        <p className="understood" id={`${id}read`}>
          {understood}
        </p>
      )}
      {sentence && (
        <p className="wrong" id={`${id}wrong`}>
          {sentence}
        </p>
      )}
    </div>
  );
}

interface Typed extends FieldProps {
  value: string;
  onType: (text: string) => void;
}

interface TextFieldProps extends Typed {
  autoComplete?: InputHTMLAttributes<HTMLInputElement>['autoComplete'];
  type?: 'text' | 'email' | 'search';
  /** Words to choose from, which do not forbid others. */
  suggestions?: readonly string[] | undefined;
  /** The most letters it takes; what a line of words may have where left out. */
  most?: number;
}

/** The longest line of words that the books keep. */
const LONGEST_WORDS = 200;

export function TextField({
  value,
  onType,
  autoComplete = 'off',
  type = 'text',
  suggestions = [],
  most = LONGEST_WORDS,
  ...field
}: TextFieldProps) {
  const list = useId();
  return (
    <Field {...field}>
      {(wiring) => (
        <>
          <input
            {...wiring}
            className="control"
            type={type}
            value={value}
            autoComplete={autoComplete}
            list={suggestions.length > 0 ? list : undefined}
            maxLength={most}
            onChange={(event) => onType(event.target.value)}
          />
          {suggestions.length > 0 && (
            <datalist id={list}>
              {suggestions.map((suggestion) => (
                <option key={suggestion} value={suggestion} />
              ))}
            </datalist>
          )}
        </>
      )}
    </Field>
  );
}

/** Several lines of text: a note, an address. */
export function LinesField({ value, onType, rows = 3, ...field }: Typed & { rows?: number }) {
  return (
    <Field {...field}>
      {(wiring) => (
        <textarea
          {...wiring}
          className="control"
          rows={rows}
          value={value}
          onChange={(event) => onType(event.target.value)}
        />
      )}
    </Field>
  );
}

/** A whole number with its unit: minutes, people. Kept as typed; the form reads it. */
export function NumberField({ value, onType, unit, ...field }: Typed & { unit?: string | undefined }) {
  return (
    <Field {...field}>
      {(wiring) => (
        <span className="beside">
          <input
            {...wiring}
            className="control money"
            inputMode="decimal"
            value={value}
            autoComplete="off"
            onChange={(event) => onType(event.target.value)}
          />
          {unit}
        </span>
      )}
    </Field>
  );
}
