// Every engagement in one line: when it is, and whether the parts are here.
import { STAGES, type Stage } from '@colla/engagements';
import type { EngagementSummaryJson } from '@colla/wire';
import { Link } from 'wouter';
import { engagements as say } from '../../catalogue/engagements.ts';
import { sayDays, sayTime } from '../../locale.ts';
import { ButtonLink, Choice, type Column, Empty, Table } from '../../ui/index.ts';
import './engagement.css';
import { callName } from './names.ts';

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

const columns: Column<EngagementSummaryJson>[] = [
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
  { key: 'when', head: say('when'), cell: sayWhen },
  { key: 'parts', head: say('parts'), cell: ({ partsWanted }) => sayParts(partsWanted) },
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
    <div className="engagement-list">
      <Table
        caption={say('title')}
        captionUnseen
        columns={columns}
        rows={engagements}
        rowKey={({ id }) => id}
      />
    </div>
  );
}

/** When it is, from the first call to the last; and what comes next, as long as something does. */
function sayWhen({ calls, first, last, next }: EngagementSummaryJson) {
  if (!first || !last) return '';
  const whole = `${sayDays(first, last)}, ${say('callCount', { count: calls })}`;
  if (!next) return whole;
  return (
    <>
      {whole}
      <span className="next">{say('next', { call: callName(next), time: sayTime(next.start) })}</span>
    </>
  );
}

function sayParts(wanted: number): string {
  return wanted === 0 ? '' : say('partsWanted', { count: wanted });
}
