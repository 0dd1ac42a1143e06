// Who pays, each in a role that the tariff names.
import { engagements as say } from '../../catalogue/engagements.ts';
import { Button, TextField } from '../../ui/index.ts';
import type { PayerRow } from './inquiry.ts';
import type { Named } from './naming.ts';
import { PartyField } from './party-field.tsx';
import { nextKey } from './rows.ts';

interface PayerRowsProps {
  payers: readonly PayerRow[];
  parties: readonly Named[];
  /** The roles that the tariffs name. */
  roles: readonly string[];
  onChange: (payers: PayerRow[]) => void;
}

export function PayerRows({ payers, parties, roles, onChange }: PayerRowsProps) {
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
