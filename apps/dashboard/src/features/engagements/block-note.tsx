// Not paid, not played: said above the calls that wait for the money, with the clause that says so.
import type { EngagementWholeJson } from '@colla/wire';
import { engagements as say } from '../../catalogue/engagements.ts';
import { AmountLine, type Why } from '../../ui/index.ts';
import { sayBlock, sayDueSince, sayInvoices } from './blocked.ts';
import './engagement.css';

export function BlockNote({ engagement }: { engagement: EngagementWholeJson }) {
  const { block, currency } = engagement;
  if (!block) return null;
  const why: Why = {
    what: sayDueSince(block),
    amount: block.owed,
    currency,
    sentence: block.sentence,
    facts: sayInvoices(engagement),
  };
  return (
    <section className="engagement-block" aria-label={say('blockTitle')}>
      <h3 className="overdue">{say('blockTitle')}</h3>
      <AmountLine why={why} />
      <p>{sayBlock(block)}</p>
    </section>
  );
}
