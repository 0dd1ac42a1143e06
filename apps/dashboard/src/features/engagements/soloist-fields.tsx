// What about the soloist a price may depend on.
import { useState } from 'react';
import { engagements as say } from '../../catalogue/engagements.ts';
import { LinesField, NumberField, Opens, TextField } from '../../ui/index.ts';
import type { Asked } from './asked.ts';
import type { People } from './inquiry.ts';

interface SoloistFieldsProps {
  people: People;
  asked: Asked;
  onChange: (to: Partial<People>) => void;
}

/** In sight is what somebody wrote, and what a tariff of the practice asks; the rest is folded away. */
export function SoloistFields(props: SoloistFieldsProps) {
  const { people, asked } = props;
  // As it was when the form was opened: a field must not leave its place while somebody writes in it.
  const [inSight] = useState(() =>
    FIELD_NAMES.filter((name) => isAsked(name, asked) || isSaid(name, people)),
  );
  const rest = FIELD_NAMES.filter((name) => !inSight.includes(name));
  return (
    <>
      <FieldsOf {...props} names={inSight} />
      {rest.length > 0 && (
        <Opens summary={<span>{say('moreSoloist')}</span>}>
          <FieldsOf {...props} names={rest} />
        </Opens>
      )}
    </>
  );
}

const FIELDS = {
  instrument: WordField,
  level: WordField,
  study: WordField,
  membership: WordField,
  pianistClass: WordField,
  sharers: SharersField,
  circumstances: CircumstancesField,
} as const;
type SoloistField = keyof typeof FIELDS;
const FIELD_NAMES = Object.keys(FIELDS) as SoloistField[];

/** The instrument is asked by whoever plays with it. */
function isAsked(name: SoloistField, asked: Asked): boolean {
  if (name === 'instrument') return true;
  return name === 'sharers' ? asked.sharers : asked.words(name).length > 0;
}

function isSaid(name: SoloistField, people: People): boolean {
  const text = people[name].trim();
  return name === 'sharers' ? text !== '1' : text !== '';
}

function FieldsOf({ names, ...props }: SoloistFieldsProps & { names: readonly SoloistField[] }) {
  return (
    <div className="fields">
      {names.map((name) => {
        const Of = FIELDS[name];
        return <Of key={name} {...props} name={name} />;
      })}
    </div>
  );
}

function WordField({ people, asked, name, onChange }: SoloistFieldsProps & { name: SoloistField }) {
  const words = name === 'sharers' ? [] : asked.words(name);
  const hint = name === 'membership' ? say('membershipHint') : undefined;
  return (
    <TextField
      label={say(name)}
      hint={words.length > 0 ? say('sameWord') : hint}
      at={name === 'pianistClass' ? '/pianistClass' : `/soloist/${name}`}
      optional
      suggestions={words}
      value={people[name]}
      onType={(text) => onChange({ [name]: text })}
    />
  );
}

function SharersField({ people, onChange }: SoloistFieldsProps) {
  return (
    <NumberField
      label={say('sharers')}
      at="/sharers"
      value={people.sharers}
      onType={(sharers) => onChange({ sharers })}
    />
  );
}

function CircumstancesField({ people, asked, onChange }: SoloistFieldsProps) {
  const words = asked.words('circumstances');
  const hint =
    words.length > 0
      ? say('circumstancesAsked', { words: words.map((word) => `“${word}”`).join(', ') })
      : say('circumstancesHint');
  return (
    <LinesField
      label={say('circumstances')}
      hint={hint}
      at="/circumstances"
      optional
      rows={2}
      value={people.circumstances}
      onType={(circumstances) => onChange({ circumstances })}
    />
  );
}
