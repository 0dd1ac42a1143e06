// What the rows of rates are held against: one tariff of twelve clauses as data, and the very same sums by
// straight-line code that knows this tariff only and explains nothing.
import { dayNumber, type Temporal } from '@colla/calendar';
import type { Call } from '@colla/hours';
import { currency } from '@colla/money';
import { type Facts, readTariff, type Tariff } from '@colla/rates';
import { granted } from '@colla/refusal';

export const tariff: Tariff = granted(
  readTariff({
    name: 'Twelve clauses',
    currency: granted(currency('GBP')),
    version: 1,
    from: '2026-01-01',
    clauses: [
      { id: 'hours', kind: 'hourly', for: { calls: ['rehearsal', 'lesson'] }, terms: { price: '61.30' } },
      { id: 'exam', kind: 'fixed', for: { calls: ['exam'] }, terms: { price: '84.00' } },
      {
        id: 'recital',
        kind: 'fixed',
        for: { calls: ['recital'] },
        terms: { price: '245.00', includes: 60, beyond: { price: '90.00', increment: 30 } },
      },
      {
        id: 'covered',
        kind: 'entitlement',
        payer: 'department',
        for: { calls: ['lesson'] },
        terms: { minutes: 90, price: '35.00' },
      },
      {
        id: 'sunday',
        kind: 'supplement',
        for: { days: ['sunday', 'public holiday'] },
        terms: { what: 'Sunday', by: { as: 'amount', amount: '25.00' } },
      },
      {
        id: 'student',
        kind: 'discount',
        for: { pianists: ['student'] },
        terms: { what: 'Student pianist', by: { as: 'share', share: 2500 } },
      },
      { id: 'week', kind: 'limit', terms: { on: ['hours'], each: 'week', most: '150.00' } },
      { id: 'way', kind: 'travel', terms: { perUnit: '0.45' } },
      { id: 'costs', kind: 'cost', terms: { handling: 1000 } },
      {
        id: 'notice',
        kind: 'cancellation',
        terms: {
          scale: [
            { before: 48, owes: { owes: 'nothing' } },
            { before: 24, owes: { owes: 'share', share: 5000 } },
          ],
          otherwise: { owes: 'all' },
        },
      },
      {
        id: 'deposit',
        kind: 'deposit',
        terms: { of: { as: 'share', share: 2500 }, due: [{ event: 'agreement', days: 3 }] },
      },
      { id: 'vat', kind: 'tax', terms: { name: 'VAT', rate: 2000 } },
    ],
  }),
);

const DAY = 86_400_000;

/** The sums of a statement: what each payer owes, the deposit, and the total if all that can fall fell now. */
export interface Sums {
  readonly payer: bigint;
  readonly department: bigint;
  readonly total: bigint;
  readonly deposit: bigint;
  readonly ifCancelled: bigint | undefined;
}

/** The statement's sums under `tariff`, as one would write them for it alone. Each call's times are read once. */
export function straightSums(facts: Facts, asOf: Temporal.ZonedDateTime): Sums {
  const calls = facts.calls.map((call) => read(call, facts)).sort((a, b) => a.start - b.start);
  const at = asOf.epochMilliseconds;
  const now = straight(calls, facts, { asAgreed: false });
  return {
    payer: now.payer,
    department: now.department,
    total: now.payer + now.department,
    deposit: rounded(straight(calls, facts, { asAgreed: true }).fee * 2500n, 10_000n),
    ifCancelled: calls.some((call) => call.agreed && call.start > at)
      ? totalOf(straight(calls, facts, { asAgreed: false, fallsAt: at }))
      : undefined,
  };
}

function totalOf({ payer, department }: { payer: bigint; department: bigint }): bigint {
  return payer + department;
}

interface ReadCall {
  readonly kind: string;
  readonly start: number;
  readonly planned: number;
  readonly played: number;
  readonly agreed: boolean;
  readonly word: number | undefined;
  readonly sunday: boolean;
  readonly monday: number;
  /** Days since 1970 at the place, and how far its clock is ahead, in milliseconds. */
  readonly day: number;
  readonly ahead: number;
}

