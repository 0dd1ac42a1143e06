// A further call is kept free, or one that has not taken place moves or is named otherwise.
import type { CallJson } from '@colla/wire';
import { useState } from 'react';
import { useSend } from '../../books.ts';
import { engagements as say } from '../../catalogue/engagements.ts';
import { Button, Dialog, Form, type Said, useStatus } from '../../ui/index.ts';
import { CallFields } from './call-fields.tsx';
import { callOf } from './facts.ts';
import { type CallRow, callInputOf, emptyCall, plannedOf } from './inquiry.ts';
import { slipsInCall } from './inquiry-slips.ts';
import { callName } from './names.ts';
import { writeSpan } from './spans.ts';

interface AddCallProps {
  engagement: string;
  zone: string;
  onClose: () => void;
}

export function AddCallDialog({ engagement, zone, onClose }: AddCallProps) {
  const { send, busy, problem } = useSend('addCall');
  const status = useStatus();
  const keep = async (row: CallRow) => {
    const kept = await send({ params: { id: engagement }, body: callInputOf(row) });
    const call = kept?.calls.at(-1);
    if (!call) return;
    status(say('nowKept', { call: callName(call) }));
    onClose();
  };
  return (
    <CallForm
      title={say('newCall')}
      start={emptyCall(0, zone)}
      conditional
      keepWord={say('keepFree')}
      sending={{ busy, problem }}
      onKeep={keep}
      onClose={onClose}
    />
  );
}

interface MoveCallProps {
  engagement: string;
  call: CallJson;
  onClose: () => void;
}

export function MoveCallDialog({ engagement, call, onClose }: MoveCallProps) {
  const { send, busy, problem } = useSend('changeCall');
  const status = useStatus();
  const keep = async (row: CallRow) => {
    const { kind, label, place } = callInputOf(row);
    const body = { kind, place: place ?? '', planned: plannedOf(row), ...(label ? { label } : {}) };
    const kept = await send({ params: { id: engagement, call: call.id }, body });
    const moved = kept?.calls.find(({ id }) => id === call.id);
    if (!moved) return;
    status(say('nowMoved', { call: callName(moved) }));
    onClose();
  };
  return (
    <CallForm
      title={say('moveTitle', { call: callName(call) })}
      start={rowOf(call)}
      conditional={false}
      keepWord={say('moveIt')}
      sending={{ busy, problem }}
      onKeep={keep}
      onClose={onClose}
    />
  );
}

function rowOf(call: CallJson): CallRow {
  const { on, from, until, zone } = writeSpan(callOf(call).planned);
  const { kind, label = '', place } = call;
  return { ...emptyCall(0, zone), kind, label, place, on, from, until };
}

interface CallFormProps {
  title: string;
  start: CallRow;
  conditional: boolean;
  keepWord: string;
  sending: { busy: boolean; problem: Said | undefined };
  onKeep: (row: CallRow) => void;
  onClose: () => void;
}

function CallForm({ title, start, conditional, keepWord, sending, onKeep, onClose }: CallFormProps) {
  const [row, setRow] = useState(start);
  const [wrong, setWrong] = useState<Said>();
  const submit = () => {
    const errors = slipsInCall(row, '');
    setWrong(errors[0] && { detail: errors[0].detail, errors });
    if (errors.length === 0) onKeep(row);
  };
  const foot = (
    <>
      <Button type="submit" kind="primary" busy={sending.busy}>
        {keepWord}
      </Button>
      <Button onPress={onClose}>{say('giveUp')}</Button>
    </>
  );
  return (
    <Dialog title={title} onClose={onClose}>
      <Form problem={wrong ?? sending.problem} onSubmit={submit} foot={foot}>
        <CallFields call={row} at="" conditional={conditional} onChange={(to) => setRow({ ...row, ...to })} />
      </Form>
    </Dialog>
  );
}
