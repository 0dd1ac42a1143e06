// Moves of a call that need nothing but a yes: agree a hold, release it, take back what was said.
import type { CallJson } from '@colla/wire';
import type { ReactNode } from 'react';
import { useSend } from '../../books.ts';
import { engagements as say } from '../../catalogue/engagements.ts';
import { Button, Buttons, Dialog, ProblemNote, useStatus } from '../../ui/index.ts';
import { callName, sayStanding } from './names.ts';

const MOVES = {
  agree: { route: 'agreeCall', said: 'nowAgreed' },
  release: { route: 'releaseCall', said: 'nowReleased' },
  reopen: { route: 'reopenCall', said: 'nowReopened' },
} as const;

interface SimpleCallDialogProps {
  engagement: string;
  call: CallJson;
  move: keyof typeof MOVES;
  /** What it would come to, where that is known. */
  more?: ReactNode;
  onClose: () => void;
}

export function SimpleCallDialog({ engagement, call, move, more, onClose }: SimpleCallDialogProps) {
  const { route, said } = MOVES[move];
  const { send, busy, problem } = useSend(route);
  const status = useStatus();
  const name = callName(call);
  const go = async () => {
    if (!(await send({ params: { id: engagement, call: call.id } }))) return;
    status(say(said, { call: name }));
    onClose();
  };
  return (
    <Dialog title={move === 'release' ? say('releaseTitle', { call: name }) : name} onClose={onClose}>
      <div className="form">
        <p>{move === 'release' ? say('releaseWhy') : sayStanding(call)}</p>
        {more}
        {problem && <ProblemNote problem={problem} />}
        <Buttons>
          <Button kind="primary" busy={busy} onPress={go}>
            {say(move)}
          </Button>
          <Button onPress={onClose}>{say('giveUp')}</Button>
        </Buttons>
      </div>
    </Dialog>
  );
}
