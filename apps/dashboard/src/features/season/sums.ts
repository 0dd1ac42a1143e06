// What a season comes to: money by currency, minutes by standing.

import type { WeekOfHours } from '@colla/invoicing';
import { currency, fromDecimal, money, toDecimal, total } from '@colla/money';
import { granted } from '@colla/refusal';
import { spokenLocale } from '../../locale.ts';
import { type StaveJson, WORKING, type Working } from './view.ts';

type StaveMoney = StaveJson['money'][number];
type Owing = StaveJson['owing'][number];

/** What is to be had in one currency, as decimal text. */
export interface OwedMoney {
  readonly currency: string;
  readonly toInvoice: string;
  /** Invoiced beyond what is owed now. */
  readonly beyond: string;
  readonly owed: string;
  readonly overdue: string;
}

/** What one payer owes, and the engagements that it comes from. */
export interface PayerOwed extends OwedMoney {
  readonly payer: string;
  readonly name: string;
  readonly from: readonly OwedPart[];
}

/** What one payer owes for one engagement. */
export interface OwedPart extends OwedMoney, Pick<Owing, 'engagement' | 'title' | 'payer' | 'payerName'> {}

/** Who owes something, by name and currency, whatever stave it stands on. */
export function payersIn(staves: readonly StaveJson[]): PayerOwed[] {
  const all = staves.flatMap(({ owing }) => owing);
  return grouped(all, ({ payer, payerName, currency }) => `${payer || payerName} ${currency}`)
    .flatMap((parts) => {
      const [first] = parts;
      if (!first) return [];
      return [{ payer: first.payer, name: first.payerName, from: parts.map(partOf), ...sumOf(parts) }];
    })
    .sort((a, b) => a.name.localeCompare(b.name, spokenLocale()));
}

/** What stands open between each payer and each engagement of one stave. */
export function partsOf({ owing }: StaveJson): OwedPart[] {
  return owing.map(partOf);
}

function partOf({ engagement, title, payer, payerName, ...part }: Owing): OwedPart {
  return { engagement, title, payer, payerName, ...sumOf([part]) };
}

/** The staves' money added up, one sum a currency. */
export function moneyIn(staves: readonly StaveJson[]): OwedMoney[] {
  const all = staves.flatMap(({ owing }) => owing);
  return grouped(all, ({ currency }) => currency).map(sumOf);
}

/** What has the same key, together, in the order in which each key first comes. */
export function grouped<Of>(all: readonly Of[], by: (one: Of) => string): Of[][] {
  const groups = new Map<string, Of[]>();
  for (const one of all) groups.set(by(one), [...(groups.get(by(one)) ?? []), one]);
  return [...groups.values()];
}

/** Parts in one currency, added up; what was asked too much of one payer is told apart from what is left to ask. */
function sumOf(parts: readonly StaveMoney[]): OwedMoney {
  const code = parts[0]?.currency ?? '';
  const sum = (amounts: readonly string[]) => summedUp(amounts, code);
  const asked = parts.map(({ toInvoice }) => toInvoice);
  const beyond = asked.filter(isBelowNought).map((amount) => amount.slice(1));
  return {
    currency: code,
    toInvoice: sum(asked.filter((amount) => !isBelowNought(amount))),
    beyond: sum(beyond),
    owed: sum(parts.map(({ owed }) => owed)),
    overdue: sum(parts.map(({ overdue }) => overdue)),
  };
}

function isBelowNought(amount: string): boolean {
  return amount.startsWith('-');
}

/** Decimal text of one currency, added up to the cent. */
export function summedUp(amounts: readonly string[], code: string): string {
  const of = granted(currency(code));
  const parts = amounts.map((amount) => money(granted(fromDecimal(amount, of)), of));
  return toDecimal(total(parts, of).amount, of);
}

/** Whether there is anything to ask for, or something to give back. */
export function isOwing({ toInvoice, beyond, owed }: OwedMoney): boolean {
  return isSome(toInvoice) || isSome(beyond) || isSome(owed);
}

/** Whether an amount is not nought. */
export function isSome(amount: string): boolean {
  return /[1-9]/.test(amount);
}

export function minutesByStanding(weeks: readonly WeekOfHours[]): Record<Working, number> {
  const sum = (is: Working) => weeks.reduce((minutes, week) => minutes + week[is], 0);
  return Object.fromEntries(WORKING.map((is) => [is, sum(is)])) as Record<Working, number>;
}
