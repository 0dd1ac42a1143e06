// The season: its score, its hours, its money, and how one is named.
import { words } from './words.ts';

export const season = words({
  title: 'Season',
  what: 'the season',
  why: 'why it is so much',
  span: { one: '{from} to {to}, {count} week', other: '{from} to {to}, {count} weeks' },
  pick: 'Season',
  name: 'Name a season',
  inquiry: 'Enter an inquiry',
  print: 'Print the score',

  score: 'Score of the season',
  today: 'today',
  limit: 'limit {hours}',
  hours: 'hours',
  morning:
    'Each stave is an institution, or a soloist who has none; each head is a call at its day. The lowest line is 9 o’clock, the highest 21; an hour is as long as a day. A stem is a call with listeners.',
  stave: {
    one: '{name}: {count} call. Arrow keys move along it.',
    other: '{name}: {count} calls. Arrow keys move along them.',
  },
  hoursChart:
    'Hours in each week by standing, against the weekly limit of {limit}. The same figures are in the table below.',

  toInvoice: '{count} to invoice',
  overdue: '{count} overdue',
  owed: '{amount} owed',
  amountToInvoice: '{amount} to invoice',
  amountOverdue: '{amount} overdue',
  amountBeyond: '{amount} was invoiced beyond what is owed now',

  only: 'Show only',
  institution: 'Institution or soloist',
  kind: 'Kind of call',
  standing: 'Standing',
  all: 'All',
  nothingInView: 'No call of this season is of that kind.',
  showAll: 'Show all calls',

  played: 'played',
  agreed: 'agreed',
  held: 'held',
  cancelled: 'cancelled',
  missed: 'missed',

  sumHours: 'In this season {played} hours are played, {agreed} agreed and {held} held.',
  sumHoursShown: {
    one: '{count} call is shown: {played} hours are played, {agreed} agreed and {held} held.',
    other: '{count} calls are shown: {played} hours are played, {agreed} agreed and {held} held.',
  },
  sumToInvoice: '{amount} is still to invoice.',
  sumBeyond: '{amount} was invoiced beyond what is owed now.',
  sumOwed: '{amount} is owed, nothing of it overdue.',
  sumOverdue: '{amount} is owed, {overdue} of it overdue.',
  sumNothing: 'Nothing is owed.',

  owedTitle: 'What is owed',
  owedUnder:
    'By who pays. Beside a stave stands what is owed for its calls, whoever pays for them: both come to the same.',
  owedWho: 'From',
  owedBeyond: 'Invoiced beyond what is owed now',
  owedPart: '{payer}: {title}',
  owedByPayer: '{which}, {payer}',
  owedOnStave: 'Owed for the calls of {stave}',
  owedToInvoice: 'To invoice',
  owedOwed: 'Invoiced and owed',
  owedOverdue: 'Of it overdue',
  owedNone: 'Nobody owes anything for this season.',

  earnedTitle: 'What is earned',
  earnedUnder:
    'What work that is done comes to, invoiced or not, before tax is added: in the month of its last call.',
  earnedInAll: 'In all',
  earnedNone: 'Nothing is earned in this season yet.',
  sumEarned: '{amount} is earned so far.',
  toEngagement: 'See the engagement',

  hoursTitle: 'Hours of each week',
  week: 'Week of',
  total: 'All',
  against: 'Against {limit}',
  over: '{hours} over',
  free: '{hours} free',

  callsTitle: 'Every call',
  staveCalls: { one: '{name}, {count} call', other: '{name}, {count} calls' },
  call: 'Call',
  when: 'Day and time',
  where: 'Place',
  engagement: 'Engagement',
  lasts: 'Hours',

  unnamedTitle: 'No season has a name yet',
  unnamed: 'A season is a span of days by which work and money are summed: a term, a concert season, a year.',
  nameIt: 'Name it',
  seasonName: 'Name',
  seasonNameHint: 'As you would say it: Autumn 2026',
  from: 'First day',
  to: 'Last day',
  named: '{name} is named.',

  emptyTitle: 'No call falls in {name}',
  empty: 'Calls appear here as soon as an engagement has one between {from} and {to}.',
});
