// Title, people and what a price may depend on, changed after they were written down.
import type { EngagementWholeJson } from '@colla/wire';
import { useState } from 'react';
import { useSend } from '../../books.ts';
import { engagements as say } from '../../catalogue/engagements.ts';
import { Button, Dialog, Form, type Said, useStatus } from '../../ui/index.ts';
import { changeOf, newNames, type People } from './inquiry.ts';
import { slipsIn } from './inquiry-slips.ts';
import { PeopleFields } from './people-fields.tsx';
import { idsOf, useParties } from './use-parties.ts';

export function PeopleDialog({
  engagement,
  onClose,
}: {
  engagement: EngagementWholeJson;
  onClose: () => void;
}) {
  const { send, busy, problem } = useSend('changeEngagement');
  const [people, setPeople] = useState<People>(() => peopleAsKept(engagement));
  const [wrong, setWrong] = useState<Said>();
  const parties = useParties();
  const status = useStatus();
  const keep = async () => {
    const draft = { ...people, calls: [], works: [] };
    const errors = slipsIn(draft);
    if (errors[0]) return setWrong({ detail: errors[0].detail, errors });
    const ids = await idsOf(newNames(draft, parties), parties);
    if ('detail' in ids) return setWrong(ids);
    setWrong(undefined);
    if (!(await send({ params: { id: engagement.id }, body: changeOf(people, ids) }))) return;
    status(say('changed'));
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
    <Dialog title={say('changePeople')} onClose={onClose}>
      <Form problem={wrong ?? problem} onSubmit={keep} foot={foot}>
        <PeopleFields people={people} parties={parties} onChange={(to) => setPeople({ ...people, ...to })} />
      </Form>
    </Dialog>
  );
}

function peopleAsKept(engagement: EngagementWholeJson): People {
  const { title, soloistParty, institutionParty, payers, soloist, note = '', parties } = engagement;
  const name = (id: string | undefined) => (id === undefined ? '' : (parties[id] ?? ''));
  const rows = Object.entries(payers).map(([role, id], key) => ({ key, role, name: name(id) }));
  return {
    title,
    soloist: name(soloistParty),
    institution: name(institutionParty),
    payers: rows.length > 0 ? rows : [{ key: 0, role: 'payer', name: '' }],
    level: soloist.level ?? '',
    instrument: soloist.instrument ?? '',
    study: soloist.study ?? '',
    sharers: String(engagement.sharers),
    pianistClass: engagement.pianistClass ?? '',
    circumstances: engagement.circumstances.join('\n'),
    note,
  };
}
