// What stands around every screen.
import { words } from './words.ts';

export const shell = words({
  skip: 'Go to the page',
  navigation: 'Parts of the books',
  season: 'Season',
  engagements: 'Engagements',
  invoices: 'Invoices',
  tariffs: 'Tariffs',
  practice: 'Practice',
  books: 'the books',
  screen: 'the page',
  screenFailed: 'This page could not be loaded. Ask again; if it stays so, start the program again.',
  nowhere: 'Nothing here',
  nowhereWhy: 'No part of the books has this address.',
  toSeason: 'Go to the season',
  light: 'Light',
  dark: 'Dark',
  turnLight: 'Show the page light',
  turnDark: 'Show the page dark',
});
