// What stands above the clauses, the tariff's name, currency and first day; and below them, how open points are read.
import { LOAD } from '@colla/money';
import { tariffs as say } from '../../catalogue/tariffs.ts';
import { payableCurrencies } from '../../payable.ts';
import { Choice, DayField, LinesField, TextField } from '../../ui/index.ts';
import type { TariffDraft } from './draft.ts';
import { type Reading, slipsAt } from './reading.ts';

/** A tariff of load counts hours as others count money. */
const counted = [
  ...payableCurrencies().map((code) => ({ value: code, label: code })),
  { value: LOAD as string, label: say('hoursOfLoad') },
];

interface HeadProps {
  draft: TariffDraft;
  reading: Reading;
  /** A further version keeps its tariff's name and currency. */
  of: 'new tariff' | 'new version';
  onChange: (draft: TariffDraft) => void;
}

export function HeadFields({ draft, reading, of, onChange }: HeadProps) {
  return (
    <div className="fields">
      {of === 'new tariff' && (
        <>
          <TextField
            label={say('nameField')}
            hint={say('nameHint')}
            at="/name"
            value={draft.name}
            onType={(name) => onChange({ ...draft, name })}
          />
          <Choice
            label={say('currency')}
            at="/currency"
            value={draft.currency}
            options={counted}
            onChoose={(currency) => onChange({ ...draft, currency })}
          />
        </>
      )}
      <DayField
        label={say('fromField')}
        at="/from"
        wrong={slipsAt(reading.slips, '/from')}
        value={draft.from}
        onType={(from) => onChange({ ...draft, from })}
      />
    </div>
  );
}

/** What the clauses leave open is said after them. */
export function NoteField({ draft, onChange }: Pick<HeadProps, 'draft' | 'onChange'>) {
  return (
    <LinesField
      label={say('noteField')}
      hint={say('noteHint')}
      optional
      rows={2}
      at="/note"
      value={draft.note}
      onType={(note) => onChange({ ...draft, note })}
    />
  );
}
