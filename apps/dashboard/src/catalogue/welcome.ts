// The first screen of an empty book.
import { words } from './words.ts';

export const welcome = words({
  title: 'An empty book',
  under: 'Three things to do with it, in any order.',
  inquiry: 'Answer somebody who asks',
  inquiryWhy:
    'Enter who asks, for what and when. Quote by your tariff and see what it comes to, line by line, before they say yes.',
  inquiryDo: 'Enter an inquiry',
  tariff: 'Write down what you charge',
  tariffWhy:
    'Your rates and your terms as sentences that a client can read, with an example priced beside them as you write.',
  tariffDo: 'Write a tariff',
  season: 'See a season and what is owed',
  seasonWhy:
    'Name a span of weeks. Every call appears on its stave, with the hours of each week and the money still to come.',
  seasonDo: 'Name a season',
  example: 'Or look round first, in the invented season of an invented pianist.',
  exampleDo: 'Open a worked example season',
  exampleOpened: 'The example is open. Nothing in it is real.',
});
