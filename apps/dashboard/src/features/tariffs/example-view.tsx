// The example beside the clauses: its calls can be changed, and it is priced by the same function as an invoice.
import { capital, sentencesOf, type Tariff } from '@colla/rates';
import { type StatementAnswerJson, showStatement } from '@colla/wire';
import type { ReactNode } from 'react';
import { tariffs as say } from '../../catalogue/tariffs.ts';
import { sayDay } from '../../locale.ts';
import { Button, Buttons, Opens, Options, Part } from '../../ui/index.ts';
import { addExampleCall, type Example, type ExampleCall, type ExampleShape, SHAPES } from './example.ts';
import { CallFields, SoloistFields } from './example-fields.tsx';
import { priceExample } from './example-priced.ts';
import type { Reader, Slip } from './typed.ts';

/** A priced statement with the names of its calls; the page says how it is shown. */
export type ShowStatement = (of: {
  statement: StatementAnswerJson['statement'];
  sentences: StatementAnswerJson['sentences'];
  callNames: Record<string, string>;
  payerNames: Record<string, string>;
}) => ReactNode;

interface ExampleViewProps {
  shape: ExampleShape;
  example: Example;
  tariff: Tariff | undefined;
  reader: Reader & { readonly zone: string };
  show: ShowStatement;
  onChoose: (shape: ExampleShape) => void;
  onChange: (example: Example) => void;
  /** All three are to be taken from the clauses again. */
  onAgain: () => void;
}

const shapes = () => SHAPES.map((shape) => ({ value: shape, label: say(`shape_${shape}`) }));

export function ExampleView(props: ExampleViewProps) {
  const { shape, example, tariff, reader, show, onChoose, onChange, onAgain } = props;
  const priced = tariff ? priceExample(example, tariff, reader) : { statement: undefined, slips: [] };
  return (
    <Part title={say('example')}>
      <Options label={say('shape')} value={shape} options={shapes()} onChoose={onChoose} />
      {tariff && priced.statement ? (
        show({
          statement: showStatement(priced.statement),
          sentences: sentencesOf(tariff, reader.locale),
          callNames: namesOf(example.calls),
          payerNames: {},
        })
      ) : (
        <p className="aside">{say('exampleNone')}</p>
      )}
      <p className="aside">{say('exampleUnder')}</p>
      <ExampleCalls example={example} slips={priced.slips} onChange={onChange} />
      <Opens summary={<span>{say('soloist')}</span>}>
        <SoloistFields
          example={example}
          currency={reader.currency}
          slips={priced.slips}
          onChange={onChange}
        />
      </Opens>
      <Buttons>
        <Button onPress={() => onChange(addExampleCall(example))}>{say('exampleAdd')}</Button>
        <Button kind="quiet" onPress={onAgain}>
          {say('exampleAgain')}
        </Button>
      </Buttons>
    </Part>
  );
}

function ExampleCalls(props: {
  example: Example;
  slips: readonly Slip[];
  onChange: (example: Example) => void;
}) {
  const { example, slips, onChange } = props;
  const change = (key: number, to: Partial<ExampleCall>) =>
    onChange({
      ...example,
      calls: example.calls.map((call) => (call.key === key ? { ...call, ...to } : call)),
    });
  return (
    <ul>
      {example.calls.map((call, place) => {
        const wrong = slips.some(({ pointer }) => pointer.startsWith(`/calls/${place}/`));
        return (
          <li key={call.key}>
            <Opens
              open={wrong}
              summary={
                <span>
                  {nameOf(call)}, {call.from}–{call.until}, {say(`turned_${call.turned}`).toLowerCase()}
                </span>
              }
            >
              <CallFields call={call} place={place} slips={slips} onChange={(to) => change(call.key, to)} />
              <Button
                kind="quiet"
                label={say('exampleRemove', { number: place + 1 })}
                onPress={() =>
                  onChange({ ...example, calls: example.calls.filter(({ key }) => key !== call.key) })
                }
              >
                {say('remove')}
              </Button>
            </Opens>
          </li>
        );
      })}
    </ul>
  );
}

function nameOf({ kind, label, on }: ExampleCall): string {
  const day = /^\d{4}-\d\d-\d\d$/.test(on) ? sayDay(on, 'weekday') : on;
  return `${capital(label.trim() || kind)}, ${day}`;
}

/** Names by the ids that the example gives its calls: their places. */
function namesOf(calls: readonly ExampleCall[]): Record<string, string> {
  return Object.fromEntries(calls.map((call, place) => [String(place).padStart(3, '0'), nameOf(call)]));
}
