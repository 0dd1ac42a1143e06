// What is owed, stave by stave; each opens to the engagements that it comes from.
import { Link } from 'wouter';
import { season } from '../../catalogue/season.ts';
import { sayMoney } from '../../locale.ts';
import { type Column, Figure, Opens, Table } from '../../ui/index.ts';
import { isOwing, isSome, moneyIn, type StaveMoney } from './sums.ts';
import type { StaveJson } from './view.ts';
import './owed.css';

interface OwedRow extends StaveMoney {
  readonly key: string;
  readonly stave: StaveJson;
}

export function OwedTable({ staves }: { staves: readonly StaveJson[] }) {
  const rows = staves.flatMap(rowsOf);
  if (rows.length === 0) return <p>{season('owedNone')}</p>;
  return (
    <Table
      caption={season('owedTitle')}
      captionUnseen
      rowKey={({ key }) => key}
      rows={rows}
      columns={[
        {
          key: 'name',
          head: season('owedWho'),
          cell: ({ stave }) => <From stave={stave} />,
          sum: season('total'),
        },
        ...figures(moneyIn(staves).filter(isOwing)),
      ]}
    />
  );
}

function rowsOf(stave: StaveJson): OwedRow[] {
  return stave.money
    .filter(isOwing)
    .map((money) => ({ ...money, key: `${stave.party} ${money.currency}`, stave }));
}

function figures(sums: readonly StaveMoney[]): Column<OwedRow>[] {
  const column = (key: 'toInvoice' | 'owed' | 'overdue', head: string): Column<OwedRow> => ({
    key,
    head,
    figure: true,
    cell: (row) => <Owed key={key} of={row} which={key} />,
    sum: sums.map((sum) => (
      <div key={sum.currency}>
        <Figure amount={sum[key]} currency={sum.currency} />
      </div>
    )),
  });
  return [
    column('toInvoice', season('owedToInvoice')),
    column('owed', season('owedOwed')),
    column('overdue', season('owedOverdue')),
  ];
}

/** An amount; nought is left to its column. */
function Owed({ of, which }: { of: StaveMoney; which: 'toInvoice' | 'owed' | 'overdue' }) {
  if (!isSome(of[which])) return null;
  return (
    <span className={which === 'overdue' ? 'overdue' : undefined}>
      <Figure amount={of[which]} currency={of.currency} />
    </span>
  );
}

function From({ stave }: { stave: StaveJson }) {
  return (
    <Opens summary={<span>{stave.name}</span>}>
      <ul className="owed-by">
        {stave.owing.map((owing) => (
          <li key={owing.engagement}>
            <Link href={`/engagements/${owing.engagement}`}>{owing.title}</Link>
            {(['toInvoice', 'owed', 'overdue'] as const).map((which) => (
              <OwedWord key={which} of={owing} which={which} />
            ))}
          </li>
        ))}
      </ul>
    </Opens>
  );
}

const WORDS = { toInvoice: 'amountToInvoice', owed: 'owed', overdue: 'amountOverdue' } as const;

function OwedWord({ of, which }: { of: StaveMoney; which: keyof typeof WORDS }) {
  if (!isSome(of[which])) return null;
  const amount = sayMoney(of[which], of.currency);
  return (
    <span className={which === 'overdue' ? 'overdue' : undefined}>{season(WORDS[which], { amount })}</span>
  );
}
