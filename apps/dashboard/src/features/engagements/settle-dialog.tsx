// Everything is played, invoiced and paid: the engagement is closed.
import type { EngagementJson } from '@colla/wire';
import { useSend } from '../../books.ts';
import { engagements as say } from '../../catalogue/engagements.ts';
import { Button, Buttons, Dialog, ProblemNote, useStatus } from '../../ui/index.ts';

export function SettleDialog({ engagement, onClose }: { engagement: EngagementJson; onClose: () => void }) {
  const { id, title } = engagement;
  const { send, busy, problem } = useSend('settleEngagement');
  const status = useStatus();
  const settle = async () => {
    if (!(await send({ params: { id } }))) return;
    status(say('nowSettled', { title }));
    onClose();
  };
  return (
    <Dialog title={say('settleTitle', { title })} onClose={onClose}>
      <div className="form">
        <p>{say('settleWhy')}</p>
        {problem && <ProblemNote problem={problem} />}
        <Buttons>
          <Button kind="primary" busy={busy} onPress={settle}>
            {say('settleMove')}
          </Button>
          <Button onPress={onClose}>{say('giveUp')}</Button>
        </Buttons>
      </div>
    </Dialog>
  );
}
