// What is typed about the practice, and what it says to the books.
import type { OrganisationJson, RequestOf } from '@colla/wire';
import { practice } from '../../catalogue/practice.ts';
import { sayNumber } from '../../locale.ts';
import type { TermRow } from './terms.ts';

export interface PracticeForm {
  readonly name: string;
  /** Lines as one text. */
  readonly address: string;
  readonly email: string;
  readonly taxNumber: string;
  readonly payTo: string;
  readonly currency: string;
  readonly zone: string;
  readonly locale: string;
  readonly paper: OrganisationJson['paper'];
  /** Hours, as typed. */
  readonly limit: string;
  readonly holidays: string;
  readonly terms: readonly TermRow[];
}

export type PracticeChange = RequestOf<'changeOrganisation'>['body'];

export function practiceForm(of: OrganisationJson): PracticeForm {
  const { name, currency, zone, locale, paper } = of;
  const hours = of.weeklyLimit / 60;
  return {
    name,
    currency,
    zone,
    locale,
    paper,
    address: of.address.join('\n'),
    email: of.email ?? '',
    taxNumber: of.taxNumber ?? '',
    payTo: of.payTo.join('\n'),
    limit: sayNumber(hours, Number.isInteger(hours) ? 0 : 2),
    holidays: of.holidays.join('\n'),
    terms: of.terms.map((term, key) => ({ key, ...term })),
  };
}

export function practiceChange(form: PracticeForm): PracticeChange {
  const { name, email, taxNumber, currency, zone, locale, paper } = form;
  const minutes = minutesTyped(form.limit);
  return {
    name,
    email: email.trim(),
    taxNumber: taxNumber.trim(),
    currency: currency.trim().toUpperCase(),
    zone: zone.trim(),
    locale: locale.trim(),
    paper,
    address: linesOf(form.address),
    payTo: linesOf(form.payTo),
    holidays: linesOf(form.holidays),
    terms: form.terms.map(({ name, from, to }) => ({ name: name.trim(), from, to })),
    ...(minutes === undefined ? {} : { weeklyLimit: minutes }),
  };
}

/** Why the hours of the limit cannot be read, where they cannot. */
export function limitWrong({ limit }: PracticeForm): string | undefined {
  return minutesTyped(limit) === undefined ? practice('limitWrong', { text: limit }) : undefined;
}

/** Why a locale is none, where it is. */
export function localeWrong({ locale }: PracticeForm): string | undefined {
  try {
    Intl.getCanonicalLocales(locale.trim());
    return locale.trim() === '' ? practice('localeWrong', { text: locale }) : undefined;
  } catch {
    return practice('localeWrong', { text: locale });
  }
}

function minutesTyped(hours: string): number | undefined {
  const typed = /^\s*(\d{1,3})(?:[.,](\d{1,2}))?\s*$/.exec(hours);
  if (!typed) return undefined;
  const minutes = Math.round((Number(`${typed[1]}.${typed[2] ?? 0}`) || 0) * 60);
  return minutes <= 168 * 60 ? minutes : undefined;
}

function linesOf(text: string): string[] {
  return text
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '');
}
