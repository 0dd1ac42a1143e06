// Two tariffs on one engagement: clause beside clause, what each charges, and what lies between.
import type { Currency } from '@colla/money';
import type { Statement, Tariff } from '@colla/rates';
import { tariffs as say } from '../../catalogue/tariffs.ts';
import { Amount, type Column, Table, type Why } from '../../ui/index.ts';
import type { Charged, ComparedRow, Comparison } from './comparison.ts';
import { chargedWhy, differenceWhy, nameOf, totalWhy } from './comparison-whys.ts';

interface ComparisonTableProps {
  comparison: Comparison;
  one: Tariff;
  other: Tariff;
  callNames: Readonly<Record<string, string>>;
}

export function ComparisonTable({ comparison, one, other, callNames }: ComparisonTableProps) {
  const { rows, silent } = comparison;
  const [first, second] = [
    totalWhy(rows, 'one', { tariff: one, statement: comparison.one }),
    totalWhy(rows, 'other', { tariff: other, statement: comparison.other }),
  ];
  const mixed = one.currency !== other.currency;
  const columns: Column<ComparedRow>[] = [
    { key: 'clause', head: say('compareClause'), cell: titleOf, sum: say('total') },
    {
      key: 'one',
      head: nameOf(one),
      cell: (row) => <Side charged={row.one} beside={undefined} currency={one.currency} />,
      sum: <Total why={first} />,
    },
    {
      key: 'other',
      head: nameOf(other),
      cell: (row) => <Side charged={row.other} beside={row.one} currency={other.currency} />,
      sum: <Total why={second} />,
    },
  ];
  const between: Column<ComparedRow> = {
    key: 'difference',
    head: say('difference'),
    figure: true,
    cell: (row) => (
      <Difference
        one={row.one && chargedWhy(row.one, one.currency)}
        other={row.other && chargedWhy(row.other, other.currency)}
        currency={one.currency}
      />
    ),
    sum: <Difference one={first} other={second} currency={one.currency} />,
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
      <Unpriced tariff={one} statement={comparison.one} callNames={callNames} />
      <Unpriced tariff={other} statement={comparison.other} callNames={callNames} />
      {silent.length > 0 && <SilentTable rows={silent} one={one} other={other} />}
    </div>
  );
}

interface UnpricedProps {
  tariff: Tariff;
  statement: Statement | undefined;
  callNames: Readonly<Record<string, string>>;
}

/** A sum that leaves a call out says so. */
function Unpriced({ tariff, statement, callNames }: UnpricedProps) {
  const unpriced = statement?.unpriced ?? [];
  if (unpriced.length === 0) return null;
  const calls = unpriced.map((id) => callNames[id] ?? id).join('; ');
  return <p className="overdue">{say('compareUnpriced', { tariff: nameOf(tariff), calls })}</p>;
}

interface SilentProps {
  rows: readonly ComparedRow[];
  one: Tariff;
  other: Tariff;
}

/** What charges nothing on this engagement, in its sentences alone. */
function SilentTable({ rows, one, other }: SilentProps) {
  const columns: Column<ComparedRow>[] = [
    { key: 'clause', head: say('compareClause'), cell: titleOf },
    { key: 'one', head: nameOf(one), cell: (row) => row.one?.sentence ?? <Absent /> },
    {
      key: 'other',
      head: nameOf(other),
      cell: (row) => {
        if (!row.other) return <Absent />;
        const same = row.other.sentence === row.one?.sentence;
        return same ? <span className="aside">{say('saysTheSame')}</span> : row.other.sentence;
      },
    },
  ];
  return <Table caption={say('compareSilent')} columns={columns} rows={rows} rowKey={({ key }) => key} />;
}

function Absent() {
  return <span className="aside">{say('compareAbsent')}</span>;
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
      <Amount why={chargedWhy(charged, currency)} bare />
    </div>
  );
}

function Total({ why }: { why: Why }) {
  return (
    <div className="tariff-side total">
      <Amount why={why} />
    </div>
  );
}

interface DifferenceProps {
  one: Why | undefined;
  other: Why | undefined;
  currency: Currency;
}

function Difference({ one, other, currency }: DifferenceProps) {
  return <Amount why={differenceWhy(one, other, currency)} bare />;
}
