// Calls as planned and as played, and the minutes of them that are charged.

export {
  CALL_KINDS,
  type Call,
  type CallKind,
  inOrder,
  PERFORMANCES,
  plannedMinutes,
  playedMinutes,
  principalCall,
  REASONS,
  type Reason,
  type Standing,
  timesOf,
  type Who,
} from './call.ts';
export { type Counted, chargedMinutes, countedMinutes, type Rounding } from './charged.ts';
