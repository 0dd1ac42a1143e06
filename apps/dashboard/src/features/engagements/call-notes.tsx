// What is said of a call below its name: blocked or let through, moved, at the same time as another.
import type { CallJson, EngagementWholeJson } from '@colla/wire';
import { engagements as say } from '../../catalogue/engagements.ts';
import { sayDay, saySpan } from '../../locale.ts';
import { isBlocked, sayBlocked } from './blocked.ts';
import type { Busy } from './clash.ts';
import { ClashNote } from './clash-note.tsx';
import './engagement.css';
import { callOf } from './facts.ts';

interface CallNotesProps {
  engagement: EngagementWholeJson;
  call: CallJson;
  begun: boolean;
  /** All calls of the engagement, this one with them. */
  busy: readonly Busy[];
}

export function CallNotes({ engagement, call, begun, busy }: CallNotesProps) {
  const { id, moves } = engagement;
  const blocked = sayBlocked(engagement, call);
  const moved = moves.findLast((move) => move.call === call.id);
  const isAhead = !begun && (call.standing.is === 'held' || call.standing.is === 'agreed');
  return (
    <>
      {blocked && (
        <span className={isBlocked(engagement, call) ? 'note overdue' : 'note aside'}>{blocked}</span>
      )}
      {moved && <span className="note aside">{sayMoved(moved)}</span>}
      {isAhead && (
        <ClashNote
          times={callOf(call).planned}
          engagement={id}
          others={busy.filter((other) => other.id !== call.id)}
        />
      )}
    </>
  );
}

function sayMoved({ by, ...was }: EngagementWholeJson['moves'][number]): string {
  return say('wasBefore', { when: `${sayDay(was.start, 'weekday')}, ${saySpan(was)}`, who: by });
}
