// The example as it can be changed: its calls, its soloist, a journey, a cost.
import { capital } from '@colla/rates';
import { tariffs as say } from '../../catalogue/tariffs.ts';
import { sayDay } from '../../locale.ts';
import { Button, Buttons, Opens } from '../../ui/index.ts';
import { addExampleCall, type Example, type ExampleCall } from './example.ts';
import { CallFields, SoloistFields } from './example-fields.tsx';
import type { Slip } from './typed.ts';

interface ExampleFormProps {
  example: Example;
  currency: string;
  slips: readonly Slip[];
  onChange: (example: Example) => void;
  /** It is to be taken from the clauses again. */
  onAgain: () => void;
}

export function ExampleForm({ example, currency, slips, onChange, onAgain }: ExampleFormProps) {
  return (
    <>
      <ExampleCalls example={example} slips={slips} onChange={onChange} />
      <Opens summary={<span>{say('soloist')}</span>}>
        <SoloistFields example={example} currency={currency} slips={slips} onChange={onChange} />
      </Opens>
      <Buttons>
        <Button onPress={() => onChange(addExampleCall(example))}>{say('exampleAdd')}</Button>
        <Button kind="quiet" onPress={onAgain}>
          {say('exampleAgain')}
        </Button>
      </Buttons>
    </>
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
export function namesOf(calls: readonly ExampleCall[]): Record<string, string> {
  return Object.fromEntries(calls.map((call, place) => [String(place).padStart(3, '0'), nameOf(call)]));
}
