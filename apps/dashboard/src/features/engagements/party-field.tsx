// A person or institution by name: chosen from those in the books, or entered with what is being written.
import { engagements as say } from '../../catalogue/engagements.ts';
import { TextField } from '../../ui/index.ts';
import { type Meant, meantBy, type Named } from './naming.ts';

interface PartyFieldProps {
  label: string;
  at?: string | undefined;
  hint?: string | undefined;
  optional?: boolean;
  value: string;
  parties: readonly Named[];
  onType: (name: string) => void;
}

export function PartyField({ value, parties, hint, ...field }: PartyFieldProps) {
  const meant = meantBy(value, parties);
  return (
    <TextField
      {...field}
      hint={hintFor(meant.is) ?? hint}
      value={value}
      suggestions={parties.map(({ as }) => as)}
    />
  );
}

function hintFor(meant: Meant['is']): string | undefined {
  if (meant === 'new') return say('isNew');
  return meant === 'several' ? say('areSeveral') : undefined;
}
