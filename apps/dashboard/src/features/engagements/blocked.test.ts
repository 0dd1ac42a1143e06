import type { CallJson, EngagementWholeJson } from '@colla/wire';
import { beforeEach, describe, expect, it } from 'vitest';
import { speakIn } from '../../locale.ts';
import { isBlocked, sayBlock, sayBlocked, sayDueSince, sayInvoices } from './blocked.ts';

const call: CallJson = {
  id: 'c1',
  kind: 'recital',
  place: 'Hall',
  start: '2026-03-14T19:30:00+00:00[Europe/London]',
  end: '2026-03-14T21:00:00+00:00[Europe/London]',
  standing: { is: 'agreed' },
};
const block = {
  clause: 'due',
  sentence: 'Payment is due on the day of the agreement; what is not paid by then is not played.',
  due: '2026-03-01',
  owed: '120.00',
  calls: ['c1'],
};
const engagement: EngagementWholeJson = {
  id: 'e1',
  title: 'Recital',
  stage: 'agreed',
  currency: 'EUR',
  payers: {},
  soloist: {},
  sharers: 1,
  circumstances: [],
  askedAt: '2026-02-01T09:00:00+00:00[Europe/London]',
  calls: [call],
  programme: [],
  legs: [],
  costs: [],
  moves: [],
  rolledOver: {},
  parties: {},
  invoices: [],
  payments: [],
  block,
};

beforeEach(() => speakIn('en-GB'));

describe('a call that waits for the money', () => {
  it('says so in words, with what it waits for and since when', () => {
    expect(isBlocked(engagement, call)).toBe(true);
    expect(sayBlocked(engagement, call)).toBe('blocked: not paid');
    expect(sayDueSince(block)).toBe('Due 1 Mar 2026 and not paid');
    expect(sayBlock(block)).toContain('One call is blocked');
    expect(sayInvoices(engagement)).toEqual(['not invoiced yet']);
  });

  it('says why it is played all the same once its block is lifted', () => {
    const lifted = { at: '2026-03-02T09:00:00+00:00[Europe/London]', reason: 'an old friend' };
    const free = { ...engagement, block: undefined };
    expect(sayBlocked(free, { ...call, lifted })).toBe('block lifted on Mon 2 Mar: “an old friend”');
    expect(sayBlocked(free, call)).toBeUndefined();
  });
});
