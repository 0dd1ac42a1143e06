// The practice as one form, in four parts.
import type { OrganisationJson } from '@colla/wire';
import { useState } from 'react';
import { useSend } from '../../books.ts';
import { practice } from '../../catalogue/practice.ts';
import { payableCurrencies } from '../../payable.ts';
import {
  Button,
  Field,
  Form,
  LinesField,
  NumberField,
  Options,
  Part,
  type Said,
  TextField,
  useStatus,
} from '../../ui/index.ts';
import './practice.css';
import { limitWrong, localeWrong, type PracticeForm, practiceChange, practiceForm } from './practice-form.ts';
import { TermRows } from './term-rows.tsx';
import { slipsInTerms } from './terms.ts';

interface PracticeProps {
  of: OrganisationJson;
  /** What the tariffs call the terms: a clause fits no other name. */
  termNames: readonly string[];
}

export function Practice({ of, termNames }: PracticeProps) {
  const [form, setForm] = useState(() => practiceForm(of));
  const [wrong, setWrong] = useState<Said>();
  const keeping = useSend('changeOrganisation');
  const say = useStatus();
  const change = (next: Partial<PracticeForm>) => setForm({ ...form, ...next });
  const submit = async () => {
    const errors = slipsInTerms(form.terms);
    setWrong(errors[0] && { detail: errors[0].detail, errors });
    if (limitWrong(form) || localeWrong(form) || errors.length > 0) return;
    if (await keeping.send({ body: practiceChange(form) })) say(practice('kept'));
  };
  return (
    <Form
      problem={wrong ?? keeping.problem}
      onSubmit={submit}
      foot={
        <Button type="submit" kind="primary" busy={keeping.busy}>
          {practice('keep')}
        </Button>
      }
    >
      <Who form={form} change={change} />
      <Money form={form} change={change} />
      <Place form={form} change={change} />
      <Work form={form} change={change} termNames={termNames} />
    </Form>
  );
}

interface PartProps {
  form: PracticeForm;
  change: (next: Partial<PracticeForm>) => void;
}

function Who({ form, change }: PartProps) {
  return (
    <Part title={practice('who')}>
      <p className="aside">{practice('whoWhy')}</p>
      <TextField
        label={practice('name')}
        at="/name"
        autoComplete="organization"
        value={form.name}
        onType={(name) => change({ name })}
      />
      <LinesField
        label={practice('address')}
        hint={practice('addressHint')}
        at="/address"
        optional
        value={form.address}
        onType={(address) => change({ address })}
      />
      <div className="fields">
        <TextField
          label={practice('email')}
          at="/email"
          optional
          type="email"
          autoComplete="email"
          value={form.email}
          onType={(email) => change({ email })}
        />
        <TextField
          label={practice('taxNumber')}
          hint={practice('taxNumberHint')}
          at="/taxNumber"
          optional
          value={form.taxNumber}
          onType={(taxNumber) => change({ taxNumber })}
        />
      </div>
    </Part>
  );
}

function Money({ form, change }: PartProps) {
  return (
    <Part title={practice('money')}>
      <LinesField
        label={practice('payTo')}
        hint={practice('payToHint')}
        at="/payTo"
        optional
        value={form.payTo}
        onType={(payTo) => change({ payTo })}
      />
      <TextField
        label={practice('currency')}
        hint={practice('currencyHint')}
        at="/currency"
        suggestions={payableCurrencies()}
        value={form.currency}
        onType={(currency) => change({ currency })}
      />
    </Part>
  );
}

function Place({ form, change }: PartProps) {
  return (
    <Part title={practice('place')}>
      <TextField
        label={practice('zone')}
        hint={practice('zoneHint')}
        at="/zone"
        suggestions={Intl.supportedValuesOf('timeZone')}
        value={form.zone}
        onType={(zone) => change({ zone })}
      />
      <Field
        label={practice('locale')}
        hint={practice('localeHint')}
        at="/locale"
        wrong={localeWrong(form)}
        understood={localeWrong(form) ? undefined : sample(form)}
      >
        {(wiring) => (
          <input
            {...wiring}
            className="control"
            autoComplete="off"
            value={form.locale}
            onChange={(event) => change({ locale: event.target.value })}
          />
        )}
      </Field>
      <Options
        label={practice('paper')}
        at="/paper"
        value={form.paper}
        options={[
          { value: 'A4', label: practice('a4') },
          { value: 'Letter', label: practice('letter') },
        ]}
        onChoose={(paper) => change({ paper })}
      />
    </Part>
  );
}

/** One evening and one figure, as the locale that is typed writes them. */
function sample({ locale }: PracticeForm): string {
  const of = locale.trim();
  const evening = Date.UTC(2026, 2, 14, 19, 30);
  return practice('localeReads', {
    day: new Intl.DateTimeFormat(of, { dateStyle: 'long', timeZone: 'UTC' }).format(evening),
    time: new Intl.DateTimeFormat(of, { timeStyle: 'short', timeZone: 'UTC' }).format(evening),
    figure: new Intl.NumberFormat(of, { minimumFractionDigits: 2 }).format(1234.5),
  });
}

function Work({ form, change, termNames }: PartProps & { termNames: readonly string[] }) {
  return (
    <Part title={practice('work')}>
      <NumberField
        label={practice('limit')}
        hint={practice('limitHint')}
        at="/weeklyLimit"
        wrong={limitWrong(form)}
        unit={practice('hours')}
        value={form.limit}
        onType={(limit) => change({ limit })}
      />
      <LinesField
        label={practice('holidays')}
        hint={practice('holidaysHint')}
        at="/holidays"
        optional
        value={form.holidays}
        onType={(holidays) => change({ holidays })}
      />
      <TermRows terms={form.terms} names={termNames} onChange={(terms) => change({ terms })} />
    </Part>
  );
}
