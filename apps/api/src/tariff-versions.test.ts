import { span } from '@colla/calendar';
import type { Call } from '@colla/hours';
import { readTariff, type Tariff } from '@colla/rates';
import { granted } from '@colla/refusal';
import { expect, test } from 'vitest';
import { mayFollow, versionFor } from './tariff-versions.ts';

const tariff = (version: number, from: string, currency = 'EUR'): Tariff =>
  granted(readTariff({ name: 'Quay', currency, version, from, clauses: [] }));
const versions = [tariff(1, '2026-01-01'), tariff(2, '2026-09-01')] as const;

const call = (on: string): Call => ({
  id: on,
  kind: 'rehearsal',
  place: '',
  planned: granted(span({ on, from: '10:00', until: '11:00', zone: 'Europe/London' })),
  standing: { is: 'held' },
});

test.each([
  ['the day before a new version', ['2026-08-31'], undefined, 1],
  ['the first day of a new version', ['2026-09-01'], undefined, 2],
  ['calls on both sides of it', ['2026-09-10', '2026-08-31'], undefined, 1],
  ['no call yet', [], undefined, 2],
  ['a version named by its number', ['2026-09-10'], 1, 1],
])('for %s, the version quoted is the one meant', (_, days, number, version) => {
  expect(versionFor(versions, { calls: days.map(call) }, number)).toMatchObject({ version });
});

test('a call before the tariff begins is not quoted unless the version is named', () => {
  const calls = [call('2025-12-31')];
  expect(versionFor(versions, { calls }, undefined)).toMatchObject({ code: 'tariffs/not-yet-begun' });
  expect(versionFor(versions, { calls }, 1)).toMatchObject({ version: 1 });
});

test('a version that is not there is refused', () => {
  expect(versionFor(versions, { calls: [] }, 3)).toMatchObject({
    code: 'tariffs/no-such-version',
    sentence: '“Quay” has no version 3; its newest is 2. Choose one of its versions.',
  });
});

test.each([
  ['a day before', tariff(3, '2026-08-01'), 'tariffs/begins-too-early'],
  ['another currency', tariff(3, '2026-10-01', 'GBP'), 'tariffs/other-currency'],
])('a version with %s may not follow', (_, next, code) => {
  expect(mayFollow(versions, next)).toMatchObject({ code });
});

test('a version that begins on the same day or later may follow, and is meant from then on', () => {
  for (const from of ['2026-09-01', '2026-09-02']) {
    const next = tariff(3, from);
    expect(mayFollow(versions, next)).toBe(next);
    const calls = [call('2026-09-02')];
    expect(versionFor([...versions, next], { calls }, undefined)).toBe(next);
  }
});
