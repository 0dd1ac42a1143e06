import {
  addCall,
  agreeCall,
  cancelCall,
  changeCall,
  heard,
  liftBlock,
  missCall,
  playCall,
  releaseCall,
  reopenCall,
} from '@colla/engagements';
import { mayLift, mayPlay } from '@colla/invoicing';
import { refused } from '@colla/refusal';
import { readCall, readCallChange, readMoved, readSpan, readWord } from '@colla/wire';
import type { Handlers } from '../answer.ts';
import { blockNow } from '../block.ts';
import { move } from '../move.ts';

export const calls = {
  addCall: async (ask) =>
    move(ask, (engagement) => {
      const call = readCall(ask.body, ask.newId());
      return refused(call) ? call : addCall(engagement, call);
    }),

  changeCall: async (ask) =>
    move(ask, (engagement, { at }) => {
      const to = readCallChange(ask.body);
      if (refused(to)) return to;
      const { moved } = ask.body;
      const word = moved && heard(readMoved(moved), at);
      return refused(word) ? word.at('/moved') : changeCall(engagement, ask.params.call, to, word);
    }),

  releaseCall: async (ask) => move(ask, (engagement) => releaseCall(engagement, ask.params.call)),

  agreeCall: async (ask) => move(ask, (engagement, { at }) => agreeCall(engagement, ask.params.call, at)),

  playCall: async (ask) =>
    move(ask, async (engagement, beside) => {
      const { call } = ask.params;
      const times = readSpan(ask.body);
      if (refused(times)) return times;
      const may = mayPlay(await blockNow(engagement, beside, ask.books), call);
      return refused(may) ? may : playCall(engagement, call, times, beside.at);
    }),

  cancelCall: async (ask) =>
    move(ask, (engagement, { at }) => {
      const word = heard(readWord(ask.body), at);
      return refused(word) ? word : cancelCall(engagement, ask.params.call, word);
    }),

  missCall: async (ask) =>
    move(ask, (engagement, { at }) => missCall(engagement, ask.params.call, ask.body, at)),

  liftBlock: async (ask) =>
    move(ask, async (engagement, beside) => {
      const { call } = ask.params;
      const may = mayLift(await blockNow(engagement, beside, ask.books), call);
      if (refused(may)) return may;
      return liftBlock(engagement, call, { at: beside.at, reason: ask.body.reason });
    }),

  reopenCall: async (ask) => move(ask, (engagement) => reopenCall(engagement, ask.params.call)),
} satisfies Partial<Handlers>;
