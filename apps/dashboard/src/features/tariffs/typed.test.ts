// A clause's form reads what people type, and says what is wrong where it stands.

import { currency } from '@colla/money';
import { KINDS, menu } from '@colla/rates';
import { granted } from '@colla/refusal';
import { describe, expect, it } from 'vitest';
import { selectorParameters, termsParameters } from './clause-parameters.ts';
import { typeFields } from './shown.ts';
import { writeFields } from './typed.ts';

const british = { currency: granted(currency('GBP')), locale: 'en-GB' };
const german = { currency: granted(currency('EUR')), locale: 'de-DE' };

describe('the form of a clause', () => {
  it.each(KINDS)('shows every example of “%s” and gives back what it read', (kind) => {
    for (const { terms } of menu[kind].examples) {
      const parts = termsParameters(kind, british);
      const { value, slips } = writeFields(parts, typeFields(parts, terms, british), '/terms', british);
      const schema = menu[kind].schema(british.currency);
      expect(slips).toEqual([]);
      expect(schema.parse(value)).toEqual(schema.parse(terms));
    }
  });

  it('offers an hour and quarter hours where a rate for time says nothing of them', () => {
    expect(typeFields(termsParameters('hourly', british), { price: '60' }, british)).toMatchObject({
      price: '60.00',
      per: '60',
      minimum: '0',
      increment: '15',
      round: 'up',
      grace: '0',
      time: 'played',
      band: undefined,
    });
  });

  it.each([
    ['45', '45.00'],
    ['45,5', '45.50'],
    ['1.234', '1234.00'],
    ['1.234,50', '1234.50'],
  ])('takes %s as a German types it for %s', (typed, price) => {
    expect(hourly({ price: typed }, german).value.price).toBe(price);
  });

  it.each([
    ['75', 75],
    ['1:15', 75],
    ['1.25 h', 75],
    ['90 min', 90],
  ])('takes a minimum of %s as %i minutes', (typed, minutes) => {
    expect(hourly({ price: '60', minimum: typed }, british).value.minimum).toBe(minutes);
  });

  it('takes a discount of 7.5 per cent as 750 basis points', () => {
    const parts = termsParameters('discount', british);
    const typed = { what: 'Friends', by: { as: 'share', share: '7.5' } };
    expect(writeFields(parts, typed, '', british).value).toEqual({
      what: 'Friends',
      by: { as: 'share', share: 750 },
    });
  });

  it('takes a rate of tax of 9.975 per cent as 997.5 basis points, and shows it so again', () => {
    const parts = termsParameters('tax', british);
    expect(writeFields(parts, { name: 'QST', rate: '9.975' }, '', british).value).toEqual({
      name: 'QST',
      rate: 997.5,
    });
    expect(typeFields(parts, { name: 'QST', rate: 997.5 }, british).rate).toBe('9.975');
  });

  it('takes words of one’s own parted by semicolons, so that a name may hold a comma', () => {
    const typed = { ...typeFields(selectorParameters, {}, british), levels: 'grade 6, strings; grade 8' };
    expect(writeFields(selectorParameters, typed, '/for', british).value).toEqual({
      levels: ['grade 6, strings', 'grade 8'],
    });
  });

  it('offers the other clauses where a supplement is only on what some of them charge', () => {
    const on = termsParameters('supplement', british).find(({ name }) => name === 'on');
    expect(on?.shape.is).toBe('clauses');
  });

  it('says that a price is missing beside the price', () => {
    expect(hourly({ price: ' ' }, british).slips).toEqual([
      { pointer: '/terms/price', detail: '“Price” is empty. Give an amount, such as 45 or 45.00.' },
    ]);
  });

  it('says that pounds have two decimals beside the price', () => {
    const [slip] = hourly({ price: '45.005' }, british).slips;
    expect(slip?.pointer).toBe('/terms/price');
    expect(slip?.detail).toContain('more decimals than GBP has');
  });

  it.each([
    ['a forenoon', '“a forenoon” is not minutes: write 75, 1:15 or 1.25 h.'],
    ['0', '“Charged in steps of (minutes)” lies between 1 and 44640; 0 does not.'],
  ])('refuses steps of %s', (increment, detail) => {
    expect(hourly({ price: '60', increment }, british).slips).toEqual([
      { pointer: '/terms/increment', detail },
    ]);
  });

  it('points at the second step of a cancellation scale where that is the one without a share', () => {
    const scale = [
      { before: '48', time: '', owes: { owes: 'nothing' } },
      { before: '24', time: '', owes: { owes: 'share', share: '' } },
    ];
    const { slips } = writeFields(
      termsParameters('cancellation', british),
      { scale, otherwise: { owes: 'all' } },
      '/clauses/2/terms',
      british,
    );
    expect(slips.map(({ pointer }) => pointer)).toEqual(['/clauses/2/terms/scale/1/owes/share']);
  });
});

function hourly(typed: Record<string, string>, reader: typeof british) {
  return writeFields(termsParameters('hourly', reader), typed, '/terms', reader);
}
