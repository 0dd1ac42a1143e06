// What can be changed of the example: its calls, its soloist, a journey, a cost.
import { CALL_KINDS } from '@colla/hours';
import { kinds as word } from '../../catalogue/kinds.ts';
import { tariffs as say } from '../../catalogue/tariffs.ts';
import { Choice, DayField, MoneyField, NumberField, Options, TextField, TimeField } from '../../ui/index.ts';
import type { Example, ExampleCall } from './example.ts';
import { slipsAt } from './reading.ts';
import type { Slip } from './typed.ts';

const kinds = CALL_KINDS.map((kind) => ({ value: kind, label: word(kind) }));
const turns = (['played', 'cancelled', 'missed'] as const).map((value) => ({
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
      {call.turned === 'cancelled' && (
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

interface SoloistFieldsProps {
  example: Example;
  currency: string;
  slips: readonly Slip[];
  onChange: (example: Example) => void;
}

const WORDS = ['level', 'instrument', 'study', 'circumstance'] as const;

export function SoloistFields({ example, currency, slips, onChange }: SoloistFieldsProps) {
  return (
    <div className="fields">
      {WORDS.map((name) => (
        <TextField
          key={name}
          label={say(name)}
          optional
          value={example[name]}
          onType={(text) => onChange({ ...example, [name]: text })}
        />
      ))}
      <TextField
        label={say('pianist')}
        optional
        value={example.pianistClass}
        onType={(pianistClass) => onChange({ ...example, pianistClass })}
      />
      <NumberField
        label={say('requestedWorks')}
        wrong={slipsAt(slips, '/requestedWorks')}
        value={example.requestedWorks}
        onType={(requestedWorks) => onChange({ ...example, requestedWorks })}
      />
      <NumberField
        label={say('distance')}
        wrong={slipsAt(slips, '/distance')}
        value={example.distance}
        onType={(distance) => onChange({ ...example, distance })}
      />
      <MoneyField
        label={say('cost')}
        wrong={slipsAt(slips, '/cost')}
        value={example.cost}
        currency={currency}
        onType={(cost) => onChange({ ...example, cost })}
      />
    </div>
  );
}
