// A tariff while it is written: clauses on one side, the example they price on the other.
import { currencies, currency as currencyOf } from '@colla/money';
import { readTariff, type WrittenTariff } from '@colla/rates';
import { granted } from '@colla/refusal';
import { useMemo, useState } from 'react';
import { tariffs as say } from '../../catalogue/tariffs.ts';
import { spokenLocale } from '../../locale.ts';
import {
  Button,
  Choice,
  DayField,
  Form,
  LinesField,
  type Said,
  TextField,
  useStatus,
} from '../../ui/index.ts';
import { ClauseList } from './clause-list.tsx';
import type { TariffDraft, WrittenDraft } from './draft.ts';
import { type ExampleShape, startingExamples } from './example.ts';
import { ExampleView, type ShowStatement } from './example-view.tsx';
import { ExamplesTable } from './examples-table.tsx';
import { readDraft, slipsAt } from './reading.ts';
import type { Reader } from './typed.ts';
import { VersionChanges } from './version-changes.tsx';

interface TariffEditorProps {
  start: TariffDraft;
  /** A further version keeps its tariff's name and currency. */
  of: 'new tariff' | 'new version';
  /** The version that this one follows. */
  before?: WrittenTariff;
  zone: string;
  busy: boolean;
  /** Why the server did not keep it. */
  problem: Said | undefined;
  show: ShowStatement;
  onKeep: (written: WrittenDraft) => void;
  onGiveUp: () => void;
}

export function TariffEditor(props: TariffEditorProps) {
  const { start, of, before, zone, busy, problem, show, onKeep, onGiveUp } = props;
  const [draft, setDraft] = useState(start);
  const reader = useMemo(() => readerOf(draft.currency, zone), [draft.currency, zone]);
  const reading = useMemo(() => readDraft(draft, reader), [draft, reader]);
  const [earlier] = useState(() => before && granted(readTariff(before)));
  const [examples, setExamples] = useState(() => startingExamples(reading.tariff));
  const [shape, setShape] = useState<ExampleShape>('whole');
  const [refusal, setRefusal] = useState<Said>();
  const status = useStatus();
  const change = (next: TariffDraft) => {
    setDraft(next);
    setRefusal(undefined);
  };
  const keep = () => {
    if (reading.slips.length === 0) {
      setRefusal(undefined);
      onKeep(reading.written);
      return;
    }
    const detail = say('wrong', { count: reading.slips.length });
    setRefusal({ detail, errors: reading.slips });
    status(detail);
  };
  const foot = (
    <>
      <Button type="submit" kind="primary" busy={busy}>
        {say(of === 'new tariff' ? 'keep' : 'keepVersion')}
      </Button>
      <Button onPress={onGiveUp}>{say('giveUp')}</Button>
    </>
  );
  return (
    <div className="tariff-editor">
      <Form problem={refusal ?? problem} onSubmit={keep} foot={foot}>
        <HeadFields draft={draft} reading={reading} of={of} onChange={change} />
        <ClauseList draft={draft} reading={reading} reader={reader} onChange={change} />
      </Form>
      <div className="tariff-beside">
        <ExamplesTable examples={examples} before={earlier} now={reading.tariff} reader={reader} />
        {earlier && <VersionChanges before={earlier} now={reading.tariff} locale={reader.locale} />}
        <ExampleView
          key={shape}
          shape={shape}
          example={examples[shape]}
          tariff={reading.tariff}
          reader={reader}
          show={show}
          onChoose={setShape}
          onChange={(example) => setExamples({ ...examples, [shape]: example })}
          onAgain={() => setExamples(startingExamples(reading.tariff))}
        />
      </div>
    </div>
  );
}

function readerOf(currency: string, zone: string): Reader & { zone: string } {
  return { currency: granted(currencyOf(currency)), locale: spokenLocale(), zone };
}

const money = currencies().map((code) => ({ value: code as string, label: code as string }));

interface HeadProps {
  draft: TariffDraft;
  reading: ReturnType<typeof readDraft>;
  of: TariffEditorProps['of'];
  onChange: (draft: TariffDraft) => void;
}

function HeadFields({ draft, reading, of, onChange }: HeadProps) {
  const wrong = (field: string) => slipsAt(reading.slips, `/${field}`);
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
            options={money}
            onChoose={(currency) => onChange({ ...draft, currency })}
          />
        </>
      )}
      <DayField
        label={say('fromField')}
        at="/from"
        wrong={wrong('from')}
        value={draft.from}
        onType={(from) => onChange({ ...draft, from })}
      />
      <LinesField
        label={say('noteField')}
        hint={say('noteHint')}
        optional
        rows={2}
        at="/note"
        value={draft.note}
        onType={(note) => onChange({ ...draft, note })}
      />
    </div>
  );
}
