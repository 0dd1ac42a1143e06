// Who an engagement is for and who pays for it, and what about the soloist a price may depend on.
import { engagements as say } from '../../catalogue/engagements.ts';
import { TextField } from '../../ui/index.ts';
import type { Asked } from './asked.ts';
import { type People, withSoloist } from './inquiry.ts';
import type { Named } from './naming.ts';
import { PartyField } from './party-field.tsx';
import { PayerRows } from './payer-rows.tsx';
import { SoloistFields } from './soloist-fields.tsx';

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
