// What if: each answer is the statement over the facts as they would be.

import { Temporal } from '@colla/calendar';
import { currency, toDecimal } from '@colla/money';
import { cancellationCurve, given, readTariff, statement, type WrittenClause } from '@colla/rates';
import { granted } from '@colla/refusal';
import { describe, expect, it } from 'vitest';
import { drawCurve } from './curve-drawing.ts';
import { callsAhead, casesOf, type Question } from './what-if.ts';
import { debtsOf, questionOf, startAsking } from './what-if-asked.ts';
import { caseWhy, differenceWhy, sayCase } from './what-if-whys.ts';

const pounds = granted(currency('GBP'));

function termsOf(...clauses: WrittenClause[]) {
  const tariff = readTariff({ name: 'Any', currency: 'GBP', version: 1, from: '2026-01-01', clauses });
  return { tariff: granted(tariff), locale: 'en-GB' };
}

const hours = { id: 'hours', kind: 'hourly', terms: { price: '40.00' } };
const notice = {
  id: 'notice',
  kind: 'cancellation',
  terms: {
    scale: [
      { before: 72, owes: { owes: 'nothing' } },
      { before: 24, owes: { owes: 'share', share: 5000 } },
    ],
    otherwise: { owes: 'all' },
  },
};

// Wednesday noon; the rehearsal is on Saturday at 13:00, the second a week later.
const now = Temporal.ZonedDateTime.from('2026-03-04T12:00[Europe/London]');
const facts = given(
  {
    calls: ['rehearsal 60 on 2026-03-07 at 13:00, agreed', 'rehearsal 60 on 2026-03-14 at 13:00, agreed'],
  },
  pounds,
);

/** Asked of the next call, by the payer; of nothing else but what is said. */
function casesFor(terms: ReturnType<typeof termsOf>, asked: Partial<Question> = {}, of = facts, at = now) {
  const [call] = callsAhead(of, at);
  if (!call) return [];
  const question: Question = {
    call,
    by: 'payer',
    reason: 'other',
    saidAt: undefined,
    movedTo: undefined,
    scoresLateDays: 0,
    paidLateDays: 0,
    debts: [],
    ...asked,
  };
  return casesOf(of, terms, question, at);
}

function answers(...asked: Parameters<typeof casesFor>) {
  return casesFor(...asked).map(({ name, total }) => [name, total]);
}

describe('two rehearsals of 40.00, of which the next begins in 73 hours', () => {
  it('the next costs nothing cancelled now, half tomorrow and on Friday at noon, and 40.00 more an hour longer', () => {
    // On Friday at 12:00, 25 hours before, it is still half.
    expect(answers(termsOf(hours, notice))).toEqual([
      ['stands', 8_000n],
      ['fallsNow', 4_000n],
      ['fallsTomorrow', 6_000n],
      ['fallsFriday', 6_000n],
      ['longer', 12_000n],
    ]);
  });

  it('on Thursday, tomorrow is Friday and is asked once', () => {
    const thursday = now.add({ days: 1 });
    expect(answers(termsOf(hours, notice), {}, facts, thursday).map(([name]) => name)).toEqual([
      'stands',
      'fallsNow',
      'fallsTomorrow',
      'longer',
    ]);
  });

  it('on a day of one’s choice the next costs what the terms say of that day', () => {
    // Word is free until Wednesday at 13:00, three days before; half an hour later it is half.
    const saidAt = Temporal.ZonedDateTime.from('2026-03-04T13:30[Europe/London]');
    expect(answers(termsOf(hours, notice), { saidAt })).toContainEqual(['fallsThen', 6_000n]);
    expect(answers(termsOf(hours, notice), { saidAt: now.subtract({ hours: 1 }) })).toHaveLength(5);
  });

  it('the pianist who cancels leaves nothing of it to pay', () => {
    expect(answers(termsOf(hours, notice), { by: 'pianist' })).toContainEqual(['fallsTomorrow', 4_000n]);
  });

  it('moved by the payer without enough notice, half of it is charged on top', () => {
    const change = { id: 'change', kind: 'change', terms: { free: 1, noticeHours: 96, after: [5000] } };
    const movedTo = Temporal.ZonedDateTime.from('2026-03-08T13:00[Europe/London]');
    // 73 hours before is not free: half of 40.00 more.
    expect(answers(termsOf(hours, change), { movedTo })).toContainEqual(['moved', 10_000n]);
    expect(answers(termsOf(hours, change), { movedTo, by: 'pianist' })).toContainEqual(['moved', 8_000n]);
  });

  it('what is played is not ahead', () => {
    expect(callsAhead(given({ calls: ['rehearsal 60 on 2026-03-07'] }, pounds), now)).toEqual([]);
  });
});

