// The minutes that come over from before, for what is quoted or agreed.
import type { EngagementWholeJson } from '@colla/wire';
import { useState } from 'react';
import { useSend } from '../../books.ts';
import { engagements as say } from '../../catalogue/engagements.ts';
import { Button, Dialog, Form, type Said, useStatus } from '../../ui/index.ts';
import { minutesOver, rollingIn, slipsInMinutes, typedMinutes } from './roll-over.ts';
import { RollOverFields } from './roll-over-fields.tsx';

interface RollOverDialogProps {
  engagement: EngagementWholeJson;
  onClose: () => void;
}

export function RollOverDialog({ engagement, onClose }: RollOverDialogProps) {
  const { send, busy, problem } = useSend('changeEngagement');
  const [typed, setTyped] = useState(() => typedMinutes(engagement));
  const [wrong, setWrong] = useState<Said>();
  const status = useStatus();
  const keep = async () => {
    const errors = slipsInMinutes(typed);
    setWrong(errors[0] && { detail: errors[0].detail, errors });
    if (errors.length > 0) return;
    const body = { rolledOver: minutesOver(typed) };
    if (!(await send({ params: { id: engagement.id }, body }))) return;
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
    <Dialog title={say('rolledOver')} onClose={onClose}>
      <Form problem={wrong ?? problem} onSubmit={keep} foot={foot}>
        <RollOverFields
          engagement={engagement}
          clauses={rollingUnder(engagement)}
          typed={typed}
          onChange={setTyped}
        />
      </Form>
    </Dialog>
  );
}

/** The clauses that roll over of what is agreed, with their sentences. */
export function rollingUnder({ agreement }: EngagementWholeJson) {
  if (!agreement) return [];
  const rolling = rollingIn(agreement.written);
  return agreement.sentences.filter(({ clause }) => rolling.includes(clause));
}
