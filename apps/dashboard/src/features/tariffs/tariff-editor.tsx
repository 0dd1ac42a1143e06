// A tariff while it is written: clauses on one side, the example they price on the other.
import { currency as currencyOf } from '@colla/money';
import { readTariff, type WrittenTariff } from '@colla/rates';
import { granted } from '@colla/refusal';
import { useMemo, useState } from 'react';
import { tariffs as say } from '../../catalogue/tariffs.ts';
import { spokenLocale } from '../../locale.ts';
import { Button, Form, type Said, useStatus } from '../../ui/index.ts';
import { Beside } from './beside.tsx';
import { ClauseList } from './clause-list.tsx';
import type { TariffDraft, WrittenDraft } from './draft.ts';
import { type ExampleShape, type Examples, startingExamples } from './example.ts';
import type { ShowStatement } from './example-shown.ts';
import { ExampleView } from './example-view.tsx';
import { ExamplesBar } from './examples-bar.tsx';
import { ExamplesTable } from './examples-table.tsx';
import { HeadFields, NoteField } from './head-fields.tsx';
import { AsksBeforeLeaving } from './leaving.tsx';
import { readDraft } from './reading.ts';
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
  const [began] = useState(start);
  const [draft, setDraft] = useState(began);
  const reader = useMemo(() => readerOf(draft.currency, zone), [draft.currency, zone]);
  const reading = useMemo(() => readDraft(draft, reader), [draft, reader]);
  const [earlier] = useState(() => before && granted(readTariff(before)));
  const started = useMemo(() => startingExamples(reading.written.clauses), [reading]);
  const [touched, setTouched] = useState<Examples>();
  const examples = touched ?? started;
  const [shape, setShape] = useState<ExampleShape>('whole');
  const [refusal, setRefusal] = useState<Said>();
  const status = useStatus();
  const change = (next: TariffDraft) => {
    setDraft(next);
    setRefusal(undefined);
  };
  const keep = () => {
    if (draft.clauses.length === 0) {
      setRefusal({ detail: say('keepsNothing') });
      status(say('keepsNothing'));
      return;
    }
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
      {draft !== began && <AsksBeforeLeaving />}
      <Form problem={refusal ?? problem} onSubmit={keep} foot={foot}>
        <HeadFields draft={draft} reading={reading} of={of} onChange={change} />
        <ClauseList draft={draft} reading={reading} reader={reader} onChange={change} />
        <NoteField draft={draft} onChange={change} />
      </Form>
      <Beside bar={<ExamplesBar examples={examples} now={reading.tariff} reader={reader} />}>
        <ExamplesTable
          examples={examples}
          before={earlier}
          now={reading.tariff}
          reader={reader}
          show={show}
        />
        {earlier && <VersionChanges before={earlier} now={reading.tariff} locale={reader.locale} />}
        <ExampleView
          key={shape}
          shape={shape}
          example={examples[shape]}
          tariff={reading.tariff}
          reader={reader}
          show={show}
          onChoose={setShape}
          onChange={(example) => setTouched({ ...examples, [shape]: example })}
          onAgain={() => setTouched(undefined)}
        />
      </Beside>
    </div>
  );
}

function readerOf(currency: string, zone: string): Reader & { zone: string } {
  return { currency: granted(currencyOf(currency)), locale: spokenLocale(), zone };
}
