// An amount opens to its why, and the why can be taken along as text.

import { renderToStaticMarkup } from 'react-dom/server';
import { beforeEach, expect, test } from 'vitest';
import { speakIn } from '../locale.ts';
import { Amount } from './amount.tsx';
import { AmountLine, WhyView } from './amount-line.tsx';
import { aboutOnly, addedUp, sayFact, takenOff, type Why, whyText } from './why.ts';

beforeEach(() => speakIn('en-GB'));

const rehearsal: Why = {
  what: 'Rehearsal',
  amount: '75.00',
  currency: 'GBP',
  sentence: 'Rehearsals are 60.00 an hour, charged in quarter hours.',
  about: ['Rehearsal, Tue 3 Mar'],
  facts: ['played 70 min', 'charged 1.25 h'],
  arithmetic: '1.25 × 60.00 = 75.00',
};
const total: Why = {
  what: 'Total',
  amount: '65.00',
  currency: 'GBP',
  arithmetic: '75.00 \u2212 10.00 = 65.00',
  parts: [rehearsal, { what: 'Booked early', amount: '-10.00', currency: 'GBP' }],
};

test('why a total is what it is can be read to whoever doubts it', () => {
  expect(whyText(total)).toBe(
    [
      'Total: £65.00.',
      'Worked out: 75.00 \u2212 10.00 = 65.00.',
      'It is put together from:',
      '– Rehearsal: £75.00.',
      '  The terms say: “Rehearsals are 60.00 an hour, charged in quarter hours.”',
      '  It is for Rehearsal, Tue 3 Mar.',
      '  It goes by: played 70 min; charged 1.25 h.',
      '  Worked out: 1.25 × 60.00 = 75.00.',
      '– Booked early: \u2212£10.00.',
    ].join('\n'),
  );
});

test.each([
  [['75.00', '-10.00', '5.00'], '70.00', '75.00 \u2212 10.00 + 5.00 = 70.00'],
  [['-10.00', '75.00'], '65.00', '\u221210.00 + 75.00 = 65.00'],
  [['75.00'], '75.00', undefined],
  [Array.from({ length: 9 }, () => '10.00'), '90.00', 'these 9 amounts together = 90.00'],
])('%j are added up to %s in one row where that can be read', (amounts, amount, row) => {
  const parts = amounts.map((amount) => ({ amount }));
  expect(addedUp(parts, { amount, currency: 'GBP' })).toBe(row);
});

test('what is taken off has the other sign, and nought has none', () => {
  const signed = (amount: string) => takenOff({ ...total, amount }).amount;
  expect(['75.00', '-10.00', '0.00'].map(signed)).toEqual(['-75.00', '10.00', '0.00']);
});

test.each([
  ['Rehearsal', ['Rehearsal, Tue 3 Mar'], 'Tue 3 Mar'],
  ['Late score', ['Recital, Sat 7 Mar'], 'Recital, Sat 7 Mar'],
  ['Hours covered', ['Rehearsal, Tue 3 Mar', 'Recital, Sat 7 Mar'], undefined],
])('%s of %j is told apart by “%s”', (what, about, only) => {
  expect(aboutOnly({ what, about })).toBe(only);
});

test('a fact is said with its name, and what was judged as the sentence that it is', () => {
  expect(sayFact({ name: 'played', value: '70 min' })).toBe('played 70 min');
  expect(sayFact({ name: 'why', value: 'cancelled 30 h before the exam' })).toBe(
    'cancelled 30 h before the exam',
  );
});

test('a figure that opens says for the ear what it is the amount of', () => {
  const html = renderToStaticMarkup(<Amount why={total} />);
  expect(html).toContain('<span class="unseen">Total: </span><span class="figure">£65.00</span>');
});

test('what an amount opens to is its sentence, its facts and its arithmetic, and its parts open in turn', () => {
  const html = renderToStaticMarkup(<WhyView why={total} />);
  expect(html).toContain('<dt>Worked out</dt><dd>75.00 \u2212 10.00 = 65.00</dd>');
  expect(html.match(/<summary>/g)).toHaveLength(2);
  const line = renderToStaticMarkup(<WhyView why={rehearsal} />);
  expect(line).toContain('<blockquote>Rehearsals are 60.00 an hour, charged in quarter hours.</blockquote>');
  expect(line).toContain('<dd>played 70 min; charged 1.25\u00a0h</dd>');
});

test('a line that is shut shows what it is and its amount alone', () => {
  const html = renderToStaticMarkup(<AmountLine why={rehearsal} under="Tue 3 Mar" />);
  expect(html).toContain('Tue 3 Mar');
  expect(html).not.toContain('1.25 × 60.00');
});
