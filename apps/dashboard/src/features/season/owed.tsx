// What is owed, payer by payer; each amount opens to the engagements that it comes from.
import { season } from '../../catalogue/season.ts';
import { Amount, type Column, Table } from '../../ui/index.ts';
import './owed.css';
import { isOwing, isSome, moneyIn, type OwedMoney, type PayerOwed, payersIn } from './sums.ts';
import type { StaveJson } from './view.ts';
import { type Explained, owedWhy, type Which } from './whys.ts';

interface OwedTableProps {
  staves: readonly StaveJson[];
  explained: Explained;
}

export function OwedTable({ staves, explained }: OwedTableProps) {
  const rows = payersIn(staves);
  if (rows.length === 0) return <p>{season('owedNone')}</p>;
  return (
    <>
      <p className="aside">{season('owedUnder')}</p>
      <Table
        caption={season('owedTitle')}
        captionUnseen
        rowKey={({ payer, name, currency }) => `${payer} ${name} ${currency}`}
        rows={rows}
        columns={[
          { key: 'name', head: season('owedWho'), cell: ({ name }) => name, sum: season('total') },
          ...figures(rows, moneyIn(staves).filter(isOwing), explained),
        ]}
      />
    </>
  );
}

/** A column of what was invoiced beyond what is owed stands only where there is any. */
function figures(
  rows: readonly PayerOwed[],
  sums: readonly OwedMoney[],
  explained: Explained,
): Column<PayerOwed>[] {
  const parts = rows.flatMap(({ from }) => from);
  const column = (which: Which, head: string): Column<PayerOwed> => ({
    key: which,
    head,
    figure: true,
    cell: (row) => {
      const why = owedWhy(which, row, row.from, explained);
      const what = season('owedByPayer', { which: why.what, payer: row.name });
      return isSome(row[which]) && <Owed which={which} why={{ ...why, what }} />;
    },
    sum: sums.map((sum) => (
      <div key={sum.currency}>
        <Owed which={which} why={owedWhy(which, sum, parts, explained)} />
      </div>
    )),
  });
  return [
    column('toInvoice', season('owedToInvoice')),
    ...(sums.some(({ beyond }) => isSome(beyond)) ? [column('beyond', season('owedBeyond'))] : []),
    column('owed', season('owedOwed')),
    column('overdue', season('owedOverdue')),
  ];
}

function Owed({ which, why }: { which: Which; why: ReturnType<typeof owedWhy> }) {
  return (
    <span className={which === 'overdue' && isSome(why.amount) ? 'overdue' : undefined}>
      <Amount why={why} />
    </span>
  );
}
