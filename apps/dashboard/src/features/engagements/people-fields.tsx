// Who an engagement is for and who pays for it, and what about the soloist a price may depend on.
import { useState } from 'react';
import { engagements as say } from '../../catalogue/engagements.ts';
import { Button, LinesField, NumberField, Opens, TextField } from '../../ui/index.ts';
import type { Asked } from './asked.ts';
import { type PayerRow, type People, withSoloist } from './inquiry.ts';
import type { Named } from './naming.ts';
import { PartyField } from './party-field.tsx';
import { nextKey } from './rows.ts';

interface PeopleFieldsProps {
  people: People;
  parties: readonly Named[];
  asked: Asked;
  onChange: (to: Partial<People>) => void;
}

export function PeopleFields({ people, parties, asked, onChange }: PeopleFieldsProps) {
  return (
    <>
      <TextField
        label={say('nameOfIt')}
        hint={say('nameHint')}
        at="/title"
        value={people.title}
        onType={(title) => onChange({ title })}
      />
      <div className="fields">
        <PartyField
          label={say('soloist')}
          at="/soloistParty"
          optional
          value={people.soloist}
          parties={parties}
          onType={(name) => onChange(withSoloist(people, name))}
        />
        <PartyField
          label={say('institution')}
          at="/institutionParty"
          optional
          value={people.institution}
          parties={parties}
          onType={(institution) => onChange({ institution })}
        />
      </div>
      <PayerRows
        payers={people.payers}
        parties={parties}
        roles={asked.words('role')}
        onChange={(payers) => onChange({ payers })}
      />
      <SoloistFields people={people} asked={asked} onChange={onChange} />
      <TextField
        label={say('note')}
        optional
        at="/note"
        most={4000}
        value={people.note}
        onType={(note) => onChange({ note })}
      />
    </>
  );
}

type SoloistProps = Pick<PeopleFieldsProps, 'people' | 'asked' | 'onChange'>;

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

/** In sight is what somebody wrote, and what a tariff of the practice asks; the rest is folded away. */
function SoloistFields(props: SoloistProps) {
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

/** The instrument is asked by whoever plays with it. */
function isAsked(name: SoloistField, asked: Asked): boolean {
  if (name === 'instrument') return true;
  return name === 'sharers' ? asked.sharers : asked.words(name).length > 0;
}

function isSaid(name: SoloistField, people: People): boolean {
  const text = people[name].trim();
  return name === 'sharers' ? text !== '1' : text !== '';
}

function FieldsOf({ names, ...props }: SoloistProps & { names: readonly SoloistField[] }) {
  return (
    <div className="fields">
      {names.map((name) => {
        const Of = FIELDS[name];
        return <Of key={name} {...props} name={name} />;
      })}
    </div>
  );
}

function WordField({ people, asked, name, onChange }: SoloistProps & { name: SoloistField }) {
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

function SharersField({ people, onChange }: SoloistProps) {
  return (
    <NumberField
      label={say('sharers')}
      at="/sharers"
      value={people.sharers}
      onType={(sharers) => onChange({ sharers })}
    />
  );
}

function CircumstancesField({ people, asked, onChange }: SoloistProps) {
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

interface PayerRowsProps {
  payers: readonly PayerRow[];
  parties: readonly Named[];
  /** The roles that the tariffs name. */
  roles: readonly string[];
  onChange: (payers: PayerRow[]) => void;
}

function PayerRows({ payers, parties, roles, onChange }: PayerRowsProps) {
  const change = (key: number, to: Partial<PayerRow>) =>
    onChange(payers.map((row) => (row.key === key ? { ...row, ...to } : row)));
  return (
    <div className="engagement-rows">
      {payers.map((row, place) => (
        <div className="fields" key={row.key}>
          <PartyField
            label={say('payer')}
            at={`/payers/${place}/name`}
            hint={say('payerHint')}
            optional
            value={row.name}
            parties={parties}
            onType={(name) => change(row.key, { name })}
          />
          <TextField
            label={say('payerRole')}
            hint={say('payerRoleHint')}
            at={`/payers/${place}/role`}
            most={60}
            suggestions={roles}
            value={row.role}
            onType={(role) => change(row.key, { role })}
          />
          {payers.length > 1 && (
            <Button
              kind="quiet"
              label={say('removePayer')}
              onPress={() => onChange(payers.filter(({ key }) => key !== row.key))}
            >
              {say('takeOut')}
            </Button>
          )}
        </div>
      ))}
      <div>
        <Button
          kind="quiet"
          onPress={() => onChange([...payers, { key: nextKey(payers), role: '', name: '' }])}
        >
          {say('addPayer')}
        </Button>
      </div>
    </div>
  );
}
