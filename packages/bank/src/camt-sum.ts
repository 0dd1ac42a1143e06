// Sums in a camt.053 message, and the sentence where a part of it does not say what it must.

import { type Currency, currency, fromDecimal } from '@colla/money';
import { type OrRefusal, Refusal, refused } from '@colla/refusal';
import { at, type Element } from './xml.ts';

/** Minor units of one currency: what the bank credits is above zero, what it debits below. */
export interface Sum {
  readonly amount: bigint;
  readonly currency: Currency;
}

/**
 * The sum at a path, with the sign that `side` says, an element `CdtDbtInd`. Refuses no sum, a currency that ISO 4217
 * does not list, more decimals than it has, and no side.
 */
export function signedSum(element: Element, path: string, side = at(element, 'CdtDbtInd')): OrRefusal<Sum> {
  const written = at(element, path);
  if (!written) return unclear(element, 'has no sum');
  const of = currency(written.attributes.Ccy ?? '');
  if (refused(of)) return unclear(element, 'has a sum in no currency that ISO 4217 lists');
  const amount = fromDecimal(asDecimal(written.text), of);
  if (refused(amount) || amount < 0n)
    return unclear(element, `has a sum that is none in ${of}: “${written.text.slice(0, 30)}”`);
  const direction = side?.text.trim();
  if (direction !== 'CRDT' && direction !== 'DBIT')
    return unclear(element, 'does not say whether it came in or went out');
  return { amount: direction === 'CRDT' ? amount : -amount, currency: of };
}

/** XML's decimals may have a plus, no figure before or after the point, and zeros at the end: 8.850 is 8.85. */
function asDecimal(text: string): string {
  const [, whole = '', fraction = ''] = /^\+?(\d*)(?:\.(\d*))?$/.exec(text.trim()) ?? [];
  const cut = fraction.replace(/0+$/, '');
  return whole + fraction === '' ? text : `${whole || '0'}${cut && `.${cut}`}`;
}

/** The refusal of a file for one of its parts: `what` completes “The entry in line 12 …”. */
export function unclear({ name, line }: Element, what: string): Refusal {
  const part = { Ntry: 'entry', Bal: 'balance', TxDtls: 'payment' }[name] ?? 'part';
  return new Refusal(
    'bank/unclear-entry',
    `The ${part} in line ${line} ${what}, so nothing of the file was read. Ask your bank for the file again.`,
    { line },
  );
}
