// Calls as planned and as played, and the minutes of them that are charged.

export {
  type Call,
  inOrder,
  type Lifted,
  plannedMinutes,
  playedMinutes,
  principalCall,
  REASONS,
  type Reason,
  type Standing,
  timesOf,
  type Who,
  waitedMinutes,
} from './call.ts';
export { type Counted, chargedMinutes, countedMinutes, type Rounding } from './charged.ts';
export { CALL_KINDS, type CallKind, PERFORMANCES } from './kinds.ts';
