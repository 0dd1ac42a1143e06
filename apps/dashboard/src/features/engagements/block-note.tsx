// Not paid, not played: said above the calls that wait for the money, with the clause that says so.
import type { EngagementWholeJson } from '@colla/wire';
import { engagements as say } from '../../catalogue/engagements.ts';
import { sayBlock } from './blocked.ts';
import './engagement.css';

export function BlockNote({ engagement: { block, currency } }: { engagement: EngagementWholeJson }) {
  if (!block) return null;
  return (
    <section className="engagement-block" aria-label={say('blockTitle')}>
      <h3 className="overdue">{say('blockTitle')}</h3>
      <p>{sayBlock(block, currency)}</p>
      <blockquote className="engagement-clause">{block.sentence}</blockquote>
    </section>
  );
}
