// Travel: by distance, by time under way, or a sum once the way is long enough.

import { DISTANCE_UNITS, distanceText, inUnit, type Leg } from '@colla/travel';
import { z } from 'zod';
import type { Desk } from '../desk.ts';
import { amountField, countField } from '../fields.ts';
import { fitsEngagement } from '../fit.ts';
import { type ClauseHead, clauseKind, perCurrency } from '../kind.ts';
import { sayConditions } from '../phrases.ts';
import type { Voice } from '../voice.ts';

const schema = perCurrency((currency) =>
  z.strictObject({
    unit: z.enum(DISTANCE_UNITS).default('km').meta({ title: 'Distances in' }),
    perUnit: amountField(currency, 'For each unit of distance').optional(),
    perHour: amountField(currency, 'For each hour under way').optional(),
    /** Paid once for each journey longer than `over`. */
    flat: amountField(currency, 'A sum for each journey').optional(),
    over: countField('Only beyond this distance of each journey').default(0),
  }),
);
type Terms = z.output<ReturnType<typeof schema>>;

export const travel = clauseKind({
  kind: 'travel',
  title: 'Travel',
  help: 'Charges journeys by distance, by time under way, or by a sum, from a distance that is free.',
  schema,
  rivalry: () => undefined,
  whole: true,
  sentence,
  contradictions: ({ perUnit, perHour, flat }) =>
    perUnit === undefined && perHour === undefined && flat === undefined
      ? ['Travel is charged by nothing: give a price for distance, for time, or a sum.']
      : [],
  phases: {
    travel: (terms, desk, clause) => {
      if (!fitsEngagement(clause.for, desk.facts)) return;
      for (const leg of desk.legs()) chargeLeg(leg, terms, desk, clause);
    },
  },
  examples: [
    {
      case: 'Forty kilometres at 0.35 each',
      terms: { perUnit: '0.35' },
      given: { legs: ['40 km'] },
      owed: '14.00',
    },
    {
      case: 'Only what lies beyond 20 miles is paid, and an hour and a half under way at 20.00 an hour',
      terms: { unit: 'mile', perUnit: '0.50', over: 20, perHour: '20.00' },
      given: { legs: ['32 mile, 90 min'] },
      owed: '36.00',
    },
  ],
});

function chargeLeg(leg: Leg, terms: Terms, desk: Desk, clause: ClauseHead): void {
  const far = inUnit(leg.distance, terms.unit);
  const paid = Math.max(0, far.thousandths - terms.over * 1000);
  const head = {
    category: 'travel' as const,
    what: named('Travel', leg),
    on: leg.on,
    facts: [{ name: 'distance', value: `${desk.voice.number(distanceText(far))} ${terms.unit}` }],
  };
  if (terms.perUnit !== undefined && paid > 0) {
    const quantity = { count: paid, of: 1000 };
    desk.charge(clause, { ...head, about: `${leg.id}:far`, quantity, unit: terms.unit, rate: terms.perUnit });
  }
  if (terms.flat !== undefined && paid > 0) {
    desk.charge(clause, {
      ...head,
      about: `${leg.id}:flat`,
      quantity: { count: 1, of: 1 },
      unit: 'journey',
      rate: terms.flat,
    });
  }
  if (terms.perHour !== undefined && leg.minutes > 0) {
    const quantity = { count: leg.minutes, of: 60 };
    desk.charge(clause, {
      ...head,
      what: named('Time under way', leg),
      about: `${leg.id}:time`,
      quantity,
      unit: 'hour',
      rate: terms.perHour,
    });
  }
}

/** A journey by its places; one made up for an example has none. */
function named(what: string, { from, to }: Leg): string {
  return from === '' || to === '' ? what : `${what}, ${from} to ${to}`;
}

function sentence(terms: Terms, said: { voice: Voice; for: ClauseHead['for'] }): string {
  const { voice } = said;
  const far = `${terms.over} ${terms.unit === 'km' ? 'km' : 'miles'}`;
  // Said for each journey: the way there and the way back are two, and each has its own free distance.
  const beyond = terms.over > 0 ? ` beyond ${far} of each journey` : '';
  const longer = terms.over > 0 ? ` longer than ${far}` : '';
  const parts = [
    terms.perUnit === undefined ? undefined : `${voice.money(terms.perUnit)} a ${terms.unit}${beyond}`,
    terms.flat === undefined ? undefined : `${voice.money(terms.flat)} for each journey${longer}`,
    terms.perHour === undefined ? undefined : `${voice.money(terms.perHour)} an hour under way`,
  ];
  return `Travel${sayConditions(said.for, voice)} is ${voice.list(parts.filter((part) => part !== undefined))}.`;
}
