// A day and a time of day at a place. The browser's own pickers: known to the thumb, spoken by screen readers.
import { ui } from '../catalogue/ui.ts';
import { Field, type FieldProps } from './field.tsx';

interface TimeFieldProps extends FieldProps {
  value: string;
  onType: (text: string) => void;
}

/** A day as `2026-03-14`, or empty. */
export function DayField({ value, onType, ...field }: TimeFieldProps) {
  return (
    <Field {...field} unsaid={value === '' ? ui('giveDay') : undefined}>
      {(wiring) => (
        <input
          {...wiring}
          className="control short"
          type="date"
          value={value}
          onChange={(event) => onType(event.target.value)}
        />
      )}
    </Field>
  );
}

/** A time of day as `19:30`, or empty. */
export function TimeField({ value, onType, ...field }: TimeFieldProps) {
  return (
    <Field {...field} unsaid={value === '' ? ui('giveTime') : undefined}>
      {(wiring) => (
        <input
          {...wiring}
          className="control short"
          type="time"
          value={value}
          onChange={(event) => onType(event.target.value)}
        />
      )}
    </Field>
  );
}
