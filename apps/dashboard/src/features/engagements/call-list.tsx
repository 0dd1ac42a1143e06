// The calls of an engagement as they follow one another, each with how it stands and what can be said of it.
import type { CallJson, EngagementWholeJson } from '@colla/wire';
import { useEffect, useMemo, useRef } from 'react';
import { engagements as say } from '../../catalogue/engagements.ts';
import { sayDay } from '../../locale.ts';
import { Button } from '../../ui/index.ts';
import { isBlocked } from './blocked.ts';
import { CallNotes } from './call-notes.tsx';
import { type Busy, busyWith } from './clash.ts';
import './engagement.css';
import type { CallMove } from './moves.ts';
import { callName, callWord, sayStanding, timesOf } from './names.ts';

export interface CallWithMoves {
  readonly call: CallJson;
  readonly moves: readonly CallMove[];
  /** True once it has begun: the likeliest thing to say is then in sight. */
  readonly begun: boolean;
}

interface CallListProps {
  engagement: EngagementWholeJson;
  calls: readonly CallWithMoves[];
  /** The call somebody came here for. */
  sought?: string | undefined;
  onMove: (call: CallJson, move: CallMove | 'more') => void;
}

export function CallList({ engagement, calls, sought, onMove }: CallListProps) {
  const busy = useMemo(() => busyWith(engagement.calls), [engagement]);
  if (calls.length === 0) return <p className="aside">{say('noCalls')}</p>;
  return (
    <ol className="call-list">
      {calls.map((of) => (
        <CallItem
          key={of.call.id}
          engagement={engagement}
          of={of}
          busy={busy}
          isSought={of.call.id === sought}
          onMove={onMove}
        />
      ))}
    </ol>
  );
}

interface CallItemProps {
  engagement: EngagementWholeJson;
  of: CallWithMoves;
  busy: readonly Busy[];
  isSought: boolean;
  onMove: CallListProps['onMove'];
}

function CallItem({ engagement, of: { call, moves, begun }, busy, isSought, onMove }: CallItemProps) {
  const item = useRef<HTMLLIElement>(null);
  useEffect(() => {
    if (isSought) item.current?.scrollIntoView({ block: 'center' });
  }, [isSought]);
  const name = callName(call);
  const likeliest = begun || call.standing.is === 'held' ? moves.find(isLikely) : undefined;
  return (
    <li ref={item} aria-current={isSought || undefined}>
      <span
        className={`call-mark ${call.standing.is}${isBlocked(engagement, call) ? ' blocked' : ''}`}
        aria-hidden="true"
      />
      <span className="when">
        <strong>{sayDay(call.start, 'weekday')}</strong> <Times call={call} />
      </span>
      <span className="what">
        {callWord(call)}
        {call.place && <span className="aside">, {call.place}</span>}
        <span className="aside standing">{sayStanding(call)}</span>
        <CallNotes engagement={engagement} call={call} begun={begun} busy={busy} />
      </span>
      <span className="buttons">
        {likeliest && (
          <Button label={`${say(likeliest)}: ${name}`} onPress={() => onMove(call, likeliest)}>
            {say(likeliest)}
          </Button>
        )}
        {moves.some((move) => move !== likeliest) && (
          <Button kind="quiet" label={say('moreFor', { call: name })} onPress={() => onMove(call, 'more')}>
            {say('more')}
          </Button>
        )}
      </span>
    </li>
  );

  function isLikely(move: CallMove): boolean {
    return (move === 'play' && call.standing.is === 'agreed') || move === 'lift' || move === 'agree';
  }
}

/** A span of times is never parted at the end of a line. */
function Times({ call }: { call: CallJson }) {
  const { taken, planned } = timesOf(call);
  return (
    <>
      <span className="span">{taken}</span>
      {planned !== undefined && (
        <>
          {' '}
          <span className="span">({say('plannedTimes', { times: planned })})</span>
        </>
      )}
    </>
  );
}
