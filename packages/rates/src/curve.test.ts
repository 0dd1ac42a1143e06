// What cancelling costs against time: the steps of the chart, and that each is what a statement says.

import { Temporal } from '@colla/calendar';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { facts, instant } from '../dealt/facts.ts';
import { tariff } from '../dealt/settling.ts';
import { cancellationCurve, costAt } from './curve.ts';
import { given } from './given.ts';
import { POUNDS, pounds, tariffOf } from './priced.ts';
import { statement } from './statement.ts';

const at = (local: string) => Temporal.ZonedDateTime.from(`${local}[Europe/London]`);

describe('the curve of a rehearsal of 60.00, half of it under 48 hours and all of it under 24', () => {
  const tariff = tariffOf([
    { id: 'fee', kind: 'hourly', terms: { price: '60.00' } },
    {
      id: 'notice',
      kind: 'cancellation',
      terms: {
        scale: [
          { before: 48, owes: { owes: 'nothing' } },
          { before: 24, owes: { owes: 'share', share: 5000 } },
        ],
        otherwise: { owes: 'all' },
      },
    },
  ]);
  const rehearsal = given({ calls: ['rehearsal 60 on 2026-03-13 at 14:00, agreed'] }, POUNDS);
  const curve = cancellationCurve(
    rehearsal,
    { tariff, locale: 'en-GB' },
    { from: at('2026-03-09T12:00'), until: at('2026-03-13T18:00') },
  );

  it('rises where notice runs out: word at exactly the limit is still in time', () => {
    expect(curve.map(({ from, total }) => [from.toPlainDateTime().toString(), pounds(total)])).toEqual([
      ['2026-03-09T12:00:00', '0.00'],
      ['2026-03-11T14:00:00.001', '30.00'],
      ['2026-03-12T14:00:00.001', '60.00'],
    ]);
  });

  it('says of a step that word after the limit begins it, not word at the limit', () => {
    expect(curve.map(({ after }) => after)).toEqual([false, true, true]);
  });

  it('is read at any instant, and says nothing of what came before it', () => {
    expect(costAt(curve, at('2026-03-12T09:00'))).toBe(3000n);
    expect(costAt(curve, at('2026-03-08T09:00'))).toBeUndefined();
  });
});

it('a journey of 20 km at 0.50 costs from the first minute of its day: word before it, and nobody travels', () => {
  const tariff = tariffOf([
    { id: 'way', kind: 'travel', terms: { perUnit: '0.50' } },
    { id: 'notice', kind: 'cancellation', terms: { scale: [], otherwise: { owes: 'nothing' } } },
  ]);
  const curve = cancellationCurve(
    given({ calls: ['rehearsal 60 on 2026-03-13 at 14:00, agreed'], legs: ['20 km on 2026-03-13'] }, POUNDS),
    { tariff, locale: 'en-GB' },
    { from: at('2026-03-12T12:00'), until: at('2026-03-13T13:00') },
  );
  expect(curve.map(({ from, total }) => [from.toPlainDateTime().toString(), pounds(total)])).toEqual([
    ['2026-03-12T12:00:00', '0.00'],
    ['2026-03-13T00:00:00', '10.00'],
  ]);
});

describe('any curve', () => {
  it('says at any instant what a statement of that instant says', () => {
    fc.assert(
      fc.property(
        facts,
        tariff,
        fc.array(instant, { minLength: 1, maxLength: 5 }),
        (facts, tariff, instants) => {
          const agreed = { ...facts, offered: false };
          const terms = { tariff, locale: 'en-GB' };
          const [from, ...others] = instants.toSorted(Temporal.ZonedDateTime.compare);
          if (!from) return;
          const curve = cancellationCurve(agreed, terms, { from, until: others.at(-1) ?? from });
          for (const at of [from, ...others]) {
            const bill = statement(agreed, terms, at);
            expect(costAt(curve, at)).toBe(bill.ifCancelled?.total ?? bill.total);
          }
        },
      ),
      { numRuns: 60 },
    );
  });
});
