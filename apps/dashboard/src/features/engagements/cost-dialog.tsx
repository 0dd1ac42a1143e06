// Money spent for the engagement.
import { refused } from '@colla/refusal';
import type { EngagementJson } from '@colla/wire';
import { useState } from 'react';
import { useSend } from '../../books.ts';
import { engagements as say } from '../../catalogue/engagements.ts';
import { readTyped } from '../../locale.ts';
import {
  Button,
  DayField,
  Dialog,
  Form,
  MoneyField,
  type Said,
  TextField,
  useStatus,
} from '../../ui/index.ts';

interface CostDialogProps {
  engagement: EngagementJson;
  today: string;
  onClose: () => void;
}

export function CostDialog({ engagement: { id, currency }, today, onClose }: CostDialogProps) {
  const { send, busy, problem } = useSend('addCost');
  const [draft, setDraft] = useState({ on: today, what: '', amount: '' });
  const [wrong, setWrong] = useState<Said>();
  const status = useStatus();
  const keep = async () => {
    const amount = readTyped(draft.amount, currency);
    if (refused(amount)) return setWrong({ detail: amount.sentence, pointer: '/amount' });
    setWrong(undefined);
    if (!(await send({ params: { id }, body: { ...draft, amount } }))) return;
    status(say('costKept'));
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
    <Dialog title={say('addCost')} onClose={onClose}>
      <Form problem={wrong ?? problem} onSubmit={keep} foot={foot}>
        <TextField
          label={say('costWhat')}
          at="/what"
          value={draft.what}
          onType={(what) => setDraft({ ...draft, what })}
        />
        <div className="fields">
          <MoneyField
            label={say('amount')}
            at="/amount"
            value={draft.amount}
            currency={currency}
            onType={(amount) => setDraft({ ...draft, amount })}
          />
          <DayField
            label={say('day')}
            at="/on"
            value={draft.on}
            onType={(on) => setDraft({ ...draft, on })}
          />
        </div>
      </Form>
    </Dialog>
  );
}
