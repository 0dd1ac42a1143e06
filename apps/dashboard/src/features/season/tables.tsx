// Everything of the score as tables, for who cannot or does not want to see it.

import type { WeekOfHours } from '@colla/invoicing';
import type { MarkJson } from '@colla/wire';
import { Link } from 'wouter';
import { kinds } from '../../catalogue/kinds.ts';
import { season } from '../../catalogue/season.ts';
import { sayDay, sayHours, saySpan } from '../../locale.ts';
import { type Column, Empty, Hours, Opens, Table } from '../../ui/index.ts';
import { minutesIn, type StaveJson } from './view.ts';

interface WeekTableProps {
  staves: readonly StaveJson[];
  weeks: readonly WeekOfHours[];
  limit: number;
}

export function WeekTable({ staves, weeks, limit }: WeekTableProps) {
  const ofAll = weeks.reduce((sum, week) => sum + minutesIn(week), 0);
  const columns: Column<WeekOfHours>[] = [
    { key: 'week', head: season('week'), cell: ({ monday }) => sayDay(monday), sum: season('total') },
    {
      key: 'all',
      head: season('total'),
      figure: true,
      cell: (week) => <Hours minutes={minutesIn(week)} />,
      sum: <Hours minutes={ofAll} />,
    },
    ...(limit > 0 ? [limitColumn(limit)] : []),
    ...staves.map(({ party, name }) => ({
      key: party,
      head: name,
      figure: true,
      cell: ({ byStave }: WeekOfHours) => byStave[party] && <Hours minutes={byStave[party]} />,
      sum: <Hours minutes={weeks.reduce((sum, { byStave }) => sum + (byStave[party] ?? 0), 0)} />,
    })),
  ];
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

function limitColumn(limit: number): Column<WeekOfHours> {
  return {
    key: 'limit',
    head: season('against', { limit: sayHours(limit) }),
    figure: true,
    cell: (week) => <AgainstLimit left={limit - minutesIn(week)} />,
  };
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
      cell: (mark) => (
        <>
          {sayDay(mark.start, 'weekday')}, <span className="span">{saySpan(mark)}</span>
        </>
      ),
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
