// Everything of the score as tables, for who cannot or does not want to see it.
import type { MarkJson } from '@colla/wire';
import { Link } from 'wouter';
import { kinds } from '../../catalogue/kinds.ts';
import { season } from '../../catalogue/season.ts';
import { sayDay, sayHours, saySpan } from '../../locale.ts';
import { type Column, Empty, Figure, Hours, Opens, Table } from '../../ui/index.ts';
import { isOwing, moneyIn, type StaveMoney } from './sums.ts';
import { minutesIn, type StaveJson, type WeekInView } from './view.ts';

interface Owing extends StaveMoney {
  readonly key: string;
  readonly name: string;
  readonly engagements: number;
  readonly late: number;
}

export function OwedTable({ staves }: { staves: readonly StaveJson[] }) {
  const rows = staves.flatMap((stave) => stave.money.filter(isOwing).map((money) => owing(stave, money)));
  if (rows.length === 0) return <p>{season('owedNone')}</p>;
  const sums = moneyIn(staves).filter(isOwing);
  const figure = (key: 'toInvoice' | 'owed' | 'overdue', head: string, red = false): Column<Owing> => ({
    key,
    head,
    figure: true,
    cell: (row) => (
      <span className={red && row.late > 0 ? 'overdue' : undefined}>
        <Figure amount={row[key]} currency={row.currency} />
      </span>
    ),
    sum: sums.map((sum) => (
      <div key={sum.currency}>
        <Figure amount={sum[key]} currency={sum.currency} />
      </div>
    )),
  });
  return (
    <Table
      caption={season('owedTitle')}
      captionUnseen
      rowKey={({ key }) => key}
      rows={rows}
      columns={[
        { key: 'name', head: season('owedWho'), cell: ({ name }) => name, sum: season('total') },
        figure('toInvoice', season('owedToInvoice')),
        figure('owed', season('owedOwed')),
        figure('overdue', season('owedOverdue'), true),
      ]}
    />
  );
}

function owing(stave: StaveJson, money: StaveMoney): Owing {
  const { party, name, engagements, overdue } = stave;
  return { ...money, key: `${party} ${money.currency}`, name, engagements, late: overdue };
}

interface WeekTableProps {
  staves: readonly StaveJson[];
  weeks: readonly WeekInView[];
  limit: number;
}

export function WeekTable({ staves, weeks, limit }: WeekTableProps) {
  const ofAll = weeks.reduce((sum, week) => sum + minutesIn(week), 0);
  const columns: Column<WeekInView>[] = [
    { key: 'week', head: season('week'), cell: ({ monday }) => sayDay(monday), sum: season('total') },
    ...staves.map(({ party, name }) => ({
      key: party,
      head: name,
      figure: true,
      cell: ({ byStave }: WeekInView) => byStave[party] && <Hours minutes={byStave[party]} />,
      sum: <Hours minutes={weeks.reduce((sum, { byStave }) => sum + (byStave[party] ?? 0), 0)} />,
    })),
    {
      key: 'all',
      head: season('total'),
      figure: true,
      cell: (week) => <Hours minutes={minutesIn(week)} />,
      sum: <Hours minutes={ofAll} />,
    },
  ];
  if (limit > 0) {
    columns.push({
      key: 'limit',
      head: season('against', { limit: sayHours(limit) }),
      figure: true,
      cell: (week) => <AgainstLimit left={limit - minutesIn(week)} />,
    });
  }
  return (
    <Table
      caption={season('hoursTitle')}
      captionUnseen
      rowKey={({ monday }) => monday}
      rows={weeks}
      columns={columns}
      narrow="sideways"
    />
  );
}

function AgainstLimit({ left }: { left: number }) {
  return left < 0 ? (
    <span className="overdue">{season('over', { hours: sayHours(-left) })}</span>
  ) : (
    <span className="aside">{season('free', { hours: sayHours(left) })}</span>
  );
}

export function CallTables({ staves }: { staves: readonly StaveJson[] }) {
  return staves.map((stave) => (
    <Opens
      key={stave.party}
      summary={<span>{season('staveCalls', { name: stave.name, count: stave.marks.length })}</span>}
    >
      {() => <CallTable stave={stave} />}
    </Opens>
  ));
}

function CallTable({ stave }: { stave: StaveJson }) {
  const columns: Column<MarkJson>[] = [
    {
      key: 'when',
      head: season('when'),
      cell: (mark) => `${sayDay(mark.start, 'weekday')}, ${saySpan(mark)}`,
    },
    { key: 'call', head: season('call'), cell: ({ kind }) => kinds(kind) },
    { key: 'where', head: season('where'), cell: ({ place }) => place },
    {
      key: 'engagement',
      head: season('engagement'),
      cell: ({ engagement, title }) => <Link href={`/engagements/${engagement}`}>{title}</Link>,
    },
    { key: 'standing', head: season('standing'), cell: ({ is }) => season(is) },
    { key: 'lasts', head: season('lasts'), figure: true, cell: ({ minutes }) => <Hours minutes={minutes} /> },
  ];
  return (
    <Table
      caption={stave.name}
      captionUnseen
      rowKey={({ call }) => call}
      rows={stave.marks}
      columns={columns}
    />
  );
}

export function NothingInView({ children }: { children: React.ReactNode }) {
  return <Empty title={season('nothingInView')}>{children}</Empty>;
}
