// Amounts of statements that were worked out here: each opens to its whole statement, or to what lies between two. The
// page says how a statement is explained, since features do not know one another.
import { toDecimal } from '@colla/money';
import type { Line, Statement, Tariff } from '@colla/rates';
import type { EngagementWholeJson, OrganisationJson } from '@colla/wire';
import { createContext, type ReactNode, use } from 'react';
import { Amount, summed, takenOff, type Why, WhyView } from '../../ui/index.ts';
import { type Priced, pricedHere } from './priced.ts';

/** How the page explains a statement, and what cancelling everything would leave of it. */
export interface Explain {
  readonly whole: (of: Priced) => Why;
  readonly cancelled: (of: Priced) => Why;
  /** Some of its lines, by their keys. */
  readonly lines: (of: Priced, keys: ReadonlySet<string>) => Why[];
}

const total = ({ statement: { total, currency } }: Priced): Why => ({ what: '', amount: total, currency });
const Explaining = createContext<Explain>({ whole: total, cancelled: total, lines: () => [] });

export function WithExplaining({ how, children }: { how: Explain; children: ReactNode }) {
  return <Explaining value={how}>{children}</Explaining>;
}

/** What a statement was made under, and for whom. */
export interface Under {
  readonly tariff: Tariff;
  readonly engagement: EngagementWholeJson;
  readonly organisation: OrganisationJson;
}

/** Explains a statement as the page does. */
export function useWhole(): Explain['whole'] {
  return use(Explaining).whole;
}

/** Explains statements made under these terms. */
export function useExplaining({ tariff, engagement, organisation }: Under) {
  const { whole, cancelled, lines } = use(Explaining);
  const priced = (statement: Statement) => pricedHere({ tariff, statement }, engagement, organisation);
  return {
    whole: (of: Statement) => whole(priced(of)),
    cancelled: (of: Statement) => cancelled(priced(of)),
    lines: (of: Statement, some: readonly Line[]) => lines(priced(of), new Set(some.map(({ key }) => key))),
  };
}

interface StatementAmountProps {
  what: string;
  of: Statement;
  under: Under;
  /** In a sentence that says what it is. */
  said?: boolean;
}

/** The total of a statement. */
export function StatementAmount({ what, of, under, said = false }: StatementAmountProps) {
  const { whole } = useExplaining(under);
  const { currency } = of;
  const later = () => <WhyView why={{ ...whole(of), what }} />;
  return <Amount why={{ what, amount: toDecimal(of.total, currency), currency, later }} said={said} />;
}

interface DifferenceProps extends StatementAmountProps {
  less: Statement;
  /** What the two are called. */
  names: readonly [of: string, less: string];
}

/** By how much one statement is more than another. */
export function DifferenceAmount({ what, of, less, names, under, said = false }: DifferenceProps) {
  const { whole } = useExplaining(under);
  const { currency } = of;
  const difference = { what, amount: toDecimal(of.total - less.total, currency), currency };
  const later = () => {
    const parts = [{ ...whole(of), what: names[0] }, takenOff({ ...whole(less), what: names[1] })];
    return <WhyView why={summed(difference, parts)} />;
  };
  return <Amount why={{ ...difference, later }} said={said} />;
}

interface LinesProps extends StatementAmountProps {
  lines: readonly Line[];
}

/** What some lines of a statement come to, taken off or asked for: the sum is said without its sign. */
export function LinesAmount({ what, of, lines, under, said = false }: LinesProps) {
  const explaining = useExplaining(under);
  const { currency } = of;
  const sum = lines.reduce((total, { amount }) => total + amount, 0n);
  const total = { what, amount: toDecimal(sum, currency), currency };
  const shown = { ...total, amount: toDecimal(sum < 0n ? -sum : sum, currency) };
  const later = () => <WhyView why={summed(total, explaining.lines(of, lines))} />;
  return <Amount why={{ ...shown, later }} said={said} />;
}
