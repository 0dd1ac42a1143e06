// What a statement says of itself.
import { words } from './words.ts';

export const statements = words({
  lines: 'What it comes to',
  payer: '{name} pays',
  nothing: 'Nothing is owed.',
  clause: 'Clause',
  facts: 'From',
  arithmetic: 'Worked out',
  calls: 'For',
  net: 'Before tax',
  inside: '{name} inside the prices',
  added: '{name}',
  taxWhy: 'On {base}',
  total: 'Total',
  unpriced: {
    one: 'No clause of the tariff puts a price on {calls}. Add a clause to the tariff that fits it, and quote again.',
    other:
      'No clause of the tariff puts a price on {calls}. Add a clause to the tariff that fits them, and quote again.',
  },
  deposit: 'Deposit asked for before the work',
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
  tariff: 'Under “{name}”, version {version}.',
});
