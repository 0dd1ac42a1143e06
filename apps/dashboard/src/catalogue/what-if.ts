// What is said of an engagement as it might still turn out.
import { words } from './words.ts';

export const whatIf = words({
  title: 'What if?',
  under: 'Worked out by the clauses that were agreed. Nothing is changed by looking.',
  call: 'The call in question',
  what: 'What happens',
  total: 'Comes to',
  difference: 'Difference',
  stands: 'All goes as agreed',
  fallsNow: 'It is cancelled now',
  fallsTomorrow: 'It is cancelled tomorrow, {time}',
  fallsFriday: 'It is cancelled on {day}, {time}',
  longer: 'It lasts an hour longer',
  lateScores: 'The music comes a week late',
  curve: 'What cancelling everything costs, until the first call',
  curveFlat:
    'Until {day}, {time}, cancelling everything still ahead leaves {total} to pay, whenever word comes.',
  picture:
    'A line of steps: what cancelling everything leaves to pay, from {first} to {last}. The same is in the table below.',
  from: 'Word from',
  leaves: 'Leaves to pay',
  fromNow: 'now',
  when: '{day}, {time}',
});
