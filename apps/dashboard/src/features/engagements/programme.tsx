// The works to be played, in order, with where the pianist's part of each is.
import { PART_STATES } from '@colla/engagements';
import type { WorkJson } from '@colla/wire';
import { useState } from 'react';
import { useSend } from '../../books.ts';
import { headWord, engagements as say } from '../../catalogue/engagements.ts';
import { Button, Choice, Part, ProblemNote } from '../../ui/index.ts';
import './engagement.css';
import type { Written } from './use-asked.ts';
import { WorkDialog } from './work-dialog.tsx';
import { withWork } from './works.ts';

interface ProgrammeProps {
  engagement: string;
  /** The tariff as agreed. */
  under: Written | undefined;
  programme: readonly WorkJson[];
  /** False where nothing changes any more. */
  open: boolean;
}

const states = PART_STATES.map((value) => ({ value, label: headWord(value) }));

export function Programme({ engagement, under, programme, open }: ProgrammeProps) {
  const [writing, setWriting] = useState<WorkJson | 'new'>();
  const { send, problem } = useSend('setProgramme');
  const setState = (work: WorkJson, state: WorkJson['part']['state']) => {
    const works = withWork(programme, { ...work, part: { ...work.part, state } });
    return send({ params: { id: engagement }, body: { works } });
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
