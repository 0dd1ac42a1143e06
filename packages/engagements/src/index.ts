// Someone asks a pianist to play: inquiry → quoted → agreed → played → settled.

export { agree } from './agree.ts';
export {
  addCall,
  agreeCall,
  cancelCall,
  liftBlock,
  missCall,
  playCall,
  releaseCall,
  reopenCall,
} from './calls.ts';
export {
  type Agreed,
  type Agreement,
  allowed,
  type Cancelled,
  type Closed,
  cancel,
  decline,
  type Engagement,
  type EngagementFacts,
  hasAgreement,
  type Inquiry,
  lapse,
  type Quote,
  type Quoted,
  quote,
  type Settled,
  STAGES,
  type Stage,
  settle,
} from './engagement.ts';
export { type CallChange, changeCall } from './moving.ts';
export type { Organisation, Party } from './party.ts';
export {
  cameBy,
  PART_STATES,
  type Part,
  type PartState,
  PERMISSIONS,
  type Permission,
  partsWanted,
  programmeMinutes,
  type Work,
} from './programme.ts';
export { factsOf, type House, statementOf, statementOffered, statementUnder, termsOf } from './statement.ts';
export { termsApart } from './terms.ts';
export { heard } from './word.ts';
