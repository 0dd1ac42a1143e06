// The curve of what cancelling costs: 200 instants on one engagement, held against one statement of it.
import { type CurveStep, cancellationCurve, costAt, type Facts, statement } from '@colla/rates';
import { alternately, type Row, timed } from '../measure.ts';
import { engagement, now } from './bare/dealt-engagements.ts';
import { tariff } from './bare/one-tariff.ts';

const INSTANTS = 200;
const AT_A_TIME = 100;
const terms = { tariff, locale: 'en-GB' };
const instants = Array.from({ length: INSTANTS }, (_, index) => now.add({ hours: index }));
const until = instants.at(-1) ?? now;
let number = 0;

const row: Row = {
  id: 'rates-3',
  ours: 'the cost of cancelling at 200 instants of one engagement',
  reference: 'one statement of it',
  goal: { atMost: 40 },
  rounds: 9,
  prepare: async () => {
    for (const facts of dealt()) mustAgree(facts, costs(facts));
  },
  run: alternately(
    () => over(costs),
    () => over((facts) => statement(facts, terms, now)),
  ),
};

export default row;

/** Engagements whose calls are all still to come, so that the curve has every step it can have. */
function dealt(): Facts[] {
  return Array.from({ length: AT_A_TIME }, () => {
    number += 1;
    const facts = engagement(number * 29 + 28, { calls: 6 });
    return { ...facts, calls: facts.calls.map((call) => ({ ...call, standing: { is: 'agreed' } })) };
  });
}

function over(work: (facts: Facts) => unknown): Promise<number> {
  const some = dealt();
  return timed(() => some.forEach(work))();
}

function costs(facts: Facts): (bigint | undefined)[] {
  const curve: CurveStep[] = cancellationCurve(facts, terms, { from: now, until });
  return instants.map((at) => costAt(curve, at));
}

function mustAgree(facts: Facts, found: readonly (bigint | undefined)[]): void {
  for (const [index, at] of instants.entries()) {
    const bill = statement(facts, terms, at);
    if (found[index] !== (bill.ifCancelled?.total ?? bill.total))
      throw new Error(`the curve says ${found[index]} at ${at}, the statement ${bill.ifCancelled?.total}`);
  }
}
