// What most routes of an engagement do: load it, locked; let the domain decide; keep and show what becomes of it.

import type { Temporal } from '@colla/calendar';
import {
  type Agreed,
  allowed,
  type Engagement,
  type House,
  hasAgreement,
  type Inquiry,
  type Organisation,
  type Quoted,
} from '@colla/engagements';
import { type OrRefusal, refused } from '@colla/refusal';
import type { Books } from '@colla/store';
import { type EngagementJson, showEngagement } from '@colla/wire';
import { found, must } from './refusals.ts';

interface Moving {
  readonly params: { readonly id: string };
  readonly books: Books;
  readonly now: Temporal.Instant;
}

/** Whose books they are, and the present moment on their clock. */
export interface Beside {
  readonly organisation: Organisation;
  readonly at: Temporal.ZonedDateTime;
}

type Decided = OrRefusal<Engagement> | Promise<OrRefusal<Engagement>>;

export async function move(
  { params, books, now }: Moving,
  decide: (engagement: Engagement, beside: Beside) => Decided,
): Promise<EngagementJson> {
  const [organisation, kept] = await Promise.all([books.organisation(), books.lockEngagement(params.id)]);
  const before = found(kept, 'engagement');
  const after = must(await decide(before, { organisation, at: now.toZonedDateTimeISO(organisation.zone) }));
  await books.saveEngagement(after);
  return showEngagement(after, await houseOf(after, { organisation, books }));
}

/** What is fixed outside an engagement. The payer's other engagements are counted only while nothing is agreed. */
export async function houseOf(
  engagement: Engagement,
  { organisation, books }: { organisation: Organisation; books: Books },
): Promise<House> {
  if (hasAgreement(engagement) || engagement.stage === 'declined' || engagement.stage === 'lapsed')
    return organisation;
  return { ...organisation, soFar: await books.agreedSoFar(engagement.id) };
}

/** Changes what an engagement holds, as long as it is not over. */
export async function change(
  moving: Moving,
  to: (open: Inquiry | Quoted | Agreed, beside: Beside) => OrRefusal<Engagement>,
): Promise<EngagementJson> {
  return move(moving, (engagement, beside) => {
    const open = allowed(engagement, 'change', 'inquiry', 'quoted', 'agreed');
    return refused(open) ? open : to(open, beside);
  });
}
