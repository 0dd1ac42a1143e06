// What is said of invoices and payments.
import { words } from './words.ts';

export const invoices = words({
  title: 'Invoices',
  under: 'What was asked for, and what came in.',
  fetching: 'the invoices',
  fetchingOne: 'the invoice',
  none: 'No invoice is issued yet',
  noneWhy:
    'An invoice is issued from its engagement, once that is agreed: it asks for what the statement says and nothing else.',
  toEngagements: 'See the engagements',
  number: 'Number',
  to: 'Payer',
  forWhat: 'For',
  due: 'Due',
  total: 'Total',
  totalOf: 'Total of invoice {number}',
  owed: 'Owed',
  owedOn: 'Owed on invoice {number}',
  seeInvoice: 'See the invoice',
  forInvoice: 'For invoice {number}',
  keptAsCredit: 'Kept as credit',
  standing: 'How it stands',
  paid: 'Paid',
  open: 'due in {days}',
  dueToday: 'due today',
  overdue: 'overdue by {days}',
  partPaid: 'part paid, {rest}',
  days: { one: 'one day', other: '{count} days' },
  one: 'Invoice {number}',
  oneUnder: 'To {payer}. Issued {issued}, due {due}: {standing}.',
  engagement: 'Engagement',
  lines: 'What it asks for',
  tax: '{name} on {base}',
  taxInside: '{name} inside the prices, on {base}',
  net: 'Before tax',
  received: 'Received',
  pdf: 'Open the PDF',
  pdfOf: 'PDF of invoice {number}',
  document: 'Document',
  note: 'Note on it',
  payments: 'Payments',
  noPayments: 'Nothing has come in yet.',
  record: 'Record a payment',
  recordFor: 'Record a payment for invoice {number}',
  dueOn: 'due {day}',
  recordTitle: 'Payment for invoice {number}',
  recordUnder: '{owed} is owed by {payer}.',
  recordBeyond:
    'It has come to less since: {amount} of what was invoiced is not owed any more, and need not be paid. Enter what really came.',
  amount: 'Amount received',
  receivedOn: 'Received on',
  method: 'How',
  reference: 'Reference',
  referenceHint: 'What the bank statement or the receipt says.',
  keep: 'Record it',
  giveUp: 'Not now',
  emptyAmount: 'Enter what was received.',
  recorded: '{amount} from {payer} is recorded.',
  recordedCredit: '{amount} from {payer} is recorded, of which {credit} is kept as credit.',
  keepCredit: 'Keep {over} as credit',
  correct: 'Correct the amount',
  credit: '{amount} of it kept as credit',
});

const METHODS = {
  'bank transfer': 'Bank transfer',
  cash: 'Cash',
  cheque: 'Cheque',
  card: 'Card',
} as const;

/** How money came in, as it is read. */
export function sayMethod(method: keyof typeof METHODS): string {
  return METHODS[method];
}
