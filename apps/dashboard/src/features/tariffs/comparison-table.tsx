// Two tariffs on one engagement: clause beside clause, what each charges, and what lies between.
import { type Currency, toDecimal } from '@colla/money';
import type { Tariff } from '@colla/rates';
import { tariffs as say } from '../../catalogue/tariffs.ts';
import { type Column, Figure, Table } from '../../ui/index.ts';
import { aboveBy } from './changes.ts';
import type { Charged, ComparedRow, Comparison } from './comparison.ts';

interface ComparisonTableProps {
  comparison: Comparison;
  one: Tariff;
  other: Tariff;
}

export function ComparisonTable({ comparison, one, other }: ComparisonTableProps) {
  const { rows } = comparison;
  const [first, second] = [comparison.one?.total ?? 0n, comparison.other?.total ?? 0n];
  const mixed = one.currency !== other.currency;
  const columns: Column<ComparedRow>[] = [
    { key: 'clause', head: say('compareClause'), cell: titleOf, sum: say('total') },
    {
      key: 'one',
      head: nameOf(one),
      cell: (row) => <Side charged={row.one} beside={undefined} currency={one.currency} />,
      sum: <Total amount={first} currency={one.currency} />,
    },
    {
      key: 'other',
      head: nameOf(other),
      cell: (row) => <Side charged={row.other} beside={row.one} currency={other.currency} />,
      sum: <Total amount={second} currency={other.currency} />,
    },
  ];
  const between: Column<ComparedRow> = {
    key: 'difference',
    head: say('difference'),
    figure: true,
    cell: (row) => difference(row.one?.amount ?? 0n, row.other?.amount ?? 0n, one.currency),
    sum: difference(first, second, one.currency),
  };
  return (
    <div className="tariff-comparison">
      {mixed && <p className="aside">{say('compareMixed')}</p>}
      <Table
        caption={say('compareTitle')}
        captionUnseen
        columns={mixed ? columns : [...columns, between]}
        rows={rows}
        rowKey={({ key }) => key}
      />
    </div>
  );
}

function nameOf({ name, version }: Tariff): string {
  return `${name} (${version})`;
}

/** What both name it by: its kind. */
function titleOf({ one, other }: ComparedRow): string {
  return [...new Set([one?.title, other?.title])].filter((title) => title !== undefined).join(' · ');
}

interface SideProps {
  charged: Charged | undefined;
  /** What stands on the other side, so that a sentence need not be read twice. */
  beside: Charged | undefined;
  currency: Currency;
}

function Side({ charged, beside, currency }: SideProps) {
  if (!charged) return <span className="aside">{say('noCharge')}</span>;
  const same = charged.sentence === beside?.sentence;
  return (
    <div className="tariff-side">
      <p className={same ? 'aside' : undefined}>{same ? say('saysTheSame') : charged.sentence}</p>
      <Figure amount={toDecimal(charged.amount, currency)} currency={currency} bare />
    </div>
  );
}

function Total({ amount, currency }: { amount: bigint; currency: Currency }) {
  return (
    <div className="tariff-side total">
      <Figure amount={toDecimal(amount, currency)} currency={currency} />
    </div>
  );
}

function difference(one: bigint, other: bigint, currency: Currency) {
  return <Figure amount={aboveBy(other, one, currency)} currency={currency} bare />;
}
