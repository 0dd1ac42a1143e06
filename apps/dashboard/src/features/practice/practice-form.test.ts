import type { OrganisationJson } from '@colla/wire';
import { describe, expect, test } from 'vitest';
import { limitWrong, localeWrong, practiceChange, practiceForm } from './practice-form.ts';

const wren: OrganisationJson = {
  id: '0198b1c2-0000-7000-8000-000000000001',
  name: 'Wren Halloway, piano',
  address: ['3 Mill Lane', 'Aldbury'],
  payTo: ['Halloway, 01632 960123'],
  currency: 'EUR',
  zone: 'Europe/London',
  locale: 'en-GB',
  paper: 'A4',
  weeklyLimit: 1350,
  holidays: ['2026-12-25'],
  terms: [{ name: 'Autumn', from: '2026-09-14', to: '2026-12-11' }],
};
const form = practiceForm(wren);

test('a practice that is read and kept again is the same practice', () => {
  expect(practiceChange(form)).toEqual({ ...wren, id: undefined, email: '', taxNumber: '' });
});

test('an address is typed as lines, and empty ones are left out', () => {
  expect(practiceChange({ ...form, address: '3 Mill Lane\n\n Aldbury \n' }).address).toEqual([
    '3 Mill Lane',
    'Aldbury',
  ]);
});

describe('a weekly limit', () => {
  test.each([
    ['25', 1500],
    ['22.5', 1350],
    ['22,5', 1350],
    ['0', 0],
    ['168', 10_080],
  ])('typed as %s is kept as %i minutes', (limit, minutes) => {
    expect(practiceChange({ ...form, limit }).weeklyLimit).toBe(minutes);
  });

  test.each(['', 'many', '-3', '168.5', '200'])('typed as “%s” is refused', (limit) => {
    expect(limitWrong({ ...form, limit })).toContain('is not a number of hours');
  });
});

test('a language that is none is refused before it is sent', () => {
  expect([localeWrong({ ...form, locale: 'de-AT' }), localeWrong({ ...form, locale: 'my own' })]).toEqual([
    undefined,
    '“my own” is not a language with its region. Write it such as en-GB.',
  ]);
});
