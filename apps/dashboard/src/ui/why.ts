// Why an amount is what it is: the terms, the facts, the arithmetic, and the amounts it is put together from.
import type { ReactNode } from 'react';
import { why as say } from '../catalogue/why.ts';
import { sayFigure, sayMoney } from '../locale.ts';

/** Plain words, ready to be shown, read aloud, or copied to answer a dispute. */
export interface Why {
  readonly what: string;
  /** Decimal text of the wire, `-45.00`. */
  readonly amount: string;
  readonly currency: string;
  /** The clause as it was agreed. */
  readonly sentence?: string | undefined;
  /** What it is for: calls, by name. */
  readonly about?: readonly string[];
  readonly facts?: readonly string[];
  readonly arithmetic?: string | undefined;
  readonly parts?: readonly Why[];
  /** Where more of it stands. */
  readonly more?: { readonly to: string; readonly label: string };
  /** What it opens to, where that has to be asked for first; a `WhyView` in the end. */
  readonly later?: () => ReactNode;
}

/** The whole explanation as plain sentences, a line each; what an amount is put together from stands indented. */
export function whyText(of: Why): string {
  return linesOf(of).join('\n');
}

function linesOf({ what, amount, currency, sentence, about = [], facts = [], arithmetic, parts = [] }: Why) {
  const lines = [say('textHead', { what, amount: sayMoney(amount, currency) })];
  if (sentence) lines.push(say('textSentence', { sentence }));
  if (about.length > 0) lines.push(say('textAbout', { about: about.join('; ') }));
  if (facts.length > 0) lines.push(say('textFacts', { facts: facts.join('; ') }));
  if (arithmetic) lines.push(say('textArithmetic', { arithmetic }));
  if (parts.length === 0) return lines;
  const within = parts.flatMap((part): string[] => linesOf(part).map(indented));
  return [...lines, say('textParts'), ...within];
}

function indented(line: string, at: number): string {
  return at === 0 ? `– ${line}` : `  ${line}`;
}

/** More amounts than this are not written in one row: they stand one below the other anyway. */
const IN_ONE_ROW = 8;

/** “75.00 + 90.00 − 20.00 = 145.00”; of many, how many they are; nothing where there is nothing to add up. */
export function addedUp(parts: readonly Pick<Why, 'amount'>[], total: Pick<Why, 'amount' | 'currency'>) {
  if (parts.length < 2) return undefined;
  const figure = (amount: string) => sayFigure(amount, total.currency);
  if (parts.length > IN_ONE_ROW) return say('sumOf', { count: parts.length, total: figure(total.amount) });
  const row = parts.map(({ amount }, at) => {
    if (at === 0) return figure(amount);
    return amount.startsWith('-') ? `\u2212 ${figure(amount.slice(1))}` : `+ ${figure(amount)}`;
  });
  return `${row.join(' ')} = ${figure(total.amount)}`;
}

/** An amount that is put together from others. */
export function summed(total: Why, parts: readonly Why[]): Why {
  return { ...total, arithmetic: addedUp(parts, total), parts };
}

/** The same amount taken off: with the other sign. Nought has none. */
export function takenOff(why: Why): Why {
  if (why.amount.startsWith('-')) return { ...why, amount: why.amount.slice(1) };
  return /[1-9]/.test(why.amount) ? { ...why, amount: `-${why.amount}` } : why;
}

/** What the one thing is that an amount is for, without the words that name the amount already: “Tue 3 Mar”. */
export function aboutOnly({ what, about = [] }: Pick<Why, 'what' | 'about'>): string | undefined {
  const [only, ...others] = about;
  if (only === undefined || others.length > 0) return undefined;
  const spoken = `${what}, `;
  return only.startsWith(spoken) ? only.slice(spoken.length) : only;
}

/** A fact as it is said: “played 1.25 h”; what was judged is a sentence by itself. */
export function sayFact({ name, value }: { readonly name: string; readonly value: string }): string {
  return name === 'why' ? value : `${name} ${value}`;
}
