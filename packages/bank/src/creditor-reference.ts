// The payer's reference on an invoice: a creditor reference of ISO 11649, which a bank carries through whole and
// whose check figures find a slip of the pen.

import { type OrRefusal, Refusal } from '@colla/refusal';
import { compact, mod97 } from './check.ts';

/** `RF`, two check figures, and one to 21 letters and figures; without spaces. */
export type CreditorReference = string & { readonly creditorReference: true };

const FORM = /^RF\d\d[0-9A-Z]{1,21}$/;

/**
 * The creditor reference of a document's number, of which only letters and figures count: `2026-0042` gives
 * `RF88 2026 0042`. Refuses a number without any, or with more than 21.
 */
export function creditorReference(number: string): OrRefusal<CreditorReference> {
  const payload = compact(number).replace(/[^0-9A-Z]/g, '');
  if (payload.length < 1 || payload.length > 21) {
    return new Refusal(
      'bank/no-reference',
      `“${number}” cannot be made a payment reference: that takes 1 to 21 letters and figures.`,
      { number },
    );
  }
  const check = 98 - mod97(`${payload}RF00`);
  return `RF${String(check).padStart(2, '0')}${payload}` as CreditorReference;
}

/** Reads one as printed or typed. Refuses another form, and check figures that do not agree. */
export function readCreditorReference(printed: string): OrRefusal<CreditorReference> {
  const text = compact(printed);
  if (isReference(text)) return text;
  const shown = printed.trim().slice(0, 40);
  const why = FORM.test(text)
    ? 'the check figures after RF do not agree with the rest'
    : 'that is RF, two check figures, and up to 21 letters and figures';
  return new Refusal(
    'bank/not-a-reference',
    `“${shown}” is not a creditor reference: ${why}. Compare it with the document.`,
    { printed: shown },
  );
}

function isReference(compact: string): compact is CreditorReference {
  return FORM.test(compact) && mod97(compact.slice(4) + compact.slice(0, 4)) === 1;
}

/**
 * The creditor references in a text that a payer or a bank wrote: whole words of it, run together, whose check figures
 * agree. One in 97 agrees by chance where further words follow, so there may be more than were meant: the one that an
 * invoice carries is right.
 */
export function creditorReferencesIn(text: string): CreditorReference[] {
  const words = text.toUpperCase().match(/[0-9A-Z]+/g) ?? [];
  const found = words.flatMap((word, at) => (word.startsWith('RF') ? beginningWith(words.slice(at)) : []));
  return [...new Set(found)];
}

const LONGEST = 25;

function beginningWith(words: readonly string[]): CreditorReference[] {
  const found: CreditorReference[] = [];
  let soFar = '';
  for (const word of words) {
    soFar += word;
    if (soFar.length > LONGEST) return found;
    if (isReference(soFar)) found.push(soFar);
  }
  return found;
}
