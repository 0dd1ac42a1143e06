// What the controls say by themselves.
import { words } from './words.ts';

export const ui = words({
  optional: 'optional',
  understood: 'Understood as {amount}',
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
