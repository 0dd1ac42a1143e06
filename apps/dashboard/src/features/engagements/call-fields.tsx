// One call as fields: kind, day, from–until, place, what must happen first and until when it is kept free.
import { CALL_KINDS } from '@colla/hours';
import { engagements as say } from '../../catalogue/engagements.ts';
import { kinds as word } from '../../catalogue/kinds.ts';
import { Choice, DayField, Opens, TextField, TimeField } from '../../ui/index.ts';
import type { CallRow } from './inquiry.ts';

const kinds = CALL_KINDS.map((kind) => ({ value: kind, label: word(kind) }));
const zones = Intl.supportedValuesOf('timeZone');

interface CallFieldsProps {
  call: CallRow;
  /** JSON pointer of the call; empty where it is all that is sent. */
  at: string;
  /** False where it only moves: a call once made keeps its condition. */
  conditional: boolean;
  onChange: (to: Partial<CallRow>) => void;
}

export function CallFields({ call, at, conditional, onChange }: CallFieldsProps) {
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
          value={call.place}
          onType={(place) => onChange({ place })}
        />
      </div>
      <Opens
        open={call.label !== '' || call.onlyIf !== '' || call.lapsesOn !== ''}
        summary={<span>{say(conditional ? 'rareOfCall' : 'rareOfMove')}</span>}
      >
        <div className="fields">
          <TextField
            label={say('label')}
            hint={say('labelHint')}
            at={`${at}/label`}
            optional
            value={call.label}
            onType={(label) => onChange({ label })}
          />
          {conditional && (
            <>
              <TextField
                label={say('onlyIf')}
                hint={say('onlyIfHint')}
                at={`${at}/onlyIf`}
                optional
                value={call.onlyIf}
                onType={(onlyIf) => onChange({ onlyIf })}
              />
              <DayField
                label={say('lapsesOn')}
                hint={say('lapsesOnHint')}
                at={`${at}/lapsesAt`}
                optional
                value={call.lapsesOn}
                onType={(lapsesOn) => onChange({ lapsesOn })}
              />
            </>
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
    </div>
  );
}
