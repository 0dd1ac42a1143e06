// Title, people and what a price may depend on, changed after they were written down.
import type { EngagementWholeJson } from '@colla/wire';
import { useState } from 'react';
import { useSend } from '../../books.ts';
import { engagements as say } from '../../catalogue/engagements.ts';
import { Button, Dialog, Form, type Said, Shown, useStatus } from '../../ui/index.ts';
import type { Asked } from './asked.ts';
import { changeOf, newNames, type People } from './inquiry.ts';
import { slipsIn } from './inquiry-slips.ts';
import type { Named } from './naming.ts';
import { PeopleFields } from './people-fields.tsx';
import { bothOf, useAsked } from './use-asked.ts';
import { useEntering, useParties } from './use-parties.ts';

interface PeopleDialogProps {
  engagement: EngagementWholeJson;
  onClose: () => void;
}

export function PeopleDialog(props: PeopleDialogProps) {
  const parties = useParties();
  const asked = useAsked(props.engagement.agreement?.written);
  return (
    <Dialog title={say('changePeople')} onClose={props.onClose}>
      <Shown answer={bothOf(parties, asked)} what={say('fetchingPeople')}>
        {([known, asked]) => <PeopleForm {...props} known={known} asked={asked} />}
      </Shown>
    </Dialog>
  );
}

interface PeopleFormProps extends PeopleDialogProps {
  known: readonly Named[];
  asked: Asked;
}

function PeopleForm({ engagement, known, asked, onClose }: PeopleFormProps) {
  const { send, busy, problem } = useSend('changeEngagement');
  const [people, setPeople] = useState<People>(() => peopleAsKept(engagement, known));
  const entering = useEntering(known);
  const [wrong, setWrong] = useState<Said>();
  const status = useStatus();
  const keep = async () => {
    const draft = { ...people, calls: [], works: [] };
    const errors = slipsIn(draft, known);
    if (errors[0]) return setWrong({ detail: errors[0].detail, errors });
    const ids = await entering.idsOf(newNames(draft, known));
    if ('detail' in ids) return setWrong(ids);
    setWrong(undefined);
    if (!(await send({ params: { id: engagement.id }, body: changeOf(people, ids) }))) return;
    status(say('changed'));
    onClose();
  };
  const foot = (
    <>
      <Button type="submit" kind="primary" busy={busy || entering.busy}>
        {say('save')}
      </Button>
      <Button onPress={onClose}>{say('giveUp')}</Button>
    </>
  );
  return (
    <Form problem={wrong ?? problem} onSubmit={keep} foot={foot}>
      <PeopleFields
        people={people}
        parties={known}
        asked={asked}
        onChange={(to) => setPeople({ ...people, ...to })}
      />
    </Form>
  );
}

function peopleAsKept(engagement: EngagementWholeJson, known: readonly Named[]): People {
  const { title, soloistParty, institutionParty, payers, soloist, note = '' } = engagement;
  const name = (id: string | undefined) => known.find((party) => party.id === id)?.as ?? '';
  const rows = Object.entries(payers).map(([role, id], key) => ({ key, role, name: name(id) }));
  return {
    title,
    soloist: name(soloistParty),
    institution: name(institutionParty),
    payers: rows.length > 0 ? rows : [{ key: 0, role: 'payer', name: '' }],
    level: soloist.level ?? '',
    instrument: soloist.instrument ?? '',
    study: soloist.study ?? '',
    membership: soloist.membership ?? '',
    sharers: String(engagement.sharers),
    pianistClass: engagement.pianistClass ?? '',
    circumstances: engagement.circumstances.join('\n'),
    note,
  };
}
