import type { MarkJson } from '@colla/wire';
import { describe, expect, test } from 'vitest';
import { draw, nearest } from './drawing.ts';
import type { Ruler } from './ruler.ts';

// 31 August 2026 is a Monday, 20696 days after 1970-01-01. Seven pixels a day, ten between two lines.
const ruler: Ruler = { first: 20_696, weeks: 16, week: 49, gap: 10 };

function mark(start: string, minutes: number, rest: Partial<MarkJson> = {}): MarkJson {
  const zoned = `${start}:00+00:00[Europe/London]`;
  return {
    call: start,
    engagement: 'e',
    title: 'Viola recital',
    kind: 'rehearsal',
    place: '',
    start: zoned,
    end: zoned,
    minutes,
    is: 'agreed',
    ...rest,
  };
}

describe('a call on its stave', () => {
  test('stands at its day and its hour, noon on the second line', () => {
    const [placed] = draw([mark('2026-09-01T12:00', 60)], ruler).placed;
    // One day of seven pixels and half a day of three and a half; line two is 10 × (5.5 − 1) from the top.
    expect(placed).toMatchObject({ x: 10.5, y: 45 });
  });

  test('is as long as it lasts: an hour as long as a day', () => {
    const lengths = draw([mark('2026-09-01T12:00', 180), mark('2026-09-02T12:00', 90)], ruler).placed;
    expect(lengths.map(({ length }) => length)).toEqual([21, 10.5]);
  });

  test('is never shorter than a head', () => {
    expect(draw([mark('2026-09-01T12:00', 10)], ruler).placed[0]?.length).toBeCloseTo(7.6);
  });

  test('that begins at four in the morning stays within the stave’s room', () => {
    expect(draw([mark('2026-09-01T04:00', 60)], ruler).placed[0]?.y).toBe(65);
  });

  test('is drawn with the others of its standing', () => {
    const { paths } = draw(
      [mark('2026-09-01T12:00', 60), mark('2026-09-02T12:00', 60, { is: 'played' })],
      ruler,
    );
    expect([paths.agreed, paths.played, paths.held].map((path) => path.split('M').length - 1)).toEqual([
      1, 1, 0,
    ]);
  });

  test('carries a stem when somebody listens', () => {
    const { stems } = draw(
      [mark('2026-09-01T12:00', 60), mark('2026-09-02T12:00', 60, { kind: 'jury' })],
      ruler,
    );
    expect(stems.split('M').length - 1).toBe(1);
  });
});

describe('pointing at a stave', () => {
  const { placed } = draw([mark('2026-09-01T12:00', 60), mark('2026-09-08T19:00', 120)], ruler);

  test('finds the call below the finger', () => {
    expect(nearest(placed, 70, 22)).toBe(1);
  });

  test('finds nothing where no call is near', () => {
    expect(nearest(placed, 300, 30)).toBeUndefined();
  });
});
