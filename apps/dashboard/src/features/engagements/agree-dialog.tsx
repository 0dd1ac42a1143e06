// The payer says yes: what is frozen by it is said before it is.
import type { EngagementWholeJson, StatementAnswerJson } from '@colla/wire';
import { useRef, useState } from 'react';
import { useSend } from '../../books.ts';
import { engagements as say } from '../../catalogue/engagements.ts';
import { sayMoney } from '../../locale.ts';
import { Button, Dialog, Form, TextField, useStatus } from '../../ui/index.ts';
import { payerNames } from './names.ts';

interface AgreeDialogProps {
  engagement: EngagementWholeJson;
  answer: StatementAnswerJson | undefined;
  onClose: () => void;
}

export function AgreeDialog({ engagement, answer, onClose }: AgreeDialogProps) {
  const { id, title, quote } = engagement;
  const { send, busy, problem } = useSend('agreeEngagement');
  const [acceptedBy, setAcceptedBy] = useState(Object.values(payerNames(engagement))[0] ?? '');
  const gone = useRef(false);
  const status = useStatus();
  const agree = async () => {
    if (!(await send({ params: { id }, body: { acceptedBy } }))) return;
    status(say('nowEngaged', { title }));
    gone.current = true;
    onClose();
  };
  const foot = (
    <>
      <Button type="submit" kind="primary" busy={busy}>
        {say('agreeIt')}
      </Button>
      <Button onPress={onClose}>{say('giveUp')}</Button>
    </>
  );
  return (
    <Dialog title={say('agreeTitle', { title })} onClose={onClose} gone={gone}>
      <Form problem={problem} onSubmit={agree} foot={foot}>
        {answer && (
          <p>
            {say('agreeTotal', {
              total: sayMoney(answer.statement.total, answer.statement.currency),
            })}
          </p>
        )}
        <p>{say('agreeWhy', { count: quote?.sentences.length ?? 0 })}</p>
        <TextField label={say('acceptedBy')} at="/acceptedBy" value={acceptedBy} onType={setAcceptedBy} />
      </Form>
    </Dialog>
  );
}
