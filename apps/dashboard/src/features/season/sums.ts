// What a season comes to: money by currency, minutes by standing.
import { type Currency, currency, fromDecimal, money, toDecimal, total } from '@colla/money';
import { granted } from '@colla/refusal';
import { type StaveJson, type WeekInView, WORKING, type Working } from './view.ts';

export type StaveMoney = StaveJson['money'][number];

/** The staves' money added up, one sum a currency, as decimal text. */
export function moneyIn(staves: readonly StaveJson[]): StaveMoney[] {
  const all = staves.flatMap((stave) => stave.money);
  return [...new Set(all.map((each) => each.currency))].map((code) => {
    const of = granted(currency(code));
    const parts = all.filter((each) => each.currency === code);
    const sum = (name: 'toInvoice' | 'owed' | 'overdue') =>
      added(
        parts.map((each) => each[name]),
        of,
      );
    return { currency: code, toInvoice: sum('toInvoice'), owed: sum('owed'), overdue: sum('overdue') };
  });
}

function added(amounts: readonly string[], of: Currency): string {
  const parts = amounts.map((amount) => money(granted(fromDecimal(amount, of)), of));
  return toDecimal(total(parts, of).amount, of);
}

/** Whether there is anything to ask for. */
export function isOwing({ toInvoice, owed }: StaveMoney): boolean {
  return isSome(toInvoice) || isSome(owed);
}

/** Whether an amount is not nought. */
export function isSome(amount: string): boolean {
  return /[1-9]/.test(amount);
}

export function minutesByStanding(weeks: readonly WeekInView[]): Record<Working, number> {
  const sum = (is: Working) => weeks.reduce((minutes, week) => minutes + week[is], 0);
  return Object.fromEntries(WORKING.map((is) => [is, sum(is)])) as Record<Working, number>;
}
