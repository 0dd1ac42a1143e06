// The number of a bank account as ISO 13616 writes it.

import { type OrRefusal, Refusal } from '@colla/refusal';
import { ValidationErrorsIBAN, validateIBAN } from 'ibantools';
import { compact } from './check.ts';

/** Country, two check figures and the account within its country; without spaces. */
export type Iban = string & { readonly iban: true };

/** Reads one as printed or typed. Refuses by what is wrong: country, length, form or check figures. */
export function readIban(printed: string): OrRefusal<Iban> {
  const text = compact(printed);
  const { valid, errorCodes } = validateIBAN(text);
  if (valid) return text as Iban;
  const shown = printed.trim().slice(0, 40);
  return new Refusal('bank/not-an-iban', `“${shown}” is not an IBAN: ${whyNot(errorCodes, text)}.`, {
    printed: shown,
  });
}

function whyNot(errors: readonly ValidationErrorsIBAN[], text: string): string {
  const country = text.slice(0, 2);
  if (
    errors.includes(ValidationErrorsIBAN.NoIBANProvided) ||
    errors.includes(ValidationErrorsIBAN.NoIBANCountry)
  )
    return 'it begins with no country that has them. Copy it from a statement of your bank';
  if (errors.includes(ValidationErrorsIBAN.WrongBBANLength))
    return `it has ${text.length} letters and figures, which is not the length of ${country}. Look for one missing or twice`;
  if (errors.includes(ValidationErrorsIBAN.WrongBBANFormat))
    return `a letter stands where ${country} has a figure, or the other way. Compare it with a statement of your bank`;
  return 'its check figures do not agree with the rest. Look for two exchanged figures';
}

/** Whether a line of text means to be an IBAN, right or wrong: two letters, two figures, and at least eleven more. */
export function looksLikeIban(line: string): boolean {
  return /^[A-Z]{2}\d{2}[0-9A-Z]{11,30}$/.test(compact(line));
}
