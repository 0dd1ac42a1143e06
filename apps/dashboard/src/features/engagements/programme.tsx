// The works to be played, in order, with where the pianist's part of each is.
import { PART_STATES } from '@colla/engagements';
import type { WorkJson } from '@colla/wire';
import { useState } from 'react';
import { useSend } from '../../books.ts';
import { headWord, engagements as say } from '../../catalogue/engagements.ts';
import { sayDay } from '../../locale.ts';
import { Button, Choice, Part, ProblemNote, useStatus } from '../../ui/index.ts';
import './engagement.css';
import type { Written } from './use-asked.ts';
import { WorkDialog } from './work-dialog.tsx';
import { inState, withWork } from './works.ts';

interface ProgrammeProps {
  engagement: string;
  /** The tariff as agreed. */
  under: Written | undefined;
  programme: readonly WorkJson[];
  today: string;
  /** False where nothing changes any more. */
  open: boolean;
}

const states = PART_STATES.map((value) => ({ value, label: headWord(value) }));

export function Programme({ engagement, under, programme, today, open }: ProgrammeProps) {
  const [writing, setWriting] = useState<WorkJson | 'new'>();
  const { send, problem } = useSend('setProgramme');
  const status = useStatus();
  const setState = async (work: WorkJson, state: WorkJson['part']['state']) => {
    const changed = inState(work, state, today);
    if (!(await send({ params: { id: engagement }, body: { works: withWork(programme, changed) } }))) return;
    const { receivedOn } = changed.part;
    if (receivedOn === undefined || receivedOn === work.part.receivedOn) return status(say('changed'));
    status(say('cameToday', { title: work.title, day: sayDay(receivedOn) }));
  };
  const minutes = programme.reduce((sum, work) => sum + work.minutes, 0);
  return (
    <Part
      title={say('programme')}
      actions={open && <Button onPress={() => setWriting('new')}>{say('addWork')}</Button>}
    >
      {problem && <ProblemNote problem={problem} />}
      {programme.length === 0 && <p className="aside">{say('noWorks')}</p>}
      <ol className="programme-list">
        {programme.map((work) => (
          <li key={work.id}>
            <WorkLine work={work} />
            {open ? (
              <>
                <Choice
                  label={say('partState', { title: work.title })}
                  value={work.part.state}
                  options={states}
                  onChoose={(state) => setState(work, state)}
                />
                <Button
                  kind="quiet"
                  label={say('changeWork', { title: work.title })}
                  onPress={() => setWriting(work)}
                >
                  {say('change')}
                </Button>
              </>
            ) : (
              <span className="aside">{headWord(work.part.state)}</span>
            )}
          </li>
        ))}
      </ol>
      {minutes > 0 && <p className="aside">{say('programmeLength', { count: minutes })}</p>}
      {writing && (
        <WorkDialog
          engagement={engagement}
          under={under}
          programme={programme}
          work={writing === 'new' ? undefined : writing}
          today={today}
          onClose={() => setWriting(undefined)}
        />
      )}
    </Part>
  );
}

function WorkLine({ work }: { work: WorkJson }) {
  const { difficulty, pages, requested, part } = work;
  const told = [
    part.edition,
    part.key,
    part.cuts,
    difficulty,
    pages === undefined ? undefined : say('pageCount', { count: pages }),
    requested ? say('requested').toLowerCase() : undefined,
    part.receivedOn === undefined ? undefined : say('came', { day: sayDay(part.receivedOn) }),
  ];
  return (
    <p className="work">
      {work.composer && <span className="composer">{work.composer} </span>}
      <cite>{work.title}</cite>
      {work.minutes > 0 && <span className="aside"> {work.minutes}′</span>}
      {told.some(Boolean) && <span className="aside engagement-told">{told.filter(Boolean).join(', ')}</span>}
    </p>
  );
}
