// One entry of a camt.053 message: a booking, or the several payments that the bank booked together.

import { readDay, type Temporal } from '@colla/calendar';
import { type OrRefusal, refused } from '@colla/refusal';
import { type Sum, signedSum, unclear } from './camt-sum.ts';
import type { Movement } from './entry.ts';
import { all, at, type Element, textAt } from './xml.ts';

/**
 * The movements of an entry `Ntry`: each of its payments where the bank tells what each came to and they add up to the
 * entry, else the entry as one. Refuses an entry without a sum, a side or a day.
 */
export function movementsOf(entry: Element): OrRefusal<Movement[]> {
  const sum = signedSum(entry, 'Amt');
  if (refused(sum)) return sum;
  const on = bookedOn(entry);
  if (refused(on)) return on;
  const parts = all(entry, 'NtryDtls/TxDtls');
  const sums = parts.length > 1 ? sumsOf(parts, entry, sum) : undefined;
  if (!sums) return [movement({ entry, parts, on, sum })];
  return parts.map((part, place) => movement({ entry, parts: [part], on, sum: sums[place] ?? sum }));
}

/** The day of booking, on the bank's own calendar; where only that is told, the day from which interest counts. */
function bookedOn(entry: Element): OrRefusal<Temporal.PlainDate> {
  const days = ['BookgDt/Dt', 'BookgDt/DtTm', 'ValDt/Dt', 'ValDt/DtTm'];
  const told = days.map((path) => textAt(entry, path)).find((text) => text !== undefined);
  if (told === undefined) return unclear(entry, 'has no day');
  const day = readDay(told.slice(0, 10));
  return refused(day) ? unclear(entry, `has no day that exists: “${told.slice(0, 30)}”`) : day;
}

/** What each payment of several comes to; nothing where they do not add up to the entry, as after charges. */
function sumsOf(parts: readonly Element[], entry: Element, whole: Sum): Sum[] | undefined {
  const sums: Sum[] = [];
  for (const part of parts) {
    const side = at(part, 'CdtDbtInd') ?? at(entry, 'CdtDbtInd');
    // Version 02 has what a payment came to only among the details of its sum.
    const sum = signedSum(part, at(part, 'Amt') ? 'Amt' : 'AmtDtls/TxAmt/Amt', side);
    if (refused(sum) || sum.currency !== whole.currency) return undefined;
    sums.push(sum);
  }
  return sums.reduce((total, { amount }) => total + amount, 0n) === whole.amount ? sums : undefined;
}

interface Booked {
  readonly entry: Element;
  readonly parts: readonly Element[];
  readonly on: Temporal.PlainDate;
  readonly sum: Sum;
}

function movement({ entry, parts, on, sum }: Booked): Movement {
  const reversal = isReversal(entry, parts);
  const name = joined(parts.flatMap((part) => namesIn(part, otherSide(sum, reversal))));
  const words = parts.flatMap(wordsIn).join(' ') || textAt(entry, 'AddtlNtryInf') || '';
  const references = parts.flatMap(referencesIn);
  const endToEnd = joined(parts.flatMap((part) => given(textAt(part, 'Refs/EndToEndId'))));
  const bankId = joined([...given(textAt(entry, 'AcctSvcrRef')), ...parts.flatMap(bankIdsIn)]);
  return {
    entry: {
      on,
      ...sum,
      ...(name && { name }),
      words,
      references,
      ...(endToEnd && { endToEnd }),
      ...(bankId && { bankId }),
      reversal,
    },
    told: bankId ? [bankId] : [name, words, references.join(' '), endToEnd],
  };
}

/** Undone by the bank, or sent back with a reason by the other side's. */
function isReversal(entry: Element, parts: readonly Element[]): boolean {
  const told = textAt(entry, 'RvslInd');
  return told === 'true' || told === '1' || parts.some((part) => at(part, 'RtrInf') !== undefined);
}

/** Who the other side is: the debtor of what came in. Of a reversal the parties are those of the first movement. */
function otherSide({ amount }: Sum, reversal: boolean): 'Dbtr' | 'Cdtr' {
  return amount > 0n !== reversal ? 'Dbtr' : 'Cdtr';
}

/** The other side of a payment, and for whom it paid. Since version 08 a party lies one element deeper. */
function namesIn(part: Element, side: 'Dbtr' | 'Cdtr'): string[] {
  return [`RltdPties/${side}`, `RltdPties/Ultmt${side}`].flatMap((path) =>
    given(textAt(part, `${path}/Nm`) ?? textAt(part, `${path}/Pty/Nm`)),
  );
}

function wordsIn(part: Element): string[] {
  const written = [...textsOf(part, 'RmtInf/Ustrd'), ...textsOf(part, 'RmtInf/Strd/AddtlRmtInf')];
  return written.length > 0 ? written : given(textAt(part, 'AddtlTxInf'));
}

function referencesIn(part: Element): string[] {
  return [...textsOf(part, 'RmtInf/Strd/CdtrRefInf/Ref'), ...textsOf(part, 'RmtInf/Strd/RfrdDocInf/Nb')];
}

function bankIdsIn(part: Element): string[] {
  return [...given(textAt(part, 'Refs/AcctSvcrRef')), ...given(textAt(part, 'Refs/TxId'))];
}

function textsOf(part: Element, path: string): string[] {
  return all(part, path).flatMap(({ text }) => given(text.replace(/\s+/g, ' ').trim()));
}

/** Nothing where the text is what banks write into an element that must be filled. */
function given(text: string | undefined): string[] {
  return !text || /^(NOT ?PROVIDED|NOT ?AVAILABLE|NONREF)$/i.test(text) ? [] : [text];
}

function joined(texts: readonly string[]): string {
  return [...new Set(texts)].join(', ');
}
