// Every engagement in one line: when it is, and whether the parts are here.
import { STAGES, type Stage } from '@colla/engagements';
import type { EngagementSummaryJson } from '@colla/wire';
import { Link } from 'wouter';
import { engagements as say } from '../../catalogue/engagements.ts';
import { dayOf } from '../../local-time.ts';
import { sayDay, sayDays } from '../../locale.ts';
import { ButtonLink, Choice, type Column, Empty, Table } from '../../ui/index.ts';
import './engagement.css';

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
    <div className="engagement-filter">
      <Choice
        label={say('filter')}
        value={stage ?? 'all'}
        options={stages}
        onChoose={(chosen) => onChoose(chosen === 'all' ? undefined : chosen)}
      />
    </div>
  );
}

function columnsAt(today: string): Column<EngagementSummaryJson>[] {
  return [
    {
      key: 'title',
      head: say('nameOfIt'),
      cell: ({ id, title }) => <Link href={`/engagements/${id}`}>{title}</Link>,
    },
    { key: 'stage', head: say('stage'), cell: ({ stage }) => say(stage) },
    {
      key: 'who',
      head: say('people'),
      cell: ({ soloist, institution }) => [soloist, institution].filter(Boolean).join(', '),
    },
    { key: 'when', head: say('when'), cell: (engagement) => sayWhen(engagement, today) },
    { key: 'parts', head: say('parts'), cell: ({ partsWanted }) => sayParts(partsWanted) },
  ];
}

export function EngagementList({
  engagements,
  filtered,
  today,
}: {
  engagements: readonly EngagementSummaryJson[];
  filtered: boolean;
  today: string;
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
    <div className="engagement-list">
      <Table
        caption={say('title')}
        captionUnseen
        columns={columnsAt(today)}
        rows={engagements}
        rowKey={({ id }) => id}
      />
    </div>
  );
}

/** When it is: the first call where it lies ahead, else from when until when. */
function sayWhen({ calls, first, last }: EngagementSummaryJson, today: string): string {
  if (!first || !last) return '';
  const count = say('callCount', { count: calls });
  if (dayOf(first) >= today) return `${say('next', { day: sayDay(first) })}, ${count}`;
  return `${sayDays(first, last)}, ${count}`;
}

function sayParts(wanted: number): string {
  return wanted === 0 ? '' : say('partsWanted', { count: wanted });
}
