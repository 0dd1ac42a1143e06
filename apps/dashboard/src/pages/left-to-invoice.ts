// What is left to invoice to one payer, or was invoiced beyond what they owe: what the statement says, less what their
// invoices asked for.
import type { InvoiceJson, StatementAnswerJson } from '@colla/wire';
import { engagements as say } from '../catalogue/engagements.ts';
import { invoices as sayInvoices } from '../catalogue/invoices.ts';
import { partsOf, type Reckoned } from '../features/statements/reckoning.ts';
import { payerWhy } from '../features/statements/whys.ts';
import { summed, takenOff, type Why } from '../ui/index.ts';

export function leftWhy(
  { payer, total }: StatementAnswerJson['toInvoice'][number],
  of: Reckoned,
  invoices: readonly InvoiceJson[],
): Why {
  const { currency } = of.statement;
  const isBeyond = total.startsWith('-');
  const named = { payer: of.payerNames[payer] ?? payer };
  const sum = { what: say(isBeyond ? 'beyondOwed' : 'stillToInvoice', named), amount: total, currency };
  const owed = partsOf(of)
    .filter((part) => part.payer === payer)
    .map((part): Why => ({ ...payerWhy(part, of), what: say('byStatement') }));
  const asked = invoices
    .filter((invoice) => invoice.payer === payer)
    .map(({ id, number, total: amount }) =>
      takenOff({
        what: sayInvoices('one', { number }),
        amount,
        currency,
        more: { to: `/invoices/${id}`, label: sayInvoices('seeInvoice') },
      }),
    );
  return summed(sum, [...owed, ...asked]);
}
