// One parameter of a clause as fields, whatever shape it has: what the schema declares is what is asked.
import { plainWord, tariffs as say } from '../../catalogue/tariffs.ts';
import {
  Choice,
  MoneyField,
  NumberField,
  Options,
  TextField,
  Tick,
  Ticks,
  TimeField,
} from '../../ui/index.ts';
import { beginBeside, beginWithin } from './beginning.ts';
import { areSelector } from './clause-parameters.ts';
import { Conditions } from './conditions.tsx';
import { leftOf } from './left.ts';
import type { Parameter, Shape } from './parameter.ts';
import { ListField, OptionalFields, VariantField } from './parameter-group.tsx';
import { slipsAt } from './reading.ts';
import { type Fields, type Filling, fieldsOf, itemsOf, type Typed } from './typed.ts';

interface ParameterFieldProps {
  title: string;
  optional: boolean;
  shape: Shape;
  value: Typed;
  /** JSON pointer of the value. */
  at: string;
  filling: Filling;
  /** What stands beside it in its group. */
  beside?: Beside;
  onChange: (value: Typed) => void;
}

interface Beside {
  readonly parts: readonly Parameter[];
  readonly fields: Fields;
}

const ALONE: Beside = { parts: [], fields: {} };

export function ParameterField(props: ParameterFieldProps) {
  const { title, optional, shape, value, at, filling, beside = ALONE, onChange } = props;
  const { reader } = filling;
  const begin = () => beginBeside(shape, beside.parts, beside.fields, reader);
  const field = { label: title, at, optional, wrong: slipsAt(filling.slips, at) };
  const text = typeof value === 'string' ? value : '';
  switch (shape.is) {
    case 'amount':
      return <MoneyField {...field} value={text} currency={reader.currency} onType={onChange} />;
    case 'figure':
      return (
        <NumberField
          {...field}
          value={text}
          unit={shape.unit === 'share' || shape.unit === 'rate' ? '%' : undefined}
          onType={onChange}
        />
      );
    case 'words':
      return <TextField {...field} value={text} onType={onChange} />;
    case 'time':
      return <TimeField {...field} value={text} onType={onChange} />;
    case 'yes or no':
      return <Tick label={title} on={value === true} onChange={onChange} />;
    case 'choice':
      return <ChoiceField field={field} words={shape.words} value={text} onChange={onChange} />;
    case 'several':
      return <SeveralField field={field} words={shape.words} value={value} onChange={onChange} />;
    case 'clauses':
      return <ClausesField field={field} others={filling.others} value={value} onChange={onChange} />;
    case 'own words':
      return <TextField {...field} hint={say('semicolons')} value={text} onType={onChange} />;
    case 'list':
      return (
        <ListField
          {...props}
          shape={shape}
          items={itemsOf(value)}
          first={() => beginWithin(shape.of, beside.fields, reader)}
          inside={(item, place, change) => (
            <ParameterField
              title={say('item', { number: place + 1 })}
              optional={false}
              shape={shape.of}
              value={item}
              at={`${at}/${place}`}
              filling={wholly(filling)}
              onChange={change}
            />
          )}
        />
      );
    case 'group':
      if (!optional && areSelector(shape.parts))
        return (
          <Conditions {...props} fields={fieldsOf(value)} draw={(asked) => <ParameterField {...asked} />} />
        );
      return (
        <OptionalFields {...props} begin={begin}>
          {group(shape.parts)}
        </OptionalFields>
      );
    case 'variant':
      return (
        <OptionalFields {...props} begin={begin}>
          <VariantField {...props} shape={shape} fields={fieldsOf(value)} inside={group} />
        </OptionalFields>
      );
  }

  function group(parts: readonly Parameter[]) {
    return (
      <GroupFields parts={parts} fields={fieldsOf(value)} at={at} filling={filling} onChange={onChange} />
    );
  }
}

/** A step of a list is seen whole, also where the sentence has fields for it. */
function wholly(filling: Filling): Filling {
  return { ...filling, said: new Set() };
}

interface GroupProps {
  parts: readonly Parameter[];
  fields: Fields;
  at: string;
  filling: Filling;
  onChange: (fields: Fields) => void;
}

/** The fields of a group that the sentence has none for, side by side where there is room. */
export function GroupFields({ parts, fields, at, filling, onChange }: GroupProps) {
  return (
    <div className="fields">
      {leftOf(parts, fields, at, filling.said).map(({ name, ...part }) => (
        <ParameterField
          key={name}
          {...part}
          value={fields[name]}
          at={`${at}/${name}`}
          filling={filling}
          beside={{ parts, fields }}
          onChange={(value) => onChange({ ...fields, [name]: value })}
        />
      ))}
    </div>
  );
}

interface Wired {
  readonly label: string;
  readonly at: string;
  readonly optional: boolean;
  readonly wrong: string | undefined;
}

/** A few words are all in sight; many are folded. */
function ChoiceField(props: {
  field: Wired;
  words: readonly string[];
  value: string;
  onChange: (word: string) => void;
}) {
  const { field, words, value, onChange } = props;
  const options = words.map((word) => ({ value: word, label: plainWord(word) }));
  const Control = words.length > 3 ? Choice : Options;
  return <Control {...field} value={value} options={options} onChoose={onChange} />;
}

interface SeveralProps {
  field: Wired;
  value: Typed;
  onChange: (words: readonly string[]) => void;
}

export function SeveralField({ field, words, value, onChange }: SeveralProps & { words: readonly string[] }) {
  const options = words.map((word) => ({ value: word, label: plainWord(word) }));
  return <Ticks {...field} values={wordsIn(value)} options={options} onChange={onChange} />;
}

/** Other clauses by their short names; one that is not there any more stays in sight, to be unticked. */
export function ClausesField({
  field,
  others,
  value,
  onChange,
}: SeveralProps & { others: readonly string[] }) {
  const chosen = wordsIn(value);
  const options = [...new Set([...others, ...chosen])].map((id) => ({ value: id, label: id }));
  const hint = options.length === 0 ? say('noOthers') : undefined;
  return <Ticks {...field} hint={hint} values={chosen} options={options} onChange={onChange} />;
}

function wordsIn(value: Typed): string[] {
  return itemsOf(value).filter((word) => typeof word === 'string');
}
