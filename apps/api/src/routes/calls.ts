import {
  addCall,
  agreeCall,
  cancelCall,
  changeCall,
  missCall,
  playCall,
  releaseCall,
  reopenCall,
} from '@colla/engagements';
import { refused } from '@colla/refusal';
import { present, readCall, readSpan, readWord } from '@colla/wire';
import type { Handlers } from '../answer.ts';
import { move } from '../move.ts';

export const calls = {
  addCall: async (ask) =>
    move(ask, (engagement) => {
      const call = readCall(ask.body, ask.newId());
      return refused(call) ? call : addCall(engagement, call);
    }),

  changeCall: async (ask) =>
    move(ask, (engagement) => {
      const { planned, ...named } = ask.body;
      const times = planned && readSpan(planned);
      if (refused(times)) return times.at('/planned');
      return changeCall(engagement, ask.params.call, present({ ...named, planned: times }));
    }),

  releaseCall: async (ask) => move(ask, (engagement) => releaseCall(engagement, ask.params.call)),

  agreeCall: async (ask) => move(ask, (engagement, { at }) => agreeCall(engagement, ask.params.call, at)),

  playCall: async (ask) =>
    move(ask, (engagement, { at }) => {
      const times = readSpan(ask.body);
      return refused(times) ? times : playCall(engagement, ask.params.call, times, at);
    }),

  cancelCall: async (ask) =>
    move(ask, (engagement) => {
      const word = readWord(ask.body);
      return refused(word) ? word : cancelCall(engagement, ask.params.call, word);
    }),

  missCall: async (ask) =>
    move(ask, (engagement, { at }) => missCall(engagement, ask.params.call, ask.body, at)),

  reopenCall: async (ask) => move(ask, (engagement) => reopenCall(engagement, ask.params.call)),
} satisfies Partial<Handlers>;
