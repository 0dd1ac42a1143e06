// The pianist plays a call though what was to be paid first was not: the reason is kept with it.
import type { BlockJson, CallJson, EngagementJson } from '@colla/wire';
import { useState } from 'react';
import { useSend } from '../../books.ts';
import { engagements as say } from '../../catalogue/engagements.ts';
import { sayMoney } from '../../locale.ts';
import { Button, Dialog, Form, TextField, useStatus } from '../../ui/index.ts';
import { sayDueSince } from './blocked.ts';
import { callName } from './names.ts';

interface LiftDialogProps {
  engagement: EngagementJson;
  block: BlockJson | undefined;
  call: CallJson;
  onClose: () => void;
}

export function LiftDialog({ engagement: { id, currency }, block, call, onClose }: LiftDialogProps) {
  const { send, busy, problem } = useSend('liftBlock');
  const [reason, setReason] = useState('');
  const status = useStatus();
  const name = callName(call);
  const lift = async () => {
    if (!(await send({ params: { id, call: call.id }, body: { reason } }))) return;
    status(say('nowLifted', { call: name }));
    onClose();
  };
  const foot = (
    <>
      <Button type="submit" kind="primary" busy={busy}>
        {say('lift')}
      </Button>
      <Button onPress={onClose}>{say('giveUp')}</Button>
    </>
  );
  return (
    <Dialog title={say('liftTitle', { call: name })} onClose={onClose}>
      <Form problem={problem} onSubmit={lift} foot={foot}>
        {block && (
          <p>
            {sayDueSince(block)}: {sayMoney(block.owed, currency)}. {block.sentence}
          </p>
        )}
        <TextField
          label={say('liftReason')}
          hint={say('liftReasonHint')}
          at="/reason"
          value={reason}
          onType={setReason}
        />
      </Form>
    </Dialog>
  );
}
