// What is asked: who would say so and why, on a day of one's choice, where the call might go, how late things come.
import { REASONS } from '@colla/hours';
import { engagements } from '../../catalogue/engagements.ts';
import { whatIf as say } from '../../catalogue/what-if.ts';
import { Choice, DayField, NumberField, Options, TimeField } from '../../ui/index.ts';
import { sayReason } from './names.ts';
import type { AskedDraft } from './what-if-asked.ts';

interface WhatIfFieldsProps {
  asked: AskedDraft;
  onChange: (to: Partial<AskedDraft>) => void;
}

const whos = (['payer', 'pianist'] as const).map((value) => ({ value, label: engagements(`who_${value}`) }));
const reasons = REASONS.map((value) => ({ value, label: sayReason(value) }));

export function WhatIfFields({ asked, onChange }: WhatIfFieldsProps) {
  return (
    <div className="what-if-asked">
      <Options label={say('by')} value={asked.by} options={whos} onChoose={(by) => onChange({ by })} />
      <div className="fields">
        <Choice
          label={engagements('reason')}
          value={asked.reason}
          options={reasons}
          onChoose={(reason) => onChange({ reason })}
        />
      </div>
      <div className="fields">
        <DayField label={say('thenOn')} value={asked.thenOn} onType={(thenOn) => onChange({ thenOn })} />
        <TimeField label={say('thenAt')} value={asked.thenAt} onType={(thenAt) => onChange({ thenAt })} />
      </div>
      <div className="fields">
        <DayField label={say('toOn')} value={asked.toOn} onType={(toOn) => onChange({ toOn })} />
        <TimeField label={say('toAt')} value={asked.toAt} onType={(toAt) => onChange({ toAt })} />
      </div>
      <div className="fields">
        <NumberField
          label={say('scoresLate')}
          unit={say('unitDays')}
          value={asked.scoresLate}
          onType={(scoresLate) => onChange({ scoresLate })}
        />
        <NumberField
          label={say('paidLate')}
          unit={say('unitDays')}
          value={asked.paidLate}
          onType={(paidLate) => onChange({ paidLate })}
        />
      </div>
    </div>
  );
}
