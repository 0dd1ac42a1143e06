// An inquiry is written down: who, when and where, what is played.
import type { EngagementJson, OrganisationJson } from '@colla/wire';
import { useState } from 'react';
import { useSend } from '../../books.ts';
import { engagements as say } from '../../catalogue/engagements.ts';
import { Button, Form, Part, type Said, Shown, TextField, Tick, useStatus } from '../../ui/index.ts';
import type { Asked } from './asked.ts';
import { AskedOfWork } from './asked-of-work.tsx';
import { CallFields } from './call-fields.tsx';
import { callAfter } from './call-row.ts';
import { busyAmong } from './clash.ts';
import './engagement.css';
import { emptyInquiry, emptyWork, type InquiryDraft, inquiryOf, newNames, type WorkRow } from './inquiry.ts';
import { slipsIn } from './inquiry-slips.ts';
import type { Named } from './naming.ts';
import { PeopleFields } from './people-fields.tsx';
import { nextKey } from './rows.ts';
import { bothOf, useAsked } from './use-asked.ts';
import { useEntering, useParties } from './use-parties.ts';

interface InquiryFormProps {
  organisation: OrganisationJson;
  onEntered: (engagement: EngagementJson) => void;
  onGiveUp: () => void;
}

export function InquiryForm(props: InquiryFormProps) {
  const parties = useParties();
  const asked = useAsked();
  return (
    <Shown answer={bothOf(parties, asked)} what={say('fetchingPeople')}>
      {([known, asked]) => <Inquiry {...props} known={known} asked={asked} />}
    </Shown>
  );
}

function Inquiry(props: InquiryFormProps & { known: readonly Named[]; asked: Asked }) {
  const { organisation, known, asked, onEntered, onGiveUp } = props;
  const { zone } = organisation;
  const { send, busy, problem } = useSend('addEngagement');
  const [draft, setDraft] = useState(() => emptyInquiry(zone));
  const [wrong, setWrong] = useState<Said>();
  const entering = useEntering(known);
  const status = useStatus();
  const change = (to: Partial<InquiryDraft>) => setDraft({ ...draft, ...to });
  const enter = async () => {
    const errors = slipsIn(draft, known);
    if (errors[0]) return setWrong({ detail: errors[0].detail, errors });
    const ids = await entering.idsOf(newNames(draft, known));
    if ('detail' in ids) return setWrong(ids);
    setWrong(undefined);
    const engagement = await send({ body: inquiryOf(draft, ids) });
    if (!engagement) return;
    status(say('entered', { title: engagement.title }));
    onEntered(engagement);
  };
  const foot = (
    <>
      <Button type="submit" kind="primary" busy={busy || entering.busy}>
        {say('keep')}
      </Button>
      <Button onPress={onGiveUp}>{say('giveUp')}</Button>
    </>
  );
  return (
    <Form problem={wrong ?? problem} onSubmit={enter} foot={foot}>
      <Part title={say('people')}>
        <PeopleFields people={draft} parties={known} asked={asked} onChange={change} />
      </Part>
      <Part title={say('whenAndWhere')}>
        <CallRows draft={draft} zone={zone} asked={asked} onChange={change} />
      </Part>
      <Part title={say('works')}>
        <WorkRows works={draft.works} asked={asked} onChange={(works) => change({ works })} />
      </Part>
    </Form>
  );
}

interface CallRowsProps {
  draft: InquiryDraft;
  zone: string;
  asked: Asked;
  onChange: (to: Partial<InquiryDraft>) => void;
}

function CallRows({ draft, zone, asked, onChange }: CallRowsProps) {
  const { calls } = draft;
  return (
    <>
      <ol className="engagement-numbered">
        {calls.map((call, place) => (
          <li key={call.key}>
            <CallFields
              call={call}
              at={`/calls/${place}`}
              hold="new"
              asked={asked}
              engagement={undefined}
              others={busyAmong(calls.filter(({ key }) => key !== call.key))}
              onChange={(to) =>
                onChange({ calls: calls.map((row) => (row.key === call.key ? { ...row, ...to } : row)) })
              }
            />
            <Button
              kind="quiet"
              label={say('removeCall', { number: place + 1 })}
              onPress={() => onChange({ calls: calls.filter(({ key }) => key !== call.key) })}
            >
              {say('takeOut')}
            </Button>
          </li>
        ))}
      </ol>
      <div>
        <Button onPress={() => onChange({ calls: [...calls, callAfter(calls, zone)] })}>
          {say('addCall')}
        </Button>
      </div>
    </>
  );
}

interface WorkRowsProps {
  works: readonly WorkRow[];
  asked: Asked;
  onChange: (works: WorkRow[]) => void;
}

function WorkRows({ works, asked, onChange }: WorkRowsProps) {
  const change = (key: number, to: Partial<WorkRow>) =>
    onChange(works.map((row) => (row.key === key ? { ...row, ...to } : row)));
  return (
    <>
      <ol className="engagement-numbered">
        {works.map((work, place) => (
          <li key={work.key}>
            <div className="fields">
              <TextField
                label={say('composer')}
                optional
                at={`/programme/${place}/composer`}
                most={120}
                value={work.composer}
                onType={(composer) => change(work.key, { composer })}
              />
              <TextField
                label={say('workTitle')}
                at={`/programme/${place}/title`}
                value={work.title}
                onType={(title) => change(work.key, { title })}
              />
              <TextField
                label={say('minutes')}
                optional
                at={`/programme/${place}/minutes`}
                value={work.minutes}
                onType={(minutes) => change(work.key, { minutes })}
              />
              <AskedOfWork
                work={work}
                at={`/programme/${place}`}
                asked={asked}
                onChange={(to) => change(work.key, to)}
              />
              <Tick
                label={say('requested')}
                on={work.requested}
                onChange={(requested) => change(work.key, { requested })}
              />
            </div>
            <Button
              kind="quiet"
              label={say('removeWork', { number: place + 1 })}
              onPress={() => onChange(works.filter(({ key }) => key !== work.key))}
            >
              {say('takeOut')}
            </Button>
          </li>
        ))}
      </ol>
      <div>
        <Button onPress={() => onChange([...works, emptyWork(nextKey(works))])}>{say('addWork')}</Button>
      </div>
    </>
  );
}
