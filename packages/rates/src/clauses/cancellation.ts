// What is owed for a call that falls: by a scale of notice, with what is forgiven, on the clock of the place.

import { z } from 'zod';
import { type ClauseHead, clauseKind, perCurrency } from '../kind.ts';
import { oneOf, sayConditions } from '../phrases.ts';
import type { Voice } from '../voice.ts';
import { excuseSchema, sayExcuse } from './excuse.ts';
import { leave } from './fallen.ts';
import { judge } from './judge.ts';
import { keepDeposit } from './kept-deposit.ts';
import { deadlines, owedEver, sayBoundary, sayScale, scaleContradictions, scaleFields } from './scale.ts';

const schema = perCurrency((currency) =>
  z.strictObject({
    ...scaleFields(currency),
    of: z.enum(['call', 'engagement']).default('call').meta({ title: 'Reckoned for' }),
    excused: excuseSchema.optional().meta({ title: 'Forgiven' }),
    keepsDeposit: z
      .boolean()
      .default(false)
      .meta({ title: 'Where everything falls, at least the deposit is kept' }),
  }),
);
type Terms = z.output<ReturnType<typeof schema>>;

export const cancellation = clauseKind({
  kind: 'cancellation',
  title: 'Cancellation',
  help: 'Says what is owed when a call falls, by how much notice was given; the pianist’s own absence costs the payer nothing.',
  schema,
  rivalry: () => 'fall',
  /** The deposit is kept once every other clause has said what is left, and every limit. */
  rank: () => 100,
  sentence,
  contradictions: scaleContradictions,
  needs: (terms) =>
    terms.keepsDeposit || owedEver(terms).some(({ owes }) => owes === 'deposit') ? ['deposit'] : [],
  turns: deadlines,
  phases: {
    standing: judge,
    cancellation: (_, desk, clause) => leave(desk, clause),
    limits: ({ keepsDeposit }, desk, clause) => {
      if (keepsDeposit) keepDeposit(desk, clause);
    },
  },
  examples: [
    {
      case: 'An exam of 80.00 cancelled 30 hours before leaves half: under 48 hours, not under 24',
      terms: {
        scale: [
          { before: 48, owes: { owes: 'nothing' } },
          { before: 24, owes: { owes: 'share', share: 5000 } },
          { before: 0, owes: { owes: 'share', share: 7500 } },
        ],
        otherwise: { owes: 'all' },
      },
      given: {
        calls: ['exam 30 on 2026-06-13 at 15:00'],
        fallen: [{ call: 0, at: '2026-06-12T09:00' }],
      },
      with: [{ id: 'fee', kind: 'fixed', for: {}, terms: { price: '80.00' } }],
      owed: '40.00',
    },
    {
      case: 'Word at 21:15 is too late where the terms say by 20:00 on the day before',
      terms: {
        clock: 'clock',
        scale: [{ before: 1, time: '20:00', owes: { owes: 'nothing' } }],
        otherwise: { owes: 'all' },
      },
      given: {
        calls: ['rehearsal 30 on 2026-03-04 at 14:00'],
        fallen: [{ call: 0, at: '2026-03-03T21:15' }],
      },
      with: [{ id: 'fee', kind: 'hourly', for: {}, terms: { price: '40.00' } }],
      owed: '20.00',
    },
    {
      case: 'One emergency is forgiven, though it takes two calls of one day; the next is charged',
      terms: {
        scale: [{ before: 24, owes: { owes: 'nothing' } }],
        otherwise: { owes: 'all' },
        excused: { reasons: ['emergency'], atMost: 1 },
      },
      given: {
        calls: [
          'lesson 60 on 2026-03-04 at 10:00',
          'rehearsal 60 on 2026-03-04 at 15:00',
          'lesson 60 on 2026-03-11 at 10:00',
        ],
        fallen: [
          { call: 0, at: '2026-03-04T08:00', reason: 'emergency' },
          { call: 1, at: '2026-03-04T08:00', reason: 'emergency' },
          { call: 2, at: '2026-03-11T08:00', reason: 'emergency' },
        ],
      },
      with: [{ id: 'fee', kind: 'hourly', for: {}, terms: { price: '40.00' } }],
      owed: '40.00',
    },
    {
      case: 'Half of a package is left where all its calls fall by one word',
      terms: { scale: [], otherwise: { owes: 'share', share: 5000 } },
      given: {
        calls: ['dress rehearsal 60', 'recital 60'],
        fallen: [
          { call: 0, at: '2026-03-01T08:00' },
          { call: 1, at: '2026-03-01T08:00' },
        ],
      },
      with: [
        {
          id: 'pack',
          kind: 'package',
          for: {},
          terms: { price: '150.00', what: 'Recital package', includes: [{ of: {} }] },
        },
      ],
      owed: '75.00',
    },
    {
      case: 'Everything falls in time, and the deposit of a quarter of 200.00 is kept all the same',
      terms: {
        scale: [{ before: 24, owes: { owes: 'nothing' } }],
        otherwise: { owes: 'all' },
        keepsDeposit: true,
      },
      given: { calls: ['recital 60 on 2026-06-20'], fallen: [{ call: 0, at: '2026-06-05T12:00' }] },
      with: [
        { id: 'fee', kind: 'fixed', for: {}, terms: { price: '200.00' } },
        {
          id: 'deposit',
          kind: 'deposit',
          for: {},
          terms: { of: { as: 'share', share: 2500 }, due: [{ event: 'agreement', days: 3 }] },
        },
      ],
      owed: '50.00',
    },
    {
      case: 'One emergency is forgiven each term: the second of the fall is charged, the first of the spring is not',
      terms: {
        scale: [],
        otherwise: { owes: 'all' },
        excused: { reasons: ['emergency'], atMost: 1, each: 'term' },
      },
      given: {
        terms: ['fall 2026-08-24 to 2026-12-11', 'spring 2027-01-11 to 2027-05-07'],
        calls: ['lesson 60 on 2026-09-02', 'lesson 60 on 2026-10-07', 'lesson 60 on 2027-02-03'],
        fallen: [
          { call: 0, at: '2026-09-02T08:00', reason: 'emergency' },
          { call: 1, at: '2026-10-07T08:00', reason: 'emergency' },
          { call: 2, at: '2027-02-03T08:00', reason: 'emergency' },
        ],
      },
      with: [{ id: 'fee', kind: 'hourly', for: {}, terms: { price: '40.00' } }],
      owed: '40.00',
    },
    {
      case: 'The deposit is kept once, however many calls fall',
      terms: { clock: 'days', scale: [{ before: 7, owes: { owes: 'deposit' } }], otherwise: { owes: 'all' } },
      given: {
        calls: ['rehearsal 60 on 2026-06-19', 'recital 60 on 2026-06-20'],
        fallen: [
          { call: 0, at: '2026-06-05T12:00' },
          { call: 1, at: '2026-06-05T12:00' },
        ],
      },
      with: [
        { id: 'fee', kind: 'fixed', for: {}, terms: { price: '200.00' } },
        {
          id: 'deposit',
          kind: 'deposit',
          for: {},
          terms: { of: { as: 'share', share: 2500 }, due: [{ event: 'agreement', days: 3 }] },
        },
      ],
      owed: '100.00',
    },
  ],
});

function sentence(terms: Terms, said: { voice: Voice; for: ClauseHead['for'] }): string {
  const { voice } = said;
  const whole = terms.of === 'engagement';
  const of = whole ? 'the engagement' : oneOf(said.for.calls ?? ['call'], voice);
  const scale = sayScale(terms, voice, whole ? 'the principal call' : undefined);
  const conditions = sayConditions({ ...said.for, calls: undefined }, voice);
  return `Cancelling ${of}${conditions} costs ${scale}.${sayBoundary(terms)}${sayExcuse(terms.excused, voice)}${terms.keepsDeposit ? ' Where everything falls, at least the deposit is kept.' : ''} What the pianist cancels costs nothing.`;
}