it('music a week late is asked where a clause wants it by a day, and costs what that clause says', () => {
  const late = {
    id: 'late',
    kind: 'late-score',
    terms: {
      steps: [
        { days: 28, means: { as: 'charge', amount: '25.00' } },
        { days: 14, means: { as: 'charge', amount: '50.00' } },
      ],
    },
  };
  const song = given({ calls: ['recital 60 on 2026-06-20, agreed'], works: ['Song'] }, pounds);
  // A week later than four weeks before is three weeks before: 40.00 + 25.00.
  expect(answers(termsOf(hours, late), { scoresLateDays: 7 }, song)).toContainEqual(['lateScores', 6_500n]);
  // Three weeks later than four weeks before is one week before: 40.00 + 50.00.
  expect(answers(termsOf(hours, late), { scoresLateDays: 21 }, song)).toContainEqual(['lateScores', 9_000n]);
});

describe('paid late', () => {
  const yearly = {
    id: 'late',
    kind: 'late-payment',
    terms: { by: { as: 'yearly rate', rate: 1000 } },
  };
  const debts = [{ amount: 8_000n, dueOn: Temporal.PlainDate.from('2026-03-31') }];

  it('80.00 costs a tenth a year by the day: 73 days are a fifth of a year, 1.60', () => {
    const asked = { debts, paidLateDays: 73 };
    expect(answers(termsOf(hours, yearly), asked)).toContainEqual(['latePaid', 8_160n]);
  });

  it('says as its why the statement, and what is charged on top', () => {
    const cases = casesFor(termsOf(hours, yearly), { debts, paidLateDays: 73 });
    const [stands, paid] = [cases[0], cases.at(-1)];
    if (!stands || !paid) throw new Error('nothing is answered');
    const whyOf = (of: typeof paid) =>
      caseWhy(
        of,
        (statement) => ({ what: 'Total', amount: toDecimal(statement.total, pounds), currency: 'GBP' }),
        () => 'As agreed.',
      );
    expect(sayCase(paid)).toBe('It is paid 73 days late');
    expect(whyOf(paid)).toMatchObject({ amount: '81.60', arithmetic: '80.00 + 1.60 = 81.60' });
    expect(whyOf(paid).parts?.[1]).toMatchObject({ sentence: 'As agreed.', facts: ['73 days counted'] });
    expect(differenceWhy(paid, stands, whyOf).arithmetic).toBe('81.60 \u2212 80.00 = 1.60');
  });

  it('is not asked where the terms say nothing of it', () => {
    const named = answers(termsOf(hours), { debts, paidLateDays: 73 }).map(([name]) => name);
    expect(named).not.toContain('latePaid');
  });

  it('is asked of the invoices that are open, and before there is one of all that is to be paid', () => {
    const [call] = callsAhead(facts, now);
    if (!call) throw new Error('nothing is ahead');
    const at = Temporal.PlainDate.from('2026-03-04');
    const under = { facts, statement: statement(facts, termsOf(hours), now) };
    // 30 days after an invoice of today, as is usual.
    expect(debtsOf({ invoices: [] }, under, at)).toEqual([
      { amount: 8_000n, dueOn: Temporal.PlainDate.from('2026-04-03') },
    ]);
    expect(questionOf(startAsking(call), call, []).paidLateDays).toBe(30);
    expect(questionOf({ ...startAsking(call), paidLate: 'soon' }, call, []).paidLateDays).toBe(0);
  });
});

it('the line of what cancelling both costs begins now, and rises where a limit of notice is passed', () => {
  const until = Temporal.ZonedDateTime.from('2026-03-07T13:00[Europe/London]');
  const curve = cancellationCurve(facts, termsOf(hours, notice), { from: now, until });
  const drawing = drawCurve(curve, until);
  // In time until Wednesday 13:00, then half, from Friday 13:00 all of the first; the second still costs nothing.
  expect(curve.map(({ total }) => total)).toEqual([0n, 2_000n, 4_000n]);
  // Steps 72 and 24 hours before the end: it would begin 96 hours before, but now is 73 hours before.
  expect(drawing?.begins.equals(now)).toBe(true);
  expect(drawing?.top).toBe(4_000n);
  expect(drawing?.steps.map(({ letter }) => letter)).toEqual(['A', 'B', 'C']);
  expect(drawing?.corners.map(([x, y]) => [Math.round(x * 73), y])).toEqual([
    [0, 0],
    [1, 0],
    [1, 0.5],
    [49, 0.5],
    [49, 1],
    [73, 1],
  ]);
});
