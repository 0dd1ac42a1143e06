// An inquiry or quote comes to nothing: somebody said no, or nobody answered.
import type { EngagementJson } from '@colla/wire';
import { useSend } from '../../books.ts';
import { engagements as say } from '../../catalogue/engagements.ts';
import { Button, Buttons, Dialog, ProblemNote, useStatus } from '../../ui/index.ts';

interface CloseDialogProps {
  engagement: EngagementJson;
  as: 'decline' | 'lapse';
  onClose: () => void;
}

export function CloseDialog({ engagement: { id, title }, as, onClose }: CloseDialogProps) {
  const { send, busy, problem } = useSend(as === 'decline' ? 'declineEngagement' : 'lapseEngagement');
  const status = useStatus();
  const close = async () => {
    if (!(await send({ params: { id } }))) return;
    status(say('nowClosed', { title }));
    onClose();
  };
  return (
    <Dialog title={say(as === 'decline' ? 'declineTitle' : 'lapseTitle', { title })} onClose={onClose}>
      <div className="form">
        <p>{say('closeWhy')}</p>
        {problem && <ProblemNote problem={problem} />}
        <Buttons>
          <Button kind="destructive" busy={busy} onPress={close}>
            {say('closeIt')}
          </Button>
          <Button onPress={onClose}>{say('giveUp')}</Button>
        </Buttons>
      </div>
    </Dialog>
  );
}
