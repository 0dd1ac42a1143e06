// What a call that only comes about if something happens would add, said before it is agreed.

import { Temporal } from '@colla/calendar';
import { toDecimal } from '@colla/money';
import { type Facts, readTariff, statement, type Terms } from '@colla/rates';
import { refused } from '@colla/refusal';
import type { CallJson, EngagementWholeJson, OrganisationJson } from '@colla/wire';
import { engagements as say } from '../../catalogue/engagements.ts';
import { sayMoney } from '../../locale.ts';
import { factsOf } from './facts.ts';

/** The statement with the call agreed less the one without it, tax with it: minor units. */
export function moreIfAgreed(facts: Facts, terms: Terms, call: string, asOf: Temporal.ZonedDateTime): bigint {
  const others = facts.calls.filter(({ id }) => id !== call);
  const agreed = facts.calls.map((each) =>
    each.id === call ? { ...each, standing: { is: 'agreed' } as const } : each,
  );
  const total = (calls: Facts['calls']) => statement({ ...facts, calls }, terms, asOf).total;
  return total(agreed) - total(others);
}

/** “if it happens: £55.00 more”, for each call with a condition. */
export function sayPerhaps(
  engagement: EngagementWholeJson,
  facts: Facts,
  terms: Terms,
  asOf: Temporal.ZonedDateTime,
): { readonly call: CallJson; readonly more: string }[] {
  return engagement.calls
    .filter(({ standing }) => standing.is === 'held' && standing.onlyIf !== undefined)
    .map((call) => ({ call, more: sayMore(moreIfAgreed(facts, terms, call.id, asOf), terms) }));
}

/** The same for one call kept free, under what is agreed; nothing before there is an agreement. */
export function sayIfAgreed(
  engagement: EngagementWholeJson,
  organisation: OrganisationJson,
  call: string,
): string | undefined {
  const tariff = engagement.agreement && readTariff(engagement.agreement.written);
  if (tariff === undefined || refused(tariff)) return undefined;
  const now = Temporal.Now.zonedDateTimeISO(organisation.zone);
  const terms = { tariff, locale: organisation.locale };
  return sayMore(moreIfAgreed(factsOf(engagement, organisation), terms, call, now), terms);
}

function sayMore(more: bigint, { tariff: { currency } }: Terms): string {
  return say('ifItHappens', { amount: sayMoney(toDecimal(more, currency), currency) });
}
