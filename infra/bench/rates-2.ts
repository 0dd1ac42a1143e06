// One statement of 5,000 calls, held against as many calls in 1,000 engagements of five: cost grows in line with
// the calls, and no faster.
import { type Facts, statement } from '@colla/rates';
import { alternately, type Row, timed } from '../measure.ts';
import { engagement, now } from './bare/dealt-engagements.ts';
import { tariff } from './bare/one-tariff.ts';

const CALLS = 5000;
const EACH = 5;
const terms = { tariff, locale: 'en-GB' };
const price = (facts: Facts) => statement(facts, terms, now);
let seed = 0;

const ours = () => {
  const large = { ...engagement(seed++, { calls: EACH }), calls: manyCalls() };
  return timed(() => price(large))();
};
const reference = () => {
  const many = Array.from({ length: CALLS / EACH }, () => engagement(seed++, { calls: EACH }));
  return timed(() => many.forEach(price))();
};

const row: Row = {
  id: 'rates-2',
  ours: 'one statement of 5,000 calls',
  reference: '5,000 calls in 1,000 engagements of 5',
  goal: { atMost: 1.5 },
  rounds: 11,
  prepare: async () => {
    for (let warm = 0; warm < 3; warm += 1) {
      await ours();
      await reference();
    }
  },
  run: alternately(ours, reference),
};

export default row;

/** The calls of 1,000 engagements, each under a name of its own. */
function manyCalls(): Facts['calls'] {
  return Array.from({ length: CALLS / EACH }, (_, number) =>
    engagement(seed++, { calls: EACH }).calls.map((call) => ({ ...call, id: `${number}-${call.id}` })),
  ).flat();
}
