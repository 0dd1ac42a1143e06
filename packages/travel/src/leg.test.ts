import { granted } from '@colla/refusal';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DISTANCE_UNITS, distance, distanceText, inUnit } from './leg.ts';

describe('a distance is read as it was written down', () => {
  it.each([
    ['12', 12_000],
    ['12.5', 12_500],
    ['12,5', 12_500],
    ['0.125', 125],
    [' 7 ', 7000],
    ['0', 0],
  ])('“%s”', (text, thousandths) => {
    expect(distance(text, 'km')).toEqual({ thousandths, unit: 'km' });
  });

  it.each(['', '-3', 'far', '12.3456', '1.234,5', '1234567', '12 km', '1e3'])('but not “%s”', (text) => {
    expect(distance(text, 'mile')).toMatchObject({ code: 'travel/no-distance', facts: { text } });
  });

  it('and says itself again in the same figures', () => {
    expect(
      ['12', '12.5', '0.125', '0.05', '7'].map((text) => distanceText(granted(distance(text, 'km')))),
    ).toEqual(['12', '12.5', '0.125', '0.05', '7']);
  });
});

describe('miles and kilometres', () => {
  it.each([
    // a mile is 1 609.344 m (international yard and pound agreement, 1959)
    ['1', 'mile', 'km', '1.609'],
    ['100', 'mile', 'km', '160.934'],
    ['1', 'km', 'mile', '0.621'],
    ['42.195', 'km', 'mile', '26.219'],
    ['42.195', 'km', 'km', '42.195'],
  ] as const)('%s %s in %s is %s', (far, unit, other, text) => {
    expect(distanceText(inUnit(granted(distance(far, unit)), other))).toBe(text);
  });

  it('and a distance that is turned over and back is off by a thousandth at most', () => {
    const far = fc.record({ thousandths: fc.nat(999_999_999), unit: fc.constantFrom(...DISTANCE_UNITS) });
    fc.assert(
      fc.property(far, fc.constantFrom(...DISTANCE_UNITS), (of, other) => {
        expect(Math.abs(inUnit(inUnit(of, other), of.unit).thousandths - of.thousandths)).toBeLessThanOrEqual(
          1,
        );
      }),
    );
  });
});
