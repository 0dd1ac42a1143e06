// What one unit of another currency is in that of the books: as somebody published it, on a day.
import { ui } from '../catalogue/ui.ts';
import { TextField } from './field.tsx';
import { DayField } from './time-field.tsx';

/** As typed. */
export interface TypedRate {
  readonly rate: string;
  readonly on: string;
  readonly source: string;
}

interface RateFieldsProps {
  value: TypedRate;
  /** The currency of the document, and that of the books. */
  from: string;
  to: string;
  onType: (to: TypedRate) => void;
}

/** Nothing where both are one currency: there is no rate to ask for. */
export function RateFields({ value, from, to, onType }: RateFieldsProps) {
  if (from === to) return null;
  return (
    <div className="fields">
      <TextField
        label={ui('rateOf', { from, to })}
        hint={ui('rateHint', { to })}
        at="/rate/rate"
        value={value.rate}
        onType={(rate) => onType({ ...value, rate })}
      />
      <DayField
        label={ui('rateOn')}
        at="/rate/on"
        value={value.on}
        onType={(on) => onType({ ...value, on })}
      />
      <TextField
        label={ui('rateSource')}
        at="/rate/source"
        value={value.source}
        onType={(source) => onType({ ...value, source })}
      />
    </div>
  );
}

/** What is sent: a comma is read as the decimal mark; nothing of a rate between a currency and itself. */
export function rateOf(typed: TypedRate, { from, to }: { from: string; to: string }): { rate?: TypedRate } {
  if (from === to) return {};
  return {
    rate: { rate: typed.rate.trim().replace(',', '.'), on: typed.on, source: typed.source.trim() },
  };
}
