// A call in one line: what, when, where, for which engagement, and how it stands.
import type { MarkJson } from '@colla/wire';
import { kinds } from '../../catalogue/kinds.ts';
import { season } from '../../catalogue/season.ts';
import { sayDay, saySpan } from '../../locale.ts';

export function sayCall(mark: MarkJson): string {
  const when = `${sayDay(mark.start, 'weekday')}, ${saySpan(mark)}`;
  return [kinds(mark.kind), when, mark.place, mark.title, season(mark.is)].filter(Boolean).join(' · ');
}
