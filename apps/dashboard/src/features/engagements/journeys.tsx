// Journeys for an engagement and money spent on it, which its terms may pass on.
import type { EngagementJson, LegJson } from '@colla/wire';
import { useState } from 'react';
import { useSend } from '../../books.ts';
import { engagements as say } from '../../catalogue/engagements.ts';
import { sayDay } from '../../locale.ts';
import { Amount, Button, Part, ProblemNote, useStatus } from '../../ui/index.ts';
import { CostDialog } from './cost-dialog.tsx';
import './engagement.css';
import { LegDialog } from './leg-dialog.tsx';

interface JourneysProps {
  engagement: EngagementJson;
  today: string;
  /** False where nothing changes any more. */
  open: boolean;
}

export function Journeys({ engagement, today, open }: JourneysProps) {
  const [writing, setWriting] = useState<'leg' | 'cost'>();
  const removeLeg = useSend('removeLeg');
  const removeCost = useSend('removeCost');
  const status = useStatus();
  const { id, legs, costs, currency } = engagement;
  const problem = removeLeg.problem ?? removeCost.problem;
  const take = async (removed: Promise<unknown>) => {
    if (await removed) status(say('removed'));
  };
  const actions = open && (
    <>
      <Button onPress={() => setWriting('leg')}>{say('addLeg')}</Button>
      <Button onPress={() => setWriting('cost')}>{say('addCost')}</Button>
    </>
  );
  return (
    <Part title={say('journeys')} actions={actions}>
      {problem && <ProblemNote problem={problem} />}
      {legs.length + costs.length === 0 && <p className="aside">{say('noJourneys')}</p>}
      <ul className="journey-list">
        {legs.map((leg) => (
          <li key={leg.id}>
            <LegLine leg={leg} />
            {open && (
              <Button
                kind="quiet"
                label={say('removeLeg', { from: leg.from, to: leg.to })}
                onPress={() => take(removeLeg.send({ params: { id, leg: leg.id } }))}
              >
                {say('takeOut')}
              </Button>
            )}
          </li>
        ))}
        {costs.map((cost) => (
          <li key={cost.id}>
            <span>
              {sayDay(cost.on, 'weekday')}, {cost.what}
            </span>
            <Amount
              why={{
                what: cost.what,
                amount: cost.amount,
                currency,
                facts: [say('costSpent', { day: sayDay(cost.on) })],
              }}
            />
            {open && (
              <Button
                kind="quiet"
                label={say('removeCost', { what: cost.what })}
                onPress={() => take(removeCost.send({ params: { id, cost: cost.id } }))}
              >
                {say('takeOut')}
              </Button>
            )}
          </li>
        ))}
      </ul>
      {writing === 'leg' && (
        <LegDialog engagement={engagement} today={today} onClose={() => setWriting(undefined)} />
      )}
      {writing === 'cost' && (
        <CostDialog engagement={engagement} today={today} onClose={() => setWriting(undefined)} />
      )}
    </Part>
  );
}

function LegLine({ leg }: { leg: LegJson }) {
  return (
    <>
      <span>
        {sayDay(leg.on, 'weekday')}, {say('leg', { from: leg.from, to: leg.to })}
        {leg.purpose && <span className="aside">, {leg.purpose}</span>}
      </span>
      <span className="figure">
        {say(`distance_${leg.unit}`, { distance: leg.distance, count: Number(leg.distance) })}
        {leg.minutes > 0 && `, ${leg.minutes} min`}
      </span>
    </>
  );
}
