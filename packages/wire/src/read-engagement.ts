// An inquiry as it is entered, and what is changed of an engagement later.

import type { Temporal } from '@colla/calendar';
import { addCall, type Engagement, type Inquiry } from '@colla/engagements';
import { type Currency, currency } from '@colla/money';
import { type OrRefusal, refused } from '@colla/refusal';
import type { z } from 'zod';
import type { engagementChange, engagementInput } from './engagements.ts';
import { present, readCall, readEach, readWork, without } from './read.ts';

/** What an inquiry does not say of itself. Its currency is the organisation's where it names none. */
interface Entered {
  readonly newId: () => string;
  readonly currency: Currency;
  readonly askedAt: Temporal.ZonedDateTime;
}

export function readInquiry(
  input: z.output<typeof engagementInput>,
  { newId, askedAt, ...usual }: Entered,
): OrRefusal<Engagement> {
  const kept = input.currency === undefined ? usual.currency : currency(input.currency);
  if (refused(kept)) return kept.at('/currency');
  const calls = readEach(input.calls, '/calls', (call) => readCall(call, newId()));
  if (refused(calls)) return calls;
  const programme = readEach(input.programme, '/programme', (work) => readWork(work, newId()));
  if (refused(programme)) return programme;
  const inquiry: Inquiry = {
    ...factsOf(input),
    stage: 'inquiry',
    id: newId(),
    currency: kept,
    calls: [],
    programme,
    legs: [],
    costs: [],
    moves: [],
    askedAt,
  };
  return calls.reduce<OrRefusal<Engagement>>((so, call) => (refused(so) ? so : addCall(so, call)), inquiry);
}

function factsOf(input: z.output<typeof engagementInput>) {
  const { title, payers = {}, soloist = {}, sharers = 1, circumstances = [], rolledOver = {} } = input;
  const { soloistParty, institutionParty, pianistClass, note } = input;
  return {
    title,
    payers,
    soloist: present(soloist),
    sharers,
    circumstances,
    rolledOver,
    ...present({ soloistParty, institutionParty, pianistClass, note }),
  };
}

/** The engagement with what was sent in place of what it held; `null` takes it away. */
export function readEngagementChange<Of extends Engagement>(
  engagement: Of,
  input: z.output<typeof engagementChange>,
): Of {
  const { soloistParty, institutionParty, pianistClass, note, soloist, ...named } = input;
  const nullable = { soloistParty, institutionParty, pianistClass, note };
  const kept = without(
    engagement,
    (key) => key in nullable && nullable[key as keyof typeof nullable] === null,
  );
  const given = without(nullable, (_, value) => value === null);
  return { ...kept, ...present(named), ...present(given), ...(soloist ? { soloist: present(soloist) } : {}) };
}
