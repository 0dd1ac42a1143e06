// The one primary action of an engagement: its next step.
import { Temporal } from '@colla/calendar';
import type { EngagementWholeJson, StatementAnswerJson } from '@colla/wire';
import { engagements as say } from '../catalogue/engagements.ts';
import { callOf } from '../features/engagements/facts.ts';
import { type NextMove, nextMove } from '../features/engagements/moves.ts';
import { callName, payerNames } from '../features/engagements/names.ts';
import { isMore } from '../features/engagements/steps.ts';
import { Button } from '../ui/index.ts';
import type { Asked } from './engagement-dialog.tsx';

interface NextProps {
  engagement: EngagementWholeJson;
  toInvoice: StatementAnswerJson['toInvoice'];
  now: Temporal.ZonedDateTime;
  onAsk: (asked: Asked) => void;
}

export function Next({ engagement, toInvoice, now, onAsk }: NextProps) {
  const move = nextMove(
    {
      stage: engagement.stage,
      calls: engagement.calls.map(callOf),
      toInvoice,
      owing: engagement.invoices.filter(({ owed }) => isMore(owed)),
      blocked: engagement.block?.calls ?? [],
      ...(engagement.quote ? { quoteUntil: Temporal.ZonedDateTime.from(engagement.quote.validUntil) } : {}),
    },
    now,
  );
  if (move.is === 'nothing') return null;
  const call = 'call' in move ? engagement.calls.find(({ id }) => id === move.call) : undefined;
  if (move.is === 'wait') return call && <span>{say('waitMove', { call: callName(call) })}</span>;
  const ask = () => {
    if (move.is !== 'play') onAsk(move);
    else if (call) onAsk({ is: 'call', move: 'play', call });
  };
  return (
    <Button kind="primary" onPress={ask}>
      {sayMove(move, engagement, call && callName(call))}
    </Button>
  );
}

function sayMove(move: NextMove, engagement: EngagementWholeJson, call = ''): string {
  switch (move.is) {
    case 'add a call':
      return say('addCall');
    case 'quote':
      return say(move.again ? 'quoteAgain' : 'quote');
    case 'agree':
      return say('agreeMove');
    case 'play':
      return say('playMove', { call });
    case 'invoice':
      return say('invoiceMoveFor', { payer: payerNames(engagement)[move.payer] ?? move.payer });
    case 'record a payment':
      return say('paymentMove');
    default:
      return say('settleMove');
  }
}
