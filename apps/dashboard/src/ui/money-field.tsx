// Money as people type it, with what was understood of it beside it.
import { refused } from '@colla/refusal';
import { ui } from '../catalogue/ui.ts';
import { readTyped, sayMoney } from '../locale.ts';
import { Field, type FieldProps } from './field.tsx';

interface MoneyFieldProps extends FieldProps {
  /** As typed: `45`, `45.00`, `45,00`. `readTyped` of ../locale.ts makes the wire's text of it. */
  value: string;
  currency: string;
  onType: (text: string) => void;
}

export function MoneyField({ value, currency, onType, ...field }: MoneyFieldProps) {
  const read = value.trim() === '' ? undefined : readTyped(value, currency);
  const no = refused(read) ? read.sentence : undefined;
  const understood =
    read !== undefined && !refused(read) ? ui('understood', { amount: sayMoney(read, currency) }) : undefined;
  return (
    <Field {...field} wrong={field.wrong ?? no} understood={understood}>
      {(wiring) => (
        <span className="beside">
          <input
            {...wiring}
            className="control money"
            inputMode="decimal"
            autoComplete="off"
            value={value}
            onChange={(event) => onType(event.target.value)}
          />
          {currency}
        </span>
      )}
    </Field>
  );
}
