// What is owed, payer by payer; each opens to the engagements that it comes from.
import { Link } from 'wouter';
import { season } from '../../catalogue/season.ts';
import { sayMoney } from '../../locale.ts';
import { type Column, Figure, Opens, Table } from '../../ui/index.ts';
import { isOwing, isSome, moneyIn, type OwedMoney, type PayerOwed, payersIn } from './sums.ts';
import type { StaveJson } from './view.ts';
import './owed.css';

export function OwedTable({ staves }: { staves: readonly StaveJson[] }) {
  const rows = payersIn(staves);
  if (rows.length === 0) return <p>{season('owedNone')}</p>;
  return (
    <Table
      caption={season('owedTitle')}
      captionUnseen
      rowKey={({ payer, name, currency }) => `${payer} ${name} ${currency}`}
      rows={rows}
      columns={[
        {
          key: 'name',
          head: season('owedWho'),
          cell: (owed) => <From owed={owed} />,
          sum: season('total'),
        },
        ...figures(moneyIn(staves).filter(isOwing)),
      ]}
    />
  );
}

function figures(sums: readonly OwedMoney[]): Column<PayerOwed>[] {
  const column = (key: 'toInvoice' | 'owed' | 'overdue', head: string): Column<PayerOwed> => ({
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
function Owed({ of, which }: { of: OwedMoney; which: 'toInvoice' | 'owed' | 'overdue' }) {
  if (!isSome(of[which])) return null;
  return (
    <span className={which === 'overdue' ? 'overdue' : undefined}>
      <Figure amount={of[which]} currency={of.currency} />
    </span>
  );
}

function From({ owed }: { owed: PayerOwed }) {
  const summary = (
    <span>
      {owed.name}
      {isSome(owed.beyond) && (
        <span className="aside owed-beyond">
          <OwedWord of={owed} which="beyond" />
        </span>
      )}
    </span>
  );
  return (
    <Opens summary={summary}>
      <ul className="owed-by">
        {owed.from.map((part) => (
          <li key={part.engagement}>
            <Link href={`/engagements/${part.engagement}`}>{part.title}</Link>
            {(['toInvoice', 'beyond', 'owed', 'overdue'] as const).map((which) => (
              <OwedWord key={which} of={part} which={which} />
            ))}
          </li>
        ))}
      </ul>
    </Opens>
  );
}

const WORDS = {
  toInvoice: 'amountToInvoice',
  beyond: 'amountBeyond',
  owed: 'owed',
  overdue: 'amountOverdue',
} as const;

function OwedWord({ of, which }: { of: OwedMoney; which: keyof typeof WORDS }) {
  if (!isSome(of[which])) return null;
  const amount = sayMoney(of[which], of.currency);
  return (
    <span className={which === 'overdue' ? 'overdue' : undefined}>{season(WORDS[which], { amount })}</span>
  );
}
