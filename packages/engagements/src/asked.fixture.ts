// An inquiry with nothing in it yet, for tests: each says of it what it is about.

import { Temporal } from '@colla/calendar';
import { currency } from '@colla/money';
import { granted } from '@colla/refusal';
import type { Inquiry } from './engagement.ts';

/** Asked on 1 January 2026 at nine in London, in pounds. */
export const nothingAsked: Inquiry = {
  stage: 'inquiry',
  id: 'e1',
  title: 'Audition',
  currency: granted(currency('GBP')),
  payers: { payer: 'p1' },
  calls: [],
  programme: [],
  legs: [],
  costs: [],
  moves: [],
  rolledOver: {},
  soloist: {},
  sharers: 1,
  circumstances: [],
  askedAt: Temporal.ZonedDateTime.from('2026-01-01T09:00[Europe/London]'),
};
