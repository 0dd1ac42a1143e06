// Costs passed on: what was really paid for the engagement, whole or a share of it, with or without one for the trouble;
// a share of a sum that was told, such as a prize, likewise.

import { z } from 'zod';
import { amountField, shareField, wordsField } from '../fields.ts';
import { fitsEngagement } from '../fit.ts';
import { type ClauseHead, clauseKind, perCurrency } from '../kind.ts';
import { capital, sayConditions } from '../phrases.ts';
import type { Voice } from '../voice.ts';

const namesField = (title: string) =>
  z.array(z.string().trim().min(1).max(120)).min(1).max(40).readonly().optional().meta({ title });

const schema = perCurrency((currency) =>
  z.strictObject({
    what: wordsField('Called').default('Costs, such as scores, fares and room hire'),
    only: namesField('Only costs named'),
    except: namesField('All costs but those named'),
    share: shareField('Share that is passed on').default(10_000),
    most: amountField(currency, 'Of each at most').optional(),
    handling: shareField('A share on top for handling').default(0),
  }),
);
type Terms = z.output<ReturnType<typeof schema>>;

export const cost = clauseKind({
  kind: 'cost',
  title: 'Costs passed on',
  help: 'Passes on what was paid for the engagement: scores, fares, room hire.',
  schema,
  rivalry: () => undefined,
  once: true,
  beside: areApart,
  whole: true,
  sentence,
  contradictions: ({ only, except, share, handling }) => [
    ...(only && except ? ['Costs are named twice over: say which are passed on, or which are not.'] : []),
    ...(share < 10_000 && handling > 0
      ? ['A part is passed on, and a share comes on top of it: leave one of them out.']
      : []),
  ],
  phases: {
    travel: (terms, desk, clause) => {
      if (!fitsEngagement(clause.for, desk.facts)) return;
      for (const { id, on, what, amount } of desk.costs()) {
        if (!passesOn(terms, what)) continue;
        const share = terms.share + terms.handling;
        const most = terms.most !== undefined && amount > terms.most ? terms.most : undefined;
        desk.charge(clause, {
          category: 'cost',
          what,
          on,
          about: id,
          facts: [
            { name: 'paid', value: desk.voice.money(amount) },
            ...(most === undefined ? [] : [{ name: 'at most', value: desk.voice.money(most) }]),
          ],
          quantity: { count: share, of: 10_000 },
          unit: 'cost',
          rate: most ?? amount,
          ...(share === 10_000 ? {} : { said: desk.voice.share(share) }),
        });
      }
    },
  },
  examples: [
    { case: 'A score of 12.00 is passed on', terms: {}, given: { costs: ['Score 12.00'] }, owed: '12.00' },
    {
      case: 'Room hire of 30.00 with a tenth for handling',
      terms: { handling: 1000 },
      given: { costs: ['Room hire 30.00'] },
      owed: '33.00',
    },
    {
      case: 'Half of the room hire of 30.00 is passed on, and nothing of the fare',
      terms: { what: 'Room hire', only: ['Room hire'], share: 5000 },
      given: { costs: ['Room hire 30.00', 'Fare 12.00'] },
      owed: '15.00',
    },
    {
      case: 'A tenth of the prize of 2500.00 is the pianist’s',
      terms: { what: 'The prize', only: ['Prize'], share: 1000 },
      given: { costs: ['Prize 2500.00'] },
      owed: '250.00',
    },
    {
      case: 'Everything but the fare, each up to 90.00: a night of 120.00 and a score of 18.00',
      terms: { except: ['Fare'], most: '90.00' },
      given: { costs: ['Night 120.00', 'Score 18.00', 'Fare 40.00'] },
      owed: '108.00',
    },
  ],
});

function passesOn({ only, except }: Terms, what: string): boolean {
  return (only?.includes(what) ?? true) && !except?.includes(what);
}

/** Whether no cost is passed on by both. */
function areApart(one: Terms, other: Terms): boolean {
  return leavesOut(one, other) || leavesOut(other, one);
}

/** Whether the first passes on none of the costs that the second names. */
function leavesOut(one: Terms, { only }: Terms): boolean {
  return only?.every((what) => !passesOn(one, what)) ?? false;
}

function sentence(terms: Terms, { voice, for: selector }: { voice: Voice; for: ClauseHead['for'] }): string {
  const { only, except, share, most, handling } = terms;
  const which = only ? ` named ${sayNames(only, voice)}` : except ? ` except ${sayNames(except, voice)}` : '';
  const part = share === 10_000 ? 'passed on as paid' : `${voice.share(share)} is passed on`;
  const upTo = most === undefined ? '' : `, each up to ${voice.money(most)}`;
  const top = handling > 0 ? `, with ${voice.share(handling)} on top for handling` : '';
  return `${capital(terms.what)}${which}${sayConditions(selector, voice)}: ${part}${upTo}${top}.`;
}

function sayNames(names: readonly string[], voice: Voice): string {
  return voice.either(names.map((name) => `“${name}”`));
}
