// Who an engagement is for and who pays for it, and what about the soloist a price may depend on.
import { engagements as say } from '../../catalogue/engagements.ts';
import { Button, LinesField, NumberField, Opens, TextField } from '../../ui/index.ts';
import { nextKey, type PayerRow, type People, withSoloist } from './inquiry.ts';
import type { Named } from './naming.ts';
import { PartyField } from './party-field.tsx';

interface PeopleFieldsProps {
  people: People;
  parties: readonly Named[];
  onChange: (to: Partial<People>) => void;
}

export function PeopleFields({ people, parties, onChange }: PeopleFieldsProps) {
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
      <PayerRows payers={people.payers} parties={parties} onChange={(payers) => onChange({ payers })} />
      <div className="fields">
        {(['instrument', 'level', 'study'] as const).map((name) => (
          <TextField
            key={name}
            label={say(name)}
            at={`/soloist/${name}`}
            optional
            value={people[name]}
            onType={(text) => onChange({ [name]: text })}
          />
        ))}
      </div>
      <RareFields people={people} onChange={onChange} />
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

/** What few tariffs ask: folded until something stands in it. */
function RareFields({ people, onChange }: Pick<PeopleFieldsProps, 'people' | 'onChange'>) {
  const { sharers, pianistClass, circumstances } = people;
  const isSaid = sharers.trim() !== '1' || pianistClass !== '' || circumstances !== '';
  return (
    <Opens open={isSaid} summary={<span>{say('priceMay')}</span>}>
      <div className="fields">
        <NumberField
          label={say('sharers')}
          at="/sharers"
          value={sharers}
          onType={(sharers) => onChange({ sharers })}
        />
        <TextField
          label={say('pianistClass')}
          at="/pianistClass"
          optional
          value={pianistClass}
          onType={(pianistClass) => onChange({ pianistClass })}
        />
        <LinesField
          label={say('circumstances')}
          hint={say('circumstancesHint')}
          at="/circumstances"
          optional
          rows={2}
          value={circumstances}
          onType={(circumstances) => onChange({ circumstances })}
        />
      </div>
    </Opens>
  );
}

interface PayerRowsProps {
  payers: readonly PayerRow[];
  parties: readonly Named[];
  onChange: (payers: PayerRow[]) => void;
}

function PayerRows({ payers, parties, onChange }: PayerRowsProps) {
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
