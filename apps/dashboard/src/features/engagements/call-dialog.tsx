// A further call is kept free, or one that has not taken place moves or is named otherwise.
import type { CallJson, EngagementWholeJson, OrganisationJson } from '@colla/wire';
import { useState } from 'react';
import { useSend } from '../../books.ts';
import { engagements as say } from '../../catalogue/engagements.ts';
import { Button, Dialog, Form, type Said, Shown, useStatus } from '../../ui/index.ts';
import type { Asked } from './asked.ts';
import { CallFields } from './call-fields.tsx';
import { type CallRow, callChangeOf, callInputOf, emptyCall, rowOf } from './call-row.ts';
import { busyWith } from './clash.ts';
import { slipsInCall } from './inquiry-slips.ts';
import { callName } from './names.ts';
import { ShiftFields, ShiftView } from './shift-view.tsx';
import { isShifted, shiftedBy, type WordOfShift, wordOfShift } from './shift-word.ts';
import { useAsked } from './use-asked.ts';

interface AddCallProps {
  engagement: EngagementWholeJson;
  zone: string;
  onClose: () => void;
}

export function AddCallDialog({ engagement, zone, onClose }: AddCallProps) {
  const { send, busy, problem } = useSend('addCall');
  const status = useStatus();
  const keep = async (row: CallRow) => {
    const kept = await send({ params: { id: engagement.id }, body: callInputOf(row) });
    const call = kept?.calls.at(-1);
    if (!call) return;
    status(say('nowKept', { call: callName(call) }));
    onClose();
  };
  return (
    <CallForm
      title={say('newCall')}
      engagement={engagement}
      start={emptyCall(0, zone)}
      hold="new"
      keepWord={say('keepFree')}
      sending={{ busy, problem }}
      onKeep={keep}
      onClose={onClose}
    />
  );
}

interface MoveCallProps {
  engagement: EngagementWholeJson;
  organisation: OrganisationJson;
  call: CallJson;
  onClose: () => void;
}

/** Once it is agreed, it is asked whose wish it is that it moves: some tariffs charge the payer's. */
export function MoveCallDialog({ engagement, organisation, call, onClose }: MoveCallProps) {
  const { send, busy, problem } = useSend('changeCall');
  const status = useStatus();
  const start = rowOf(call);
  const [word, setWord] = useState<WordOfShift>(() => wordOfShift(start.zone));
  const isAgreed = engagement.agreement !== undefined && call.standing.is === 'agreed';
  const asksWord = (row: CallRow) => isAgreed && isShifted(row, start);
  const keep = async (row: CallRow) => {
    const moved = asksWord(row) ? shiftedBy(word) : {};
    const body = { ...callChangeOf(row, call), ...moved };
    const kept = await send({ params: { id: engagement.id, call: call.id }, body });
    const changed = kept?.calls.find(({ id }) => id === call.id);
    if (!changed) return;
    status(say('nowMoved', { call: callName(changed) }));
    onClose();
  };
  return (
    <CallForm
      title={say('moveTitle', { call: callName(call) })}
      engagement={engagement}
      own={call.id}
      start={start}
      hold={call.standing.is === 'held' ? 'kept' : 'none'}
      keepWord={say('moveIt')}
      sending={{ busy, problem }}
      below={(row) =>
        asksWord(row) && (
          <>
            <ShiftFields word={word} onChange={(to) => setWord({ ...word, ...to })} />
            <ShiftView of={{ engagement, organisation, call: call.id, row, word }} />
          </>
        )
      }
      onKeep={keep}
      onClose={onClose}
    />
  );
}

interface CallFormProps {
  title: string;
  engagement: EngagementWholeJson;
  /** The call itself, where it is one that is kept. */
  own?: string;
  start: CallRow;
  hold: 'new' | 'kept' | 'none';
  keepWord: string;
  sending: { busy: boolean; problem: Said | undefined };
  /** What else is asked and shown of the row as it is typed. */
  below?: (row: CallRow) => React.ReactNode;
  onKeep: (row: CallRow) => void;
  onClose: () => void;
}

function CallForm(props: CallFormProps) {
  const asked = useAsked(props.engagement.agreement?.written);
  return (
    <Dialog title={props.title} onClose={props.onClose}>
      <Shown answer={asked} what={say('fetchingTariffs')}>
        {(asked) => <CallFormAsked {...props} asked={asked} />}
      </Shown>
    </Dialog>
  );
}

function CallFormAsked(props: CallFormProps & { asked: Asked }) {
  const { engagement, own, start, hold, asked, sending, below, onClose } = props;
  const [row, setRow] = useState(start);
  const [wrong, setWrong] = useState<Said>();
  const submit = () => {
    const errors = slipsInCall(row, '');
    setWrong(errors[0] && { detail: errors[0].detail, errors });
    if (errors.length === 0) props.onKeep(row);
  };
  const foot = (
    <>
      <Button type="submit" kind="primary" busy={sending.busy}>
        {props.keepWord}
      </Button>
      <Button onPress={onClose}>{say('giveUp')}</Button>
    </>
  );
  return (
    <Form problem={wrong ?? sending.problem} onSubmit={submit} foot={foot}>
      <CallFields
        call={row}
        at=""
        hold={hold}
        asked={asked}
        engagement={engagement.id}
        others={busyWith(engagement.calls.filter(({ id }) => id !== own))}
        onChange={(to) => setRow({ ...row, ...to })}
      />
      {below?.(row)}
    </Form>
  );
}
