// What a payer's bank reads from the square on a euro invoice: the payload of the European Payments Council's
// guideline EPC069-12 (version 2.1, 9 February 2012), “Quick Response Code: Guidelines to enable data capture for
// the initiation of a SEPA credit transfer”.

import { currency, toDecimal } from '@colla/money';
import { granted, type OrRefusal, Refusal } from '@colla/refusal';
import type { CreditorReference } from './creditor-reference.ts';
import type { Iban } from './iban.ts';

/** A transfer that a payer is asked for. */
export interface CreditTransfer {
  readonly name: string;
  readonly iban: Iban;
  /** In cents of a euro. */
  readonly cents: bigint;
  readonly reference: CreditorReference;
}

const EURO = granted(currency('EUR'));
/** The most that the guideline can ask for, 999 999 999.99. */
const MOST = 99_999_999_999n;
const NAME_LENGTH = 70;
/** What a symbol of version 13, the largest allowed, holds. */
const PAYLOAD_BYTES = 331;

/**
 * The lines of the payload, version 002, in UTF-8: no bank code is needed within the European Economic Area, and the
 * structured reference leaves the free text empty. Refuses an amount below 0.01 or above 999 999 999.99, and nobody's
 * name. A name is cut after 70 characters, or where the payload would pass 331 bytes, as the guideline allows no more.
 */
export function scanToPay({ name, iban, cents, reference }: CreditTransfer): OrRefusal<string> {
  if (cents < 1n || cents > MOST) {
    return new Refusal('bank/not-to-scan', 'A transfer by scanning is from 0.01 to 999 999 999.99 euro.', {
      cents: String(cents),
    });
  }
  if (name.trim() === '') {
    return new Refusal(
      'bank/not-to-scan',
      'A transfer by scanning names who is paid. Enter the name of the account.',
    );
  }
  const payload = (name: string) =>
    ['BCD', '002', '1', 'SCT', '', name, iban, `EUR${toDecimal(cents, EURO)}`, '', reference].join('\n');
  return payload(cut(name, PAYLOAD_BYTES - bytesOf(payload(''))));
}

/** The name on one line, with as many of its characters as fit. */
function cut(name: string, bytes: number): string {
  const signs = [...name.replace(/\s+/g, ' ').trim()].slice(0, NAME_LENGTH);
  while (bytesOf(signs.join('')) > bytes) signs.pop();
  return signs.join('').trimEnd();
}

/** The length of a text in UTF-8. */
function bytesOf(text: string): number {
  return [...text].reduce((sum, sign) => sum + bytesOfSign(sign.codePointAt(0) ?? 0), 0);
}

function bytesOfSign(point: number): number {
  if (point < 0x80) return 1;
  if (point < 0x800) return 2;
  return point < 0x10000 ? 3 : 4;
}
