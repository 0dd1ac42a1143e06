// Records what came in for an invoice. More than is owed is never lost: it is kept as credit, or corrected.
import { METHODS } from '@colla/invoicing';
import type { InvoiceJson } from '@colla/wire';
import { useState } from 'react';
import { useSend } from '../../books.ts';
import { invoices as say, sayMethod } from '../../catalogue/invoices.ts';
import { sayMoney } from '../../locale.ts';
import {
  Button,
  DayField,
  Dialog,
  Filled,
  Form,
  MoneyField,
  Options,
  RateFields,
  type Said,
  TextField,
  useStatus,
} from '../../ui/index.ts';
import { InvoiceAmount } from './invoice-amount.tsx';
import { overpaid, type PaymentDraft, paymentOf, startPayment } from './payment.ts';

interface PaymentDialogProps {
  invoice: InvoiceJson;
  /** How much of what was invoiced is not owed any more, where that is known; decimal text. */
  beyond?: string | undefined;
  today: string;
  /** The currency that the books are kept in. */
  book: string;
  onClose: () => void;
}

const methods = METHODS.map((value) => ({ value, label: sayMethod(value) }));

export function PaymentDialog({ invoice, beyond, today, book, onClose }: PaymentDialogProps) {
  const { send, busy, problem, forget } = useSend('addPayment');
  const [draft, setDraft] = useState(() => startPayment(invoice, today));
  const [wrong, setWrong] = useState<Said>();
  const status = useStatus();
  const over = overpaid(problem);
  const change = (to: Partial<PaymentDraft>) => {
    setDraft({ ...draft, ...to });
    setWrong(undefined);
    forget();
  };
  const record = async (keepCredit: boolean) => {
    const read = paymentOf(draft, invoice, { book, keepCredit });
    if ('wrong' in read) return setWrong({ detail: read.wrong.detail, errors: [read.wrong] });
    const kept = await send({ params: { id: invoice.id }, body: read.body });
    if (!kept) return;
    const [amount, credit] = [kept.amount, kept.credit].map((text) => sayMoney(text, invoice.currency));
    const sentence = keepCredit ? 'recordedCredit' : 'recorded';
    status(say(sentence, { amount: amount ?? '', credit: credit ?? '', payer: invoice.to.name }));
    onClose();
  };
  const foot = (
    <>
      {over === undefined ? (
        <Button type="submit" kind="primary" busy={busy}>
          {say('keep')}
        </Button>
      ) : (
        <Button kind="primary" busy={busy} onPress={() => record(true)}>
          {say('keepCredit', { over: sayMoney(over, invoice.currency) })}
        </Button>
      )}
      <Button onPress={over === undefined ? onClose : forget}>
        {say(over === undefined ? 'giveUp' : 'correct')}
      </Button>
    </>
  );
  return (
    <Dialog title={say('recordTitle', { number: invoice.number })} onClose={onClose}>
      <Form problem={wrong ?? problem} onSubmit={() => record(false)} foot={foot}>
        <p>
          <Filled
            text={say('recordUnder', { payer: invoice.to.name })}
            values={{ owed: <InvoiceAmount invoice={invoice} which="owed" said /> }}
          />
        </p>
        {beyond !== undefined && <p>{say('recordBeyond', { amount: sayMoney(beyond, invoice.currency) })}</p>}
        <PaymentFields draft={draft} currency={invoice.currency} onChange={change} />
        <RateFields
          from={invoice.currency}
          to={book}
          value={draft.rate}
          onType={(rate) => change({ rate })}
        />
      </Form>
    </Dialog>
  );
}

interface FieldsProps {
  draft: PaymentDraft;
  currency: string;
  onChange: (to: Partial<PaymentDraft>) => void;
}

function PaymentFields({ draft, currency, onChange }: FieldsProps) {
  return (
    <>
      <MoneyField
        label={say('amount')}
        at="/amount"
        value={draft.amount}
        currency={currency}
        onType={(amount) => onChange({ amount })}
      />
      <DayField
        label={say('receivedOn')}
        at="/receivedOn"
        value={draft.receivedOn}
        onType={(receivedOn) => onChange({ receivedOn })}
      />
      <Options
        label={say('method')}
        at="/method"
        value={draft.method}
        options={methods}
        onChoose={(method) => onChange({ method })}
      />
      <TextField
        label={say('reference')}
        hint={say('referenceHint')}
        optional
        at="/reference"
        value={draft.reference}
        onType={(reference) => onChange({ reference })}
      />
    </>
  );
}
