import { refused } from '@colla/refusal';
import { readCost, readLeg } from '@colla/wire';
import type { Handlers } from '../answer.ts';
import { change } from '../move.ts';
import { found } from '../refusals.ts';

export const travel = {
  addLeg: async (ask) =>
    change(ask, (open) => {
      const leg = readLeg(ask.body, ask.newId());
      return refused(leg) ? leg : { ...open, legs: [...open.legs, leg] };
    }),

  removeLeg: async (ask) =>
    change(ask, (open) => {
      const leg = open.legs.find(({ id }) => id === ask.params.leg);
      found(leg, 'leg');
      return { ...open, legs: open.legs.filter((other) => other !== leg) };
    }),

  addCost: async (ask) =>
    change(ask, (open) => {
      const cost = readCost(ask.body, { id: ask.newId(), currency: open.currency });
      return refused(cost) ? cost : { ...open, costs: [...open.costs, cost] };
    }),

  removeCost: async (ask) =>
    change(ask, (open) => {
      const cost = open.costs.find(({ id }) => id === ask.params.cost);
      found(cost, 'cost');
      return { ...open, costs: open.costs.filter((other) => other !== cost) };
    }),
} satisfies Partial<Handlers>;
