// What a tax is reckoned on and comes to: added or inside the price, beside others or on top of them.

import { divideRounded } from '@colla/money';
import { groupsOf } from './groups.ts';
import type { Line } from './line.ts';
import type { Voice } from './voice.ts';

/** What a tax is on: of a line, what one clause charges (a cancellation's line may stand for several). */
export interface Charged {
  readonly line: Line;
  readonly clause: string;
  readonly amount: bigint;
}

/** A tax, and the charges that its clause puts it on. */
export interface Levy {
  readonly clause: string;
  readonly name: string;
  /** Basis points, to the hundredth. */
  readonly rate: number;
  readonly code: string;
  readonly inside: boolean;
  readonly rounding: 'per total' | 'per line';
  readonly wording?: string | undefined;
  /** The clauses of the taxes that are taxed with it. */
  readonly onTopOf: readonly string[];
  /** Of several rates of one tax that of the lowest figure has its charges, and leaves the others the rest. */
  readonly closeness: number;
  /** Whether there may be charges that it is not on. */
  readonly limited: boolean;
  readonly charges: readonly Charged[];
}

/** What tells one charge from another. */
export function idOf({ line, clause }: Charged): string {
  return `${line.key} ${clause}`;
}

/** What a tax comes to on some charges, rounded line by line or once. */
export function taxOn(levy: Levy, charges: readonly Charged[], taxes: readonly Levy[]): bigint {
  const documents =
    levy.rounding === 'per line' ? [...groupsOf(charges, ({ line }) => line).values()] : [charges];
  return documents.reduce((sum, some) => sum + taxOnce(levy, some, taxes), 0n);
}

function taxOnce(levy: Levy, charges: readonly Charged[], taxes: readonly Levy[]): bigint {
  if (levy.inside) return insideOf(levy, charges, taxes);
  return divideRounded(taxedOf(levy, charges, taxes) * millionths(levy), MILLION);
}

/** What a tax is on: where it is inside the price, what is left of it. */
export function baseOf(levy: Levy, charges: readonly Charged[], taxes: readonly Levy[]): bigint {
  if (!levy.inside) return taxedOf(levy, charges, taxes);
  return sumOf(charges) - othersInside(levy, charges, taxes) - taxOn(levy, charges, taxes);
}

/** What an added tax is reckoned on: the charges, and the taxes that are taxed with it. */
function taxedOf(levy: Levy, charges: readonly Charged[], taxes: readonly Levy[]): bigint {
  return under(levy, taxes).reduce(
    (sum, other) => sum + taxOn(other, onBoth(charges, other), taxes),
    sumOf(charges),
  );
}

/** The taxes that are taxed with this one. */
function under({ onTopOf, inside }: Levy, taxes: readonly Levy[]): Levy[] {
  return taxes.filter((other) => onTopOf.includes(other.clause) && other.inside === inside);
}

/** Of some charges those that another tax is on as well. */
function onBoth(charges: readonly Charged[], other: Levy): Charged[] {
  const theirs = new Set(other.charges.map(idOf));
  return charges.filter((charge) => theirs.has(idOf(charge)));
}

/** The taxes inside the same prices that this one is not reckoned on top of: they are no part of its base. */
function othersInside(levy: Levy, charges: readonly Charged[], taxes: readonly Levy[]): bigint {
  const others = taxes.filter(
    (other) => other.inside && other !== levy && !levy.onTopOf.includes(other.clause),
  );
  return others.reduce((sum, other) => sum + taxOn(other, onBoth(charges, other), taxes), 0n);
}

/** Tax contained in some prices, rounded once: of 120.00 with 20 % inside, 20.00 (HMRC's VAT fraction, 1/6). */
function insideOf(levy: Levy, charges: readonly Charged[], taxes: readonly Levy[]): bigint {
  let [of, parts] = [0n, 1n];
  for (const { price, inside } of priced(charges, taxes)) {
    const whole = wholeOf(inside);
    of = of * whole + price * shareOf(levy, inside) * parts;
    parts *= whole;
  }
  return divideRounded(of, parts);
}

/** Prices that have the same taxes inside. */
interface Priced {
  readonly price: bigint;
  readonly inside: readonly Levy[];
}

function priced(charges: readonly Charged[], taxes: readonly Levy[]): Priced[] {
  const inside = taxes.filter((tax) => tax.inside);
  const ids = inside.map((tax) => new Set(tax.charges.map(idOf)));
  const insideIn = (charge: Charged) => inside.filter((_, index) => ids[index]?.has(idOf(charge)));
  const groups = groupsOf(charges, (charge) =>
    insideIn(charge)
      .map(({ clause }) => clause)
      .join(),
  );
  return [...groups.values()].map((group) => ({
    price: sumOf(group),
    inside: group[0] ? insideIn(group[0]) : [],
  }));
}

/** What a tax adds to a price of one, in parts of `ONE`, beside others inside the same price. */
function shareOf(levy: Levy, inside: readonly Levy[]): bigint {
  const taxed = under(levy, inside).reduce((sum, other) => sum + shareOf(other, inside), ONE);
  return (taxed * millionths(levy)) / MILLION;
}

/** A price of one with all that is inside, in parts of `ONE`. */
function wholeOf(inside: readonly Levy[]): bigint {
  return inside.reduce((sum, levy) => sum + shareOf(levy, inside), ONE);
}

const MILLION = 1_000_000n;

/** Fine enough for four taxes on top of one another, each to the millionth, without rounding. */
const ONE = MILLION ** 4n;

function millionths({ rate }: Levy): bigint {
  return BigInt(Math.round(rate * 100));
}

function sumOf(charges: readonly Charged[]): bigint {
  return charges.reduce((sum, { amount }) => sum + amount, 0n);
}

/** “20 % × 45.00”, “9.5 % × (45.00 + 2.25)”, “120.00 × 20 / 120”. */
export function sayHow(
  levy: Levy,
  charges: readonly Charged[],
  { taxes, voice }: { taxes: readonly Levy[]; voice: Voice },
): string {
  const lines = new Set(charges.map(({ line }) => line)).size;
  const byLine = levy.rounding === 'per line' && lines > 1 ? ', line by line' : '';
  const how = levy.inside ? sayInside(levy, charges, taxes, voice) : sayAdded(levy, charges, taxes, voice);
  return how + byLine;
}

function sayInside(levy: Levy, charges: readonly Charged[], taxes: readonly Levy[], voice: Voice): string {
  const parts = priced(charges, taxes).map(({ price, inside }) => {
    const [share, whole] = [shareOf(levy, inside), wholeOf(inside)].map((of) => voice.number(inPercent(of)));
    return `${voice.money(price)} × ${share} / ${whole}`;
  });
  return parts.join(' + ');
}

function sayAdded(levy: Levy, charges: readonly Charged[], taxes: readonly Levy[], voice: Voice): string {
  const others = under(levy, taxes).map((other) => taxOn(other, onBoth(charges, other), taxes));
  const base = [sumOf(charges), ...others].map((amount) => voice.money(amount)).join(' + ');
  return `${voice.share(levy.rate)} × ${others.length > 0 ? `(${base})` : base}`;
}

/** Parts of `ONE` as plain per cent: `9.975`. */
function inPercent(of: bigint): string {
  const digits = 22;
  const figures = of.toString().padStart(digits + 1, '0');
  const decimals = figures.slice(-digits).replace(/0+$/, '');
  return figures.slice(0, -digits) + (decimals && `.${decimals}`);
}
