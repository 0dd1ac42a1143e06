// One call as fields: kind, day, from–until, place, what must happen first and until when it is kept free.
import { span } from '@colla/calendar';
import { CALL_KINDS } from '@colla/hours';
import { refused } from '@colla/refusal';
import { useState } from 'react';
import { engagements as say } from '../../catalogue/engagements.ts';
import { kinds as word } from '../../catalogue/kinds.ts';
import { Choice, DayField, Opens, TextField, TimeField } from '../../ui/index.ts';
import type { Asked } from './asked.ts';
import { type CallRow, plannedOf } from './call-row.ts';
import type { Busy } from './clash.ts';
import { ClashNote } from './clash-note.tsx';
import { TwiceFields } from './twice-fields.tsx';

const kinds = CALL_KINDS.map((kind) => ({ value: kind, label: word(kind) }));
const zones = Intl.supportedValuesOf('timeZone');

interface CallFieldsProps {
  call: CallRow;
  /** JSON pointer of the call; empty where it is all that is sent. */
  at: string;
  /** A call once made keeps its condition, and one once agreed has no last day. */
  hold: 'new' | 'kept' | 'none';
  asked: Asked;
  /** The engagement it belongs to, and what else stands there. */
  engagement: string | undefined;
  others: readonly Busy[];
  onChange: (to: Partial<CallRow>) => void;
}

export function CallFields(props: CallFieldsProps) {
  const { call, at, asked, engagement, others, onChange } = props;
  const written = plannedOf(call);
  const times = span(written);
  const namesAsked = asked.words('label').length > 0;
  return (
    <div className="engagement-rows">
      <div className="fields">
        <Choice
          label={say('kind')}
          at={`${at}/kind`}
          value={call.kind}
          options={kinds}
          onChoose={(kind) => onChange({ kind })}
        />
        <DayField
          label={say('day')}
          at={`${at}/planned/on`}
          value={call.on}
          onType={(on) => onChange({ on })}
        />
        <TimeField
          label={say('from')}
          at={`${at}/planned/from`}
          value={call.from}
          onType={(from) => onChange({ from })}
        />
        <TimeField
          label={say('untilTime')}
          at={`${at}/planned/until`}
          value={call.until}
          onType={(until) => onChange({ until })}
        />
        <TextField
          label={say('place')}
          at={`${at}/place`}
          optional
          suggestions={asked.words('place')}
          value={call.place}
          onType={(place) => onChange({ place })}
        />
        {namesAsked && <LabelField {...props} />}
        <TwiceFields span={written} onChange={onChange} />
      </div>
      <p className="call-said" role="status">
        {!refused(times) && <ClashNote times={times} engagement={engagement} others={others} />}
      </p>
      <RareFields {...props} named={namesAsked} />
    </div>
  );
}

function LabelField({ call, at, asked, onChange }: CallFieldsProps) {
  return (
    <TextField
      label={say('label')}
      hint={say('labelHint')}
      at={`${at}/label`}
      optional
      suggestions={asked.words('label')}
      value={call.label}
      onType={(label) => onChange({ label })}
    />
  );
}

const RARE = { new: 'rareOfCall', kept: 'rareOfKept', none: 'rareOfMove' } as const;

function RareFields(props: CallFieldsProps & { named: boolean }) {
  const { call, at, hold, named, onChange } = props;
  const [open] = useState((call.label !== '' && !named) || call.onlyIf !== '' || call.lapsesOn !== '');
  return (
    <Opens open={open} summary={<span>{say(RARE[hold])}</span>}>
      <div className="fields">
        {!named && <LabelField {...props} />}
        {hold === 'new' && (
          <TextField
            label={say('onlyIf')}
            hint={say('onlyIfHint')}
            at={`${at}/onlyIf`}
            optional
            value={call.onlyIf}
            onType={(onlyIf) => onChange({ onlyIf })}
          />
        )}
        {hold !== 'none' && (
          <DayField
            label={say('lapsesOn')}
            hint={say('lapsesOnHint')}
            at={`${at}/lapsesAt`}
            optional
            value={call.lapsesOn}
            onType={(lapsesOn) => onChange({ lapsesOn })}
          />
        )}
        <TextField
          label={say('zone')}
          at={`${at}/planned/zone`}
          suggestions={zones}
          value={call.zone}
          onType={(zone) => onChange({ zone })}
        />
      </div>
    </Opens>
  );
}
