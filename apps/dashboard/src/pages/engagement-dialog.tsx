// The dialog that one engagement's screen has open.

import { Temporal } from '@colla/calendar';
import type { CallJson, EngagementWholeJson, OrganisationJson, StatementAnswerJson } from '@colla/wire';
import { AgreeDialog } from '../features/engagements/agree-dialog.tsx';
import { isBlocked } from '../features/engagements/blocked.ts';
import { AddCallDialog, MoveCallDialog } from '../features/engagements/call-dialog.tsx';
import { CloseDialog } from '../features/engagements/close-dialog.tsx';
import { callOf } from '../features/engagements/facts.ts';
import { FallDialog } from '../features/engagements/fall-dialog.tsx';
import { IssueDialog } from '../features/engagements/issue-dialog.tsx';
import { LiftDialog } from '../features/engagements/lift-dialog.tsx';
import { MoreDialog } from '../features/engagements/more-dialog.tsx';
import { type CallMove, callMoves } from '../features/engagements/moves.ts';
import { PartyDialog } from '../features/engagements/party-dialog.tsx';
import { PeopleDialog } from '../features/engagements/people-dialog.tsx';
import { IfAgreed } from '../features/engagements/perhaps-note.tsx';
import { PlayDialog } from '../features/engagements/play-dialog.tsx';
import { QuoteDialog } from '../features/engagements/quote-dialog.tsx';
import { RollOverDialog } from '../features/engagements/roll-over-dialog.tsx';
import { SettleDialog } from '../features/engagements/settle-dialog.tsx';
import { SimpleCallDialog } from '../features/engagements/simple-call-dialog.tsx';
import { belowNought } from '../features/engagements/steps.ts';
import { PaymentDialog } from '../features/invoices/payment-dialog.tsx';
import { StatementView } from '../features/statements/statement-view.tsx';

/** What somebody asked to do. */
export type Asked =
  | { readonly is: 'call'; readonly move: CallMove | 'more'; readonly call: CallJson }
  | { readonly is: 'invoice'; readonly payer: string }
  | { readonly is: 'address'; readonly party: string }
  | { readonly is: 'record a payment'; readonly invoice: string }
  | {
      readonly is:
        | 'add a call'
        | 'quote'
        | 'agree'
        | 'settle'
        | 'people'
        | 'roll over'
        | 'cancel'
        | 'decline'
        | 'lapse';
    };

interface DialogProps {
  engagement: EngagementWholeJson;
  organisation: OrganisationJson;
  answer: StatementAnswerJson | undefined;
  today: string;
  onAsk: (asked: Asked) => void;
  onClose: () => void;
}

export function EngagementDialog({ asked, ...props }: DialogProps & { asked: Asked }) {
  const { engagement, organisation, onClose } = props;
  switch (asked.is) {
    case 'call':
      return <CallDialog {...props} call={asked.call} move={asked.move} />;
    case 'add a call':
      return <AddCallDialog engagement={engagement} zone={organisation.zone} onClose={onClose} />;
    case 'quote':
      return <QuoteDialog {...props} show={(of) => <StatementView of={of} />} />;
    case 'agree':
      return <AgreeDialog {...props} />;
    case 'settle':
      return <SettleDialog engagement={engagement} onClose={onClose} />;
    case 'people':
      return <PeopleDialog engagement={engagement} onClose={onClose} />;
    case 'roll over':
      return <RollOverDialog engagement={engagement} onClose={onClose} />;
    case 'cancel':
      return <FallDialog engagement={engagement} organisation={organisation} onClose={onClose} />;
    case 'decline':
    case 'lapse':
      return <CloseDialog engagement={engagement} as={asked.is} onClose={onClose} />;
    case 'invoice':
      return (
        <IssueDialog
          {...props}
          payer={asked.payer}
          onAddress={(party) => props.onAsk({ is: 'address', party })}
        />
      );
    case 'address':
      return <PartyDialog id={asked.party} onClose={onClose} />;
    case 'record a payment': {
      const invoice = engagement.invoices.find(({ id }) => id === asked.invoice);
      if (!invoice) return null;
      const left = props.answer?.toInvoice.find(({ payer }) => payer === invoice.payer);
      const beyond = left && belowNought(left.total);
      const { today } = props;
      const book = organisation.currency;
      return <PaymentDialog {...{ invoice, beyond, today, book, onClose }} />;
    }
  }
}

function CallDialog(props: DialogProps & { call: CallJson; move: CallMove | 'more' }) {
  const { engagement, organisation, call, move, onAsk, onClose } = props;
  const id = engagement.id;
  switch (move) {
    case 'more': {
      const now = Temporal.Now.zonedDateTimeISO(organisation.zone);
      const moves = callMoves(callOf(call), engagement.stage, now, isBlocked(engagement, call));
      return (
        <MoreDialog
          call={call}
          moves={moves}
          onMove={(next) => onAsk({ is: 'call', move: next, call })}
          onClose={onClose}
        />
      );
    }
    case 'play':
      return <PlayDialog engagement={id} call={call} onClose={onClose} />;
    case 'move':
      return (
        <MoveCallDialog engagement={engagement} organisation={organisation} call={call} onClose={onClose} />
      );
    case 'lift':
      return <LiftDialog engagement={engagement} block={engagement.block} call={call} onClose={onClose} />;
    case 'cancel':
    case 'miss':
      return (
        <FallDialog
          engagement={engagement}
          organisation={organisation}
          call={call}
          missed={move === 'miss'}
          onClose={onClose}
        />
      );
    default:
      return (
        <SimpleCallDialog
          engagement={id}
          call={call}
          move={move}
          more={
            move === 'agree' && <IfAgreed call={call} engagement={engagement} organisation={organisation} />
          }
          onClose={onClose}
        />
      );
  }
}
