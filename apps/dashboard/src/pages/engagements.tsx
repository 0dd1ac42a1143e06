// Who asked, what is agreed, what comes next.
import type { Stage } from '@colla/engagements';
import { useState } from 'react';
import { engagements as say } from '../catalogue/engagements.ts';
import { ui } from '../catalogue/ui.ts';
import { EngagementList, StageFilter } from '../features/engagements/engagement-list.tsx';
import { usePaged } from '../paged.ts';
import { Button, ButtonLink, Page, ProblemNote, Shown } from '../ui/index.ts';

export function Screen() {
  const [stage, setStage] = useState<Stage>();
  const query = { limit: 50, ...(stage ? { stage } : {}) };
  const { answer, more, problem } = usePaged('listEngagements', { query });
  const isEmpty = stage === undefined && answer.is === 'here' && answer.value.length === 0;
  return (
    <Page
      title={say('title')}
      under={say('under')}
      actions={
        !isEmpty && (
          <ButtonLink to="/engagements/new" kind="primary">
            {say('add')}
          </ButtonLink>
        )
      }
    >
      {!isEmpty && <StageFilter stage={stage} onChoose={setStage} />}
      <Shown answer={answer} what={say('fetching')}>
        {(engagements) => (
          <>
            <EngagementList engagements={engagements} filtered={stage !== undefined} />
            {problem && <ProblemNote problem={problem} again={more} />}
            {more && !problem && (
              <div>
                <Button onPress={more}>{ui('more')}</Button>
              </div>
            )}
          </>
        )}
      </Shown>
    </Page>
  );
}
