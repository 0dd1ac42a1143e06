import { span } from '@colla/calendar';
import type { Call } from '@colla/hours';
import { granted } from '@colla/refusal';
import { expect, test } from 'vitest';
import { versionInForce } from './versions.ts';

const versions = [{ from: '2026-01-01' }, { from: '2026-09-01' }] as const;

const call = (on: string): Call => ({
  id: on,
  kind: 'rehearsal',
  place: '',
  planned: granted(span({ on, from: '10:00', until: '11:00', zone: 'Europe/London' })),
  standing: { is: 'held' },
});

test.each([
  ['the day before a new version', ['2026-08-31'], '2026-01-01'],
  ['the first day of a new version', ['2026-09-01'], '2026-09-01'],
  ['calls on both sides of it', ['2026-09-10', '2026-08-31'], '2026-01-01'],
  ['no call yet', [], '2026-09-01'],
  ['a call before the tariff begins', ['2025-12-31'], undefined],
])('for %s, the version of the first call is in force', (_, days, from) => {
  expect(versionInForce(versions, days.map(call))?.from).toBe(from);
});

test('two places on different days go by the earlier instant', () => {
  const at = (on: string, from: string, zone: string) => ({
    ...call(on),
    planned: granted(span({ on, from, until: '23:30', zone })),
  });
  // 08:00 on 1 September in Auckland is 20:00 on 31 August in Universal Time, two hours before the other call.
  const calls = [at('2026-08-31', '23:00', 'Europe/London'), at('2026-09-01', '08:00', 'Pacific/Auckland')];
  expect(versionInForce(versions, calls)?.from).toBe('2026-09-01');
});
