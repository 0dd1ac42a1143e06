// Statements with every explanation, held against straight-line bigint code that finds the same sums. Each
// round takes engagements that nobody has looked at yet: nothing is known of a call before it is asked.
import { type Facts, type Statement, statement } from '@colla/rates';
import { alternately, type Row, timed } from '../measure.ts';
import { engagement, now } from './bare/dealt-engagements.ts';
import { type Sums, straightSums, tariff } from './bare/one-tariff.ts';

const ENGAGEMENTS = 100_000;
const ROUNDS = 5;
const AT_A_TIME = 1000;
const terms = { tariff, locale: 'en-GB' };
let seed = 0;

const row: Row = {
  id: 'rates-1',
  ours: `${ENGAGEMENTS / ROUNDS} statements of 6 calls under 12 clauses, explained (five rounds: 100,000)`,
  reference: 'the same sums by straight-line bigint code',
  goal: { atMost: 8 },
  rounds: ROUNDS,
  prepare: async () => {
    for (const facts of dealt(3000)) mustAgree(statement(facts, terms, now), straightSums(facts, now));
  },
  run: alternately(
    () => over((facts) => statement(facts, terms, now)),
    () => over((facts) => straightSums(facts, now)),
  ),
};

export default row;

function dealt(count: number): Facts[] {
  return Array.from({ length: count }, () => engagement(seed++, { calls: 6 }));
}

/** The time for one round's engagements, a thousand at a time: what is not looked at any more can be let go. */
async function over(work: (facts: Facts) => unknown): Promise<number> {
  let spent = 0;
  for (let done = 0; done < ENGAGEMENTS / ROUNDS; done += AT_A_TIME) {
    const some = dealt(AT_A_TIME);
    spent += await timed(() => some.forEach(work))();
  }
  return spent;
}

function mustAgree(bill: Statement, sums: Sums): void {
  const of = (payer: string) => bill.payers.find((sum) => sum.payer === payer)?.total ?? 0n;
  const said = [of('payer'), of('department'), bill.total, bill.deposit?.amount, bill.ifCancelled?.total];
  const found = [sums.payer, sums.department, sums.total, sums.deposit, sums.ifCancelled];
  if (said.some((amount, index) => amount !== found[index]))
    throw new Error(`a statement says ${said.join(', ')}, straight-line code ${found.join(', ')}`);
}
