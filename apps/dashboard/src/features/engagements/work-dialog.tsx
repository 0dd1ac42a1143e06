// One work and the pianist's part of it, written down or changed.
import { PART_STATES, PERMISSIONS } from '@colla/engagements';
import type { WorkJson } from '@colla/wire';
import { useState } from 'react';
import { useSend } from '../../books.ts';
import { headWord, engagements as say } from '../../catalogue/engagements.ts';
import {
  Button,
  Choice,
  DayField,
  Dialog,
  Form,
  NumberField,
  type Said,
  Shown,
  TextField,
  Tick,
  useStatus,
} from '../../ui/index.ts';
import type { Asked } from './asked.ts';
import { AllOfWork } from './asked-of-work.tsx';
import { useAsked, type Written } from './use-asked.ts';
import { cameOn, draftOf, slipsInWork, type WorkDraft, withoutWork, withWork, workOf } from './works.ts';

interface WorkDialogProps {
  engagement: string;
  /** The tariff as agreed. */
  under: Written | undefined;
  programme: readonly WorkJson[];
  /** The work to change; a new one where left out. */
  work: WorkJson | undefined;
  today: string;
  onClose: () => void;
}

export function WorkDialog({ engagement, under, programme, work, today, onClose }: WorkDialogProps) {
  const { send, busy, problem } = useSend('setProgramme');
  const [draft, setDraft] = useState(() => draftOf(work));
  const [wrong, setWrong] = useState<Said>();
  const asked = useAsked(under);
  const status = useStatus();
  const at = `/works/${work ? programme.findIndex(({ id }) => id === work.id) : programme.length}`;
  const keep = async (works: ReturnType<typeof withWork>) => {
    if (!(await send({ params: { id: engagement }, body: { works } }))) return;
    status(say('changed'));
    onClose();
  };
  const submit = () => {
    const errors = slipsInWork(draft, at);
    setWrong(errors[0] && { detail: errors[0].detail, errors });
    if (errors.length === 0) keep(withWork(programme, workOf(draft, work?.id)));
  };
  const foot = (
    <>
      <Button type="submit" kind="primary" busy={busy}>
        {say('save')}
      </Button>
      {work && (
        <Button busy={busy} onPress={() => keep(withoutWork(programme, work.id))}>
          {say('takeOut')}
        </Button>
      )}
      <Button onPress={onClose}>{say('giveUp')}</Button>
    </>
  );
  return (
    <Dialog title={say('workDialog')} onClose={onClose}>
      <Shown answer={asked} what={say('fetchingTariffs')}>
        {(asked) => (
          <Form problem={wrong ?? problem} onSubmit={submit} foot={foot}>
            <WorkFields
              draft={draft}
              at={at}
              asked={asked}
              today={today}
              onChange={(to) => setDraft({ ...draft, ...to })}
            />
          </Form>
        )}
      </Shown>
    </Dialog>
  );
}

const states = PART_STATES.map((value) => ({ value, label: headWord(value) }));
const permissions = PERMISSIONS.map((value) => ({ value, label: headWord(value) }));

interface WorkFieldsProps {
  draft: WorkDraft;
  at: string;
  asked: Asked;
  today: string;
  onChange: (to: Partial<WorkDraft>) => void;
}

function WorkFields({ draft, at, asked, today, onChange }: WorkFieldsProps) {
  return (
    <>
      <div className="fields">
        <TextField
          label={say('composer')}
          optional
          at={`${at}/composer`}
          value={draft.composer}
          onType={(composer) => onChange({ composer })}
        />
        <TextField
          label={say('workTitle')}
          at={`${at}/title`}
          value={draft.title}
          onType={(title) => onChange({ title })}
        />
        <NumberField
          label={say('minutes')}
          optional
          at={`${at}/minutes`}
          value={draft.minutes}
          onType={(minutes) => onChange({ minutes })}
        />
      </div>
      <Tick label={say('requested')} on={draft.requested} onChange={(requested) => onChange({ requested })} />
      <AllOfWork work={draft} at={at} asked={asked} onChange={onChange} />
      <PartFields draft={draft} at={`${at}/part`} today={today} onChange={onChange} />
    </>
  );
}

function PartFields({ draft, at, today, onChange }: Omit<WorkFieldsProps, 'asked'>) {
  return (
    <div className="fields">
      <Choice
        label={say('part')}
        at={`${at}/state`}
        value={draft.state}
        options={states}
        onChoose={(state) => onChange({ state, receivedOn: cameOn(draft.receivedOn, state, today) ?? '' })}
      />
      <DayField
        label={say('receivedOn')}
        optional
        at={`${at}/receivedOn`}
        value={draft.receivedOn}
        onType={(receivedOn) => onChange({ receivedOn })}
      />
      {(['edition', 'key', 'cuts'] as const).map((name) => (
        <TextField
          key={name}
          label={say(name)}
          optional
          at={`${at}/${name}`}
          value={draft[name]}
          onType={(text) => onChange({ [name]: text })}
        />
      ))}
      <Choice
        label={say('permission')}
        at={`${at}/permission`}
        value={draft.permission}
        options={permissions}
        onChoose={(permission) => onChange({ permission })}
      />
    </div>
  );
}
