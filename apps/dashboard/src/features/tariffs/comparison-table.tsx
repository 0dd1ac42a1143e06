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
    {
      key: 'clause',
      head: say('compareClause'),
      cell: ({ one, other }) => <Sentences one={one} other={other} />,
      sum: say('total'),
    },
    {
      key: 'one',
      head: nameOf(one),
      figure: true,
      cell: (row) => figure(row.one, one.currency),
      sum: <Figure amount={toDecimal(first, one.currency)} currency={one.currency} />,
    },
    {
      key: 'other',
      head: nameOf(other),
      figure: true,
      cell: (row) => figure(row.other, other.currency),
      sum: <Figure amount={toDecimal(second, other.currency)} currency={other.currency} />,
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

/** Where both say the same, once. */
function Sentences({ one, other }: { one: Charged | undefined; other: Charged | undefined }) {
  const said = [...new Set([one?.sentence, other?.sentence])].filter((sentence) => sentence !== undefined);
  return (
    <div className="tariff-said">
      {said.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
    </div>
  );
}

function figure(charged: Charged | undefined, currency: Currency) {
  if (!charged) return <span className="aside">{say('noCharge')}</span>;
  return <Figure amount={toDecimal(charged.amount, currency)} currency={currency} bare />;
}

function difference(one: bigint, other: bigint, currency: Currency) {
  return <Figure amount={aboveBy(other, one, currency)} currency={currency} bare />;
}
