// Every engagement in one line: when it is, and whether the parts are here.
import { STAGES, type Stage } from '@colla/engagements';
import type { EngagementSummaryJson } from '@colla/wire';
import { Link } from 'wouter';
import { engagements as say } from '../../catalogue/engagements.ts';
import { sayDay, sayNumber } from '../../locale.ts';
import { ButtonLink, Choice, type Column, Empty, Table } from '../../ui/index.ts';

const stages = [
  { value: 'all' as const, label: say('all') },
  ...STAGES.map((value) => ({ value, label: say(value) })),
];

export function StageFilter({
  stage,
  onChoose,
}: {
  stage: Stage | undefined;
  onChoose: (stage: Stage | undefined) => void;
}) {
  return (
    <Choice
      label={say('filter')}
      value={stage ?? 'all'}
      options={stages}
      onChoose={(chosen) => onChoose(chosen === 'all' ? undefined : chosen)}
    />
  );
}

const columns: readonly Column<EngagementSummaryJson>[] = [
  {
    key: 'title',
    head: say('nameOfIt'),
    cell: ({ id, title }) => <Link href={`/engagements/${id}`}>{title}</Link>,
  },
  { key: 'stage', head: say('stage'), cell: ({ stage }) => say(stage) },
  { key: 'soloist', head: say('soloist'), cell: ({ soloist }) => soloist },
  { key: 'institution', head: say('institution'), cell: ({ institution }) => institution },
  { key: 'when', head: say('when'), cell: (engagement) => sayWhen(engagement) },
  { key: 'parts', head: say('parts'), cell: ({ partsWanted }) => sayParts(partsWanted) },
  { key: 'calls', head: say('calls'), figure: true, cell: ({ calls }) => sayNumber(calls) },
];

export function EngagementList({
  engagements,
  filtered,
}: {
  engagements: readonly EngagementSummaryJson[];
  filtered: boolean;
}) {
  if (engagements.length === 0 && filtered) return <Empty title={say('noneAt')} />;
  if (engagements.length === 0) {
    return (
      <Empty title={say('none')}>
        <p>{say('noneWhy')}</p>
        <ButtonLink to="/engagements/new" kind="primary">
          {say('add')}
        </ButtonLink>
      </Empty>
    );
  }
  return (
    <Table
      caption={say('title')}
      captionUnseen
      columns={columns}
      rows={engagements}
      rowKey={({ id }) => id}
    />
  );
}

function sayWhen({ first, last }: EngagementSummaryJson): string {
  if (!first || !last) return '';
  const [from, to] = [sayDay(first), sayDay(last)];
  return from === to ? from : `${from} ${say('until', { day: to })}`;
}

function sayParts(wanted: number): string {
  return wanted === 0 ? '' : say('partsWanted', { count: wanted });
}
