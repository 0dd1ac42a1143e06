// How far an engagement has come: its steps as bars of one system, those behind filled, those ahead open.
import type { Stage } from '@colla/engagements';
import { engagements as say } from '../../catalogue/engagements.ts';
import './engagement.css';
import { STEPS, type Step } from './steps.ts';

const WORDS = {
  inquiry: 'inquiry',
  quoted: 'quoted',
  agreed: 'agreed',
  played: 'step_played',
  invoiced: 'step_invoiced',
  paid: 'step_paid',
} as const;

export function Stages({ stage, reached }: { stage: Stage; reached: Step | undefined }) {
  if (reached === undefined) return <p className="engagement-ended">{say(stage)}</p>;
  const at = STEPS.indexOf(reached);
  return (
    <ol className="engagement-stages" aria-label={say('steps')}>
      {STEPS.map((step, place) => (
        <li
          key={step}
          className={place < at ? 'behind' : place === at ? 'here' : 'ahead'}
          aria-current={place === at ? 'step' : undefined}
        >
          {say(WORDS[step])}
        </li>
      ))}
    </ol>
  );
}
