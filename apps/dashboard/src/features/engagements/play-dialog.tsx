// After a call: it was played, at the times planned or at others. One tap opens it, one keeps it.
import type { WrittenSpan } from '@colla/calendar';
import type { CallJson } from '@colla/wire';
import { useState } from 'react';
import { useSend } from '../../books.ts';
import { engagements as say } from '../../catalogue/engagements.ts';
import { Button, Buttons, DayField, Dialog, Form, type Said, TimeField, useStatus } from '../../ui/index.ts';
import { callOf } from './facts.ts';
import { callName } from './names.ts';
import { endMoved, offeredTimes, pastMidnight } from './spans.ts';
import { TwiceFields } from './twice-fields.tsx';

interface PlayDialogProps {
  engagement: string;
  call: CallJson;
  onClose: () => void;
}

/** Minutes by which a rehearsal most often ends otherwise than planned. */
const SHIFTS = [-15, 5, 15, 30] as const;

export function PlayDialog({ engagement, call, onClose }: PlayDialogProps) {
  const { send, busy, problem } = useSend('playCall');
  const [times, setTimes] = useState<WrittenSpan>(() => offeredTimes(callOf(call)));
  const [wrong, setWrong] = useState<Said>();
  const status = useStatus();
  const name = callName(call);
  const change = (to: WrittenSpan) => {
    setTimes(to);
    setWrong(undefined);
  };
  const moveEnd = (minutes: number) => {
    const missing = (['on', 'until'] as const).find((field) => times[field] === '');
    if (missing) return setWrong({ detail: say(`wrong_${missing}`), pointer: `/${missing}` });
    change(endMoved(times, minutes));
  };
  const keep = async () => {
    const body = pastMidnight(times);
    const kept = await send({ params: { id: engagement, call: call.id }, body });
    if (!kept) return;
    status(say('nowPlayed', { call: name }));
    onClose();
  };
  const foot = (
    <>
      <Button type="submit" kind="primary" busy={busy}>
        {say('itWasSo')}
      </Button>
      <Button onPress={onClose}>{say('giveUp')}</Button>
    </>
  );
  return (
    <Dialog title={say('playFor', { call: name })} onClose={onClose}>
      <Form problem={wrong ?? problem} onSubmit={keep} foot={foot}>
        <p className="aside">{say('asPlanned')}</p>
        <TimesFields times={times} onChange={(to) => change(withEnd({ ...times, ...to }))} />
        <Buttons>
          {SHIFTS.map((minutes) => (
            <Button key={minutes} kind="quiet" onPress={() => moveEnd(minutes)}>
              {say(minutes < 0 ? 'earlier' : 'later', { count: Math.abs(minutes) })}
            </Button>
          ))}
        </Buttons>
      </Form>
    </Dialog>
  );
}

/** Times changed by hand end on the day they begin, unless they run past midnight. */
function withEnd({ untilOn: _, ...times }: WrittenSpan): WrittenSpan {
  return pastMidnight(times);
}

function TimesFields({
  times,
  onChange,
}: {
  times: WrittenSpan;
  onChange: (to: Partial<WrittenSpan>) => void;
}) {
  return (
    <div className="fields">
      <DayField label={say('day')} at="/on" value={times.on} onType={(on) => onChange({ on })} />
      <TimeField label={say('from')} at="/from" value={times.from} onType={(from) => onChange({ from })} />
      <TimeField
        label={say('untilTime')}
        at="/until"
        value={times.until}
        onType={(until) => onChange({ until })}
      />
      <TwiceFields span={times} onChange={onChange} />
    </div>
  );
}
