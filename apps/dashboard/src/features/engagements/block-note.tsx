// Not paid, not played: said above the calls that wait for the money, with the clause that says so.
import type { EngagementWholeJson } from '@colla/wire';
import { engagements as say } from '../../catalogue/engagements.ts';
import { Button } from '../../ui/index.ts';
import { sayBlock } from './blocked.ts';
import './engagement.css';
import { isMore } from './steps.ts';

interface BlockNoteProps {
  engagement: EngagementWholeJson;
  onPay: (invoice: string) => void;
}

/** The money it waits for is recorded on the invoice that asks for it, where one does. */
export function BlockNote({ engagement: { block, currency, invoices }, onPay }: BlockNoteProps) {
  if (!block) return null;
  const owing = invoices.find(({ owed }) => isMore(owed));
  return (
    <section className="engagement-block" aria-label={say('blockTitle')}>
      <h3 className="overdue">{say('blockTitle')}</h3>
      <p>{sayBlock(block, currency)}</p>
      <blockquote className="engagement-clause">{block.sentence}</blockquote>
      {owing && (
        <Button label={say('paymentMoveFor', { number: owing.number })} onPress={() => onPay(owing.id)}>
          {say('paymentMove')}
        </Button>
      )}
    </section>
  );
}
