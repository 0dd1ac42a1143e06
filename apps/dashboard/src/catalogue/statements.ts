// What a statement says of itself.
import { words } from './words.ts';

export const statements = words({
  payer: '{name} pays',
  nothing: 'Nothing is owed.',
  facts: 'From',
  arithmetic: 'Worked out',
  calls: 'For',
  net: 'Before tax',
  inside: '{name} inside the prices',
  added: '{name}',
  taxWhy: 'On {base}',
  total: 'Total',
  unpriced: {
    one: 'No clause of the tariff puts a price on {calls}. Add a clause that fits it.',
    other: 'No clause of the tariff puts a price on {calls}. Add a clause that fits them.',
  },
  uncharged_journeys: {
    one: 'Nothing is charged for the journey. Should it be, the tariff needs a clause for travel that fits it.',
    other:
      'Nothing is charged for the {count} journeys. Should they be, the tariff needs a clause for travel that fits them.',
  },
  uncharged_costs: {
    one: 'Nothing is charged for the cost. Should it be, the tariff needs a clause for costs passed on.',
    other:
      'Nothing is charged for the {count} costs. Should they be, the tariff needs a clause for costs passed on.',
  },
  deposit: 'Deposit asked for before the work',
  depositWas: 'Deposit, as agreed',
  depositDue: 'due {day}',
  depositOf: 'Of',
  depositBase: 'the fee as agreed, before tax is added',
  payment: 'When it is due',
  gate: 'What is not paid by then is not played.',
  covered: 'Hours covered',
  granted: 'Covered',
  used: 'Used',
  left: 'Left',
  draws: 'Drawn by',
  fallen: 'Calls that fell',
  owes: 'Leaves to pay: {owes}',
  owesAll: 'all of it',
  owesNothing: 'nothing',
  owesShare: 'a share',
  owesAmount: 'a sum',
  owesDeposit: 'the deposit',
  ifCancelled: 'Cancelling everything still ahead now would leave',
});
