// A journey, and the same way back where there is one.
import { DISTANCE_UNITS } from '@colla/travel';
import type { EngagementJson, RequestOf } from '@colla/wire';
import { useState } from 'react';
import { useSend } from '../../books.ts';
import { engagements as say } from '../../catalogue/engagements.ts';
import {
  Button,
  DayField,
  Dialog,
  Form,
  NumberField,
  Options,
  type Said,
  TextField,
  Tick,
  useStatus,
} from '../../ui/index.ts';

interface LegDialogProps {
  engagement: EngagementJson;
  today: string;
  onClose: () => void;
}

type LegBody = RequestOf<'addLeg'>['body'];

interface LegDraft extends Omit<LegBody, 'minutes'> {
  readonly purpose: string;
  readonly minutes: string;
  readonly andBack: boolean;
}

/** The last journey there was is the likeliest again. */
function startLeg({ legs, calls }: EngagementJson, today: string): LegDraft {
  const last = legs.at(-1);
  return {
    on: today,
    from: last?.from ?? '',
    to: last?.to ?? calls[0]?.place ?? '',
    distance: last?.distance ?? '',
    unit: last?.unit ?? 'km',
    purpose: last?.purpose ?? '',
    minutes: last && last.minutes > 0 ? String(last.minutes) : '',
    andBack: true,
  };
}

export function LegDialog({ engagement, today, onClose }: LegDialogProps) {
  const { send, busy, problem } = useSend('addLeg');
  const [draft, setDraft] = useState(() => startLeg(engagement, today));
  const [wrong, setWrong] = useState<Said>();
  const status = useStatus();
  const keep = async () => {
    const { andBack, minutes, ...leg } = draft;
    if (!/^\d{0,4}$/.test(minutes.trim()))
      return setWrong({ detail: say('wrongMinutes'), pointer: '/minutes' });
    setWrong(undefined);
    const there: LegBody = { ...leg, minutes: Number(minutes.trim() || '0') };
    if (!(await send({ params: { id: engagement.id }, body: there }))) return;
    const back = { from: there.to, to: there.from };
    // The way there is kept by now: what is tried again, should the way back be refused, is the way back.
    if (andBack) setDraft({ ...draft, ...back, andBack: false });
    if (andBack && !(await send({ params: { id: engagement.id }, body: { ...there, ...back } }))) return;
    status(say('legKept'));
    onClose();
  };
  const foot = (
    <>
      <Button type="submit" kind="primary" busy={busy}>
        {say('save')}
      </Button>
      <Button onPress={onClose}>{say('giveUp')}</Button>
    </>
  );
  return (
    <Dialog title={say('addLeg')} onClose={onClose}>
      <Form problem={wrong ?? problem} onSubmit={keep} foot={foot}>
        <LegFields draft={draft} onChange={(to) => setDraft({ ...draft, ...to })} />
      </Form>
    </Dialog>
  );
}

const units = DISTANCE_UNITS.map((value) => ({ value, label: say(`unit_${value}`) }));

function LegFields({ draft, onChange }: { draft: LegDraft; onChange: (to: Partial<LegDraft>) => void }) {
  return (
    <>
      <div className="fields">
        <DayField label={say('day')} at="/on" value={draft.on} onType={(on) => onChange({ on })} />
        <TextField
          label={say('legFrom')}
          at="/from"
          value={draft.from}
          onType={(from) => onChange({ from })}
        />
        <TextField label={say('legTo')} at="/to" value={draft.to} onType={(to) => onChange({ to })} />
        <NumberField
          label={say('distance')}
          at="/distance"
          value={draft.distance}
          onType={(distance) => onChange({ distance })}
        />
        <Options
          label={say('unit')}
          at="/unit"
          value={draft.unit}
          options={units}
          onChoose={(unit) => onChange({ unit })}
        />
        <NumberField
          label={say('underWay')}
          optional
          at="/minutes"
          value={draft.minutes}
          onType={(minutes) => onChange({ minutes })}
        />
        <TextField
          label={say('purpose')}
          optional
          at="/purpose"
          value={draft.purpose}
          onType={(purpose) => onChange({ purpose })}
        />
      </div>
      <Tick label={say('andBack')} on={draft.andBack} onChange={(andBack) => onChange({ andBack })} />
    </>
  );
}