function read({ kind, planned, standing }: Call, { holidays }: Facts): ReadCall {
  const start = planned.start.epochMilliseconds;
  const minutes = (planned.end.epochMilliseconds - start) / 60_000;
  const played =
    standing.is === 'played'
      ? (standing.times.end.epochMilliseconds - standing.times.start.epochMilliseconds) / 60_000
      : minutes;
  const day = planned.start.toPlainDate();
  const dayOfWeek = day.dayOfWeek;
  const ahead = planned.start.offsetNanoseconds / 1_000_000;
  return {
    kind,
    start,
    planned: minutes,
    played,
    agreed: standing.is === 'agreed',
    word: standing.is === 'cancelled' ? standing.at.epochMilliseconds : undefined,
    sunday: dayOfWeek === 7 || holidays.has(day.toString()),
    monday: Math.floor((start + ahead) / DAY) - dayOfWeek,
    day: Math.floor((start + ahead) / DAY),
    ahead,
  };
}

/** The sums with everything agreed fallen at `fallsAt`, if given; or with every call as it was agreed. */
function straight(
  calls: readonly ReadCall[],
  facts: Facts,
  { asAgreed, fallsAt }: { asAgreed: boolean; fallsAt?: number },
) {
  const student = facts.pianistClass === 'student';
  let net = 0n;
  let left = 90;
  let week = 0;
  let inWeek = 0n;
  for (const call of calls) {
    const falls = fallsAt !== undefined && call.agreed && call.start > fallsAt;
    const word = asAgreed ? undefined : falls ? fallsAt : call.word;
    const share = word === undefined ? 10_000n : shareOwed(call.start - word);
    if (share === 0n) continue;
    const minutes = asAgreed ? call.planned : call.played;
    const covered = call.kind === 'lesson' ? Math.min(left, minutes) : 0;
    left -= covered;
    const fee = feeOf(call.kind, minutes, covered, student);
    const all = call.sunday ? fee + 2500n - off(2500n, student) : fee;
    const owed = word === undefined ? all : rounded(all * share, 10_000n);
    net += owed;
    if (call.kind !== 'rehearsal' && call.kind !== 'lesson') continue;
    if (call.monday !== week) {
      if (inWeek > 15_000n) net -= inWeek - 15_000n;
      inWeek = 0n;
    }
    week = call.monday;
    // What a late cancellation leaves of an hour and its Sunday is for the hours in proportion.
    inWeek += word === undefined || all === 0n ? fee : rounded(owed * fee, all);
  }
  if (inWeek > 15_000n) net -= inWeek - 15_000n;
  const forHours = rounded(3500n * BigInt(90 - left), 60n);
  const department = forHours - off(forHours, student);
  const fee = net + department;
  for (const { on, distance } of facts.legs) {
    const day = dayNumber(on.toString());
    const there = calls.filter((call) => call.day === day);
    const made = there.length === 0 || there.some((call) => !fellBefore(call, day, fallsAt));
    if (made) net += rounded(45n * BigInt(distance.thousandths), 1000n);
  }
  for (const { amount } of facts.costs) net += rounded(amount * 11_000n, 10_000n);
  return {
    fee,
    payer: net + rounded(net * 2000n, 10_000n),
    department: department + rounded(department * 2000n, 10_000n),
  };
}

function fellBefore({ agreed, start, word, ahead }: ReadCall, day: number, fallsAt: number | undefined) {
  const at = fallsAt !== undefined && agreed && start > fallsAt ? fallsAt : word;
  return at !== undefined && Math.floor((at + ahead) / DAY) < day;
}

function feeOf(kind: string, minutes: number, covered: number, student: boolean): bigint {
  if (kind === 'exam') return 8400n - off(8400n, student);
  if (kind === 'recital') {
    const beyond = rounded(9000n * BigInt(Math.ceil(Math.max(0, minutes - 60) / 30) * 30), 60n);
    return 24_500n - off(24_500n, student) + beyond - off(beyond, student);
  }
  const hours = rounded(6130n * BigInt(Math.ceil((minutes - covered) / 15) * 15), 60n);
  return hours - off(hours, student);
}

function shareOwed(notice: number): bigint {
  return notice >= 172_800_000 ? 0n : notice >= 86_400_000 ? 5000n : 10_000n;
}

function off(fee: bigint, student: boolean): bigint {
  return student ? rounded(fee * 2500n, 10_000n) : 0n;
}

function rounded(numerator: bigint, denominator: bigint): bigint {
  return (numerator + denominator / 2n) / denominator;
}
