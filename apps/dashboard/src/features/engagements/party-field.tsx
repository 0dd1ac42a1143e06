// A person or institution by name: chosen from those in the books, or entered with what is being written.
import type { PartyJson } from '@colla/wire';
import { engagements as say } from '../../catalogue/engagements.ts';
import { TextField } from '../../ui/index.ts';

interface PartyFieldProps {
  label: string;
  at?: string | undefined;
  hint?: string | undefined;
  optional?: boolean;
  value: string;
  parties: readonly PartyJson[];
  onType: (name: string) => void;
}

export function PartyField({ value, parties, hint, ...field }: PartyFieldProps) {
  const name = value.trim();
  const isNew = name !== '' && !parties.some((party) => party.name === name);
  return (
    <TextField
      {...field}
      hint={isNew ? say('isNew') : hint}
      value={value}
      suggestions={parties.map((party) => party.name)}
    />
  );
}
