import { expect, test } from 'vitest';
import { payableCurrencies } from './payable.ts';

test('a practice is paid in money, not in the funds and units of account that ISO 4217 lists beside it', () => {
  const offered = payableCurrencies();
  for (const code of ['BOV', 'CHE', 'CHW', 'CLF', 'COU', 'MXV', 'USN', 'UYI', 'UYW', 'XXX', 'XAU', 'XDR']) {
    expect(offered).not.toContain(code);
  }
});

test('money that several countries share is offered with that of one', () => {
  expect(payableCurrencies()).toEqual(expect.arrayContaining(['EUR', 'XAF', 'XCD', 'XOF', 'XPF', 'CHF']));
});
