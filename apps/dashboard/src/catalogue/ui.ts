// What the controls say by themselves.
import { words } from './words.ts';

export const ui = words({
  optional: 'optional',
  understood: 'Understood as {amount}',
  rateOf: 'One {from} in {to}',
  rateHint: 'Your books are kept in {to}. Write the rate as it was published, such as 0.8567.',
  rateOn: 'Rate of',
  rateSource: 'Where the rate is from',
  close: 'Close',
  loading: 'Fetching {what}…',
  again: 'Try again',
  notKept: 'Nothing was kept yet. See the marked field.',
  more: 'Show more',
  table: 'Table: {caption}',
  pick: 'Choose…',
  giveDay: 'Give the day.',
  giveTime: 'Give the time of day.',
});
