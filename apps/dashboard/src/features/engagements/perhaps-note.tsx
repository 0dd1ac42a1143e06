// What a call kept free would add if it happens, tax with it; the amount opens to what lies between with it and without.
import { Temporal } from '@colla/calendar';
import { readTariff } from '@colla/rates';
import { refused } from '@colla/refusal';
import type { CallJson, EngagementWholeJson, OrganisationJson } from '@colla/wire';
import { engagements as say } from '../../catalogue/engagements.ts';
import { Filled } from '../../ui/index.ts';
import { DifferenceAmount, type Under } from './explaining.tsx';
import { factsOf } from './facts.ts';
import { callName } from './names.ts';
import { ifAgreed } from './perhaps.ts';

interface IfItHappensProps {
  call: CallJson;
  under: Under;
  asOf: Temporal.ZonedDateTime;
}

export function IfItHappens({ call, under, asOf }: IfItHappensProps) {
  const { tariff, engagement, organisation } = under;
  const terms = { tariff, locale: organisation.locale };
  const { withIt, without } = ifAgreed(factsOf(engagement, organisation), terms, call.id, asOf);
  const amount = (
    <DifferenceAmount
      what={say('ifItHappensOf', { call: callName(call) })}
      of={withIt}
      less={without}
      names={[say('withIt'), say('withoutIt')]}
      under={under}
      said
    />
  );
  return <Filled text={say('ifItHappens')} values={{ amount }} />;
}

interface IfAgreedProps {
  call: CallJson;
  engagement: EngagementWholeJson;
  organisation: OrganisationJson;
}

/** The same under what is agreed; nothing before there is an agreement. */
export function IfAgreed({ call, engagement, organisation }: IfAgreedProps) {
  const tariff = engagement.agreement && readTariff(engagement.agreement.written);
  if (tariff === undefined || refused(tariff)) return null;
  const asOf = Temporal.Now.zonedDateTimeISO(organisation.zone);
  return (
    <p>
      <IfItHappens call={call} under={{ tariff, engagement, organisation }} asOf={asOf} />
    </p>
  );
}
