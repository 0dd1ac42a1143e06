// Said beside a call that stands at the same time as another one.
import type { Span } from '@colla/calendar';
import { useAnswer } from '../../books.ts';
import { engagements as say } from '../../catalogue/engagements.ts';
import { type Busy, busyNear, clashing, seasonOf } from './clash.ts';

interface ClashNoteProps {
  times: Span;
  /** The engagement itself: its own calls are among `others`, whether or not they are in a season. */
  engagement: string | undefined;
  others: readonly Busy[];
}

export function ClashNote(props: ClashNoteProps) {
  const day = props.times.start.toPlainDate().toString();
  const seasons = useAnswer('listSeasons', { query: { limit: 200 } });
  const season = seasons.is === 'here' ? seasonOf(day, seasons.value.items) : undefined;
  if (!season) return <Note clashes={clashing(props.times, props.others)} />;
  return <NoteInSeason {...props} day={day} season={season.id} />;
}

function NoteInSeason({
  times,
  engagement,
  others,
  day,
  season,
}: ClashNoteProps & Record<'day' | 'season', string>) {
  const score = useAnswer('getSeasonScore', { params: { id: season } });
  const elsewhere = score.is === 'here' ? busyNear(day, score.value.staves, engagement) : [];
  return <Note clashes={clashing(times, [...others, ...elsewhere])} />;
}

function Note({ clashes }: { clashes: readonly Busy[] }) {
  if (clashes.length === 0) return null;
  return (
    <span className="call-clash">{say('clash', { what: clashes.map(({ what }) => what).join('; ') })}</span>
  );
}
