// The example as it can be changed: its calls, its works, its soloist, and what the season says of it.
import { capital } from '@colla/rates';
import type { ReactNode } from 'react';
import { kinds as word } from '../../catalogue/kinds.ts';
import { tariffs as say } from '../../catalogue/tariffs.ts';
import { sayDay } from '../../locale.ts';
import { Button, Buttons, Opens } from '../../ui/index.ts';
import {
  addExampleCall,
  addExampleWork,
  type Example,
  type ExampleCall,
  type ExampleWork,
} from './example.ts';
import { callId } from './example-facts.ts';
import { CallFields, SeasonFields, SoloistFields, WorkFields } from './example-fields.tsx';
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
  const facts = { example, currency, slips, onChange };
  return (
    <>
      <Rows
        name="calls"
        rows={example.calls}
        slips={slips}
        says={(call) =>
          `${nameOf(call)}, ${call.from}–${call.until}, ${say(`turned_${call.turned}`).toLowerCase()}`
        }
        removeLabel={(number) => say('exampleRemove', { number })}
        onChange={(calls) => onChange({ ...example, calls })}
      >
        {(call, place, change) => <CallFields call={call} place={place} slips={slips} onChange={change} />}
      </Rows>
      <Rows
        name="works"
        rows={example.works}
        slips={slips}
        says={sayWork}
        removeLabel={(number) => say('exampleRemoveWork', { number })}
        onChange={(works) => onChange({ ...example, works })}
      >
        {(work, place, change) => <WorkFields work={work} place={place} slips={slips} onChange={change} />}
      </Rows>
      <Opens summary={<span>{say('soloist')}</span>}>
        <SoloistFields {...facts} />
      </Opens>
      <Opens summary={<span>{say('season')}</span>}>
        <SeasonFields {...facts} />
      </Opens>
      <Buttons>
        <Button onPress={() => onChange(addExampleCall(example))}>{say('exampleAdd')}</Button>
        <Button onPress={() => onChange(addExampleWork(example))}>{say('exampleAddWork')}</Button>
        <Button kind="quiet" onPress={onAgain}>
          {say('exampleAgain')}
        </Button>
      </Buttons>
    </>
  );
}

interface RowsProps<Row> {
  name: 'calls' | 'works';
  rows: readonly Row[];
  slips: readonly Slip[];
  says: (row: Row, place: number) => string;
  removeLabel: (number: number) => string;
  onChange: (rows: readonly Row[]) => void;
  /** The fields of one. */
  children: (row: Row, place: number, change: (to: Partial<Row>) => void) => ReactNode;
}

/** Calls or works, each a line that opens to its fields. */
function Rows<Row extends { readonly key: number }>(props: RowsProps<Row>) {
  const { name, rows, slips, says, removeLabel, onChange, children } = props;
  if (rows.length === 0) return undefined;
  const change = (key: number, to: Partial<Row>) =>
    onChange(rows.map((row) => (row.key === key ? { ...row, ...to } : row)));
  return (
    <ul>
      {rows.map((row, place) => (
        <li key={row.key}>
          <Opens
            open={slips.some(({ pointer }) => pointer.startsWith(`/${name}/${place}/`))}
            summary={<span>{says(row, place)}</span>}
          >
            {children(row, place, (to) => change(row.key, to))}
            <Button
              kind="quiet"
              label={removeLabel(place + 1)}
              onPress={() => onChange(rows.filter(({ key }) => key !== row.key))}
            >
              {say('remove')}
            </Button>
          </Opens>
        </li>
      ))}
    </ul>
  );
}

function nameOf({ kind, label, on }: ExampleCall): string {
  const day = /^\d{4}-\d\d-\d\d$/.test(on) ? sayDay(on, 'weekday') : on;
  return `${capital(label.trim() || word(kind))}, ${day}`;
}

function sayWork({ minutes, pages, difficulty, came }: ExampleWork, place: number): string {
  const day = /^\d{4}-\d\d-\d\d$/.test(came) ? say('cameOn', { day: sayDay(came, 'weekday') }) : '';
  const parts = [
    minutes && say('minutesSaid', { minutes }),
    pages && say('pagesSaid', { pages }),
    difficulty,
    day,
  ];
  return [say('workNumber', { number: place + 1 }), ...parts.filter((part) => part !== '')].join(', ');
}

/** Names by the ids that the example gives its calls. */
export function namesOf(calls: readonly ExampleCall[]): Record<string, string> {
  return Object.fromEntries(calls.map((call, place) => [callId(place), nameOf(call)]));
}
