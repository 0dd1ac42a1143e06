// The message catalogue: every text by its key, one file a noun; English is what is written, and what any other
// language falls back to. A text with a count has two forms, chosen by the rules of the locale.
import { sayNumber, spokenLocale } from '../locale.ts';

/** One text: `{name}` stands for a value. With `one` and `other`, `{count}` chooses between them. */
export type Message = string | { readonly one: string; readonly other: string };

export type Values = Readonly<Record<string, string | number>>;

/** The texts of one noun: a function from their keys to what is read on the screen. */
export function words<Key extends string>(english: Readonly<Record<Key, Message>>) {
  return (key: Key, values: Values = {}): string => fill(formOf(english[key], values), values);
}

function formOf(message: Message, { count }: Values): string {
  if (typeof message === 'string') return message;
  return new Intl.PluralRules(spokenLocale()).select(Number(count)) === 'one' ? message.one : message.other;
}

function fill(text: string, values: Values): string {
  return text.replace(/\{(\w+)\}/g, (whole, name: string) => {
    const value = values[name];
    return value === undefined ? whole : typeof value === 'number' ? sayNumber(value) : value;
  });
}
