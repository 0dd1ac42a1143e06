// What can be changed of the example: its calls, its works, its soloist, what the season says of it.
import { CALL_KINDS } from '@colla/hours';
import { kinds as word } from '../../catalogue/kinds.ts';
import { tariffs as say } from '../../catalogue/tariffs.ts';
import {
  Choice,
  DayField,
  MoneyField,
  NumberField,
  Options,
  TextField,
  Tick,
  TimeField,
} from '../../ui/index.ts';
import type { Example, ExampleCall, ExampleWork } from './example.ts';
import { slipsAt } from './reading.ts';
import type { Slip } from './typed.ts';

const kinds = CALL_KINDS.map((kind) => ({ value: kind, label: word(kind) }));
const turns = (['played', 'moved', 'cancelled', 'missed'] as const).map((value) => ({
  value,
  label: say(`turned_${value}`),
}));

interface CallFieldsProps {
  call: ExampleCall;
  place: number;
  slips: readonly Slip[];
  onChange: (to: Partial<ExampleCall>) => void;
}

export function CallFields({ call, place, slips, onChange }: CallFieldsProps) {
  const wrong = (field: string) => slipsAt(slips, `/calls/${place}/${field}`);
  return (
    <div className="fields">
      <Choice label={say('kind')} value={call.kind} options={kinds} onChoose={(kind) => onChange({ kind })} />
      <TextField label={say('label')} optional value={call.label} onType={(label) => onChange({ label })} />
      <DayField label={say('day')} wrong={wrong('on')} value={call.on} onType={(on) => onChange({ on })} />
      <TimeField
        label={say('from')}
        wrong={wrong('from')}
        value={call.from}
        onType={(from) => onChange({ from })}
      />
      <TimeField
        label={say('until')}
        wrong={wrong('until')}
        value={call.until}
        onType={(until) => onChange({ until })}
      />
      <TextField label={say('place')} optional value={call.place} onType={(place) => onChange({ place })} />
      <Tick label={say('holiday')} on={call.holiday} onChange={(holiday) => onChange({ holiday })} />
      <Options
        label={say('turned')}
        value={call.turned}
        options={turns}
        onChoose={(turned) => onChange({ turned })}
      />
      {call.turned === 'played' && (
        <NumberField
          label={say('over')}
          wrong={wrong('over')}
          value={call.over}
          onType={(over) => onChange({ over })}
        />
      )}
      {(call.turned === 'cancelled' || call.turned === 'moved') && (
        <NumberField
          label={say('notice')}
          wrong={wrong('notice')}
          value={call.notice}
          onType={(notice) => onChange({ notice })}
        />
      )}
    </div>
  );
}

interface WorkFieldsProps {
  work: ExampleWork;
  place: number;
  slips: readonly Slip[];
  onChange: (to: Partial<ExampleWork>) => void;
}

export function WorkFields({ work, place, slips, onChange }: WorkFieldsProps) {
  const wrong = (field: string) => slipsAt(slips, `/works/${place}/${field}`);
  return (
    <div className="fields">
      <NumberField
        label={say('minutesOfMusic')}
        wrong={wrong('minutes')}
        value={work.minutes}
        onType={(minutes) => onChange({ minutes })}
      />
      <NumberField
        label={say('pages')}
        wrong={wrong('pages')}
        value={work.pages}
        onType={(pages) => onChange({ pages })}
      />
      <TextField
        label={say('difficulty')}
        optional
        value={work.difficulty}
        onType={(difficulty) => onChange({ difficulty })}
      />
      <DayField
        label={say('came')}
        optional
        wrong={wrong('came')}
        value={work.came}
        onType={(came) => onChange({ came })}
      />
      <Tick label={say('requested')} on={work.requested} onChange={(requested) => onChange({ requested })} />
    </div>
  );
}

interface FactFieldsProps {
  example: Example;
  currency: string;
  slips: readonly Slip[];
  onChange: (example: Example) => void;
}

const SOLOIST = ['level', 'instrument', 'study', 'membership', 'pianistClass', 'circumstances'] as const;

export function SoloistFields({ example, slips, onChange }: FactFieldsProps) {
  return (
    <div className="fields">
      {SOLOIST.map((name) => (
        <TextField
          key={name}
          label={say(name)}
          optional
          value={example[name]}
          onType={(text) => onChange({ ...example, [name]: text })}
        />
      ))}
      <FigureFields names={['sharers']} example={example} slips={slips} onChange={onChange} />
    </div>
  );
}

export function SeasonFields({ example, currency, slips, onChange }: FactFieldsProps) {
  const wrong = (field: string) => slipsAt(slips, `/${field}`);
  const change = (to: Partial<Example>) => onChange({ ...example, ...to });
  return (
    <div className="fields">
      <TextField label={say('term')} optional value={example.term} onType={(term) => change({ term })} />
      <DayField
        label={say('termFrom')}
        optional
        wrong={wrong('termFrom')}
        value={example.termFrom}
        onType={(termFrom) => change({ termFrom })}
      />
      <FigureFields
        names={['ahead', 'soFar', 'rolledOver', 'distance']}
        example={example}
        slips={slips}
        onChange={onChange}
      />
      <MoneyField
        label={say('cost')}
        optional
        wrong={wrong('cost')}
        value={example.cost}
        currency={currency}
        onType={(cost) => change({ cost })}
      />
    </div>
  );
}

interface FigureFieldsProps extends Omit<FactFieldsProps, 'currency'> {
  names: readonly ('sharers' | 'ahead' | 'soFar' | 'rolledOver' | 'distance')[];
}

function FigureFields({ names, example, slips, onChange }: FigureFieldsProps) {
  return names.map((name) => (
    <NumberField
      key={name}
      label={say(name)}
      optional
      wrong={slipsAt(slips, `/${name}`)}
      value={example[name]}
      onType={(figure) => onChange({ ...example, [name]: figure })}
    />
  ));
}
