// Chooses what of the season is in view; the standings are the legend of the score at once.
import { CALL_KINDS } from '@colla/hours';
import type { ReactNode } from 'react';
import { kinds } from '../../catalogue/kinds.ts';
import { season } from '../../catalogue/season.ts';
import { Choice, Opens } from '../../ui/index.ts';
import { draw } from './drawing.ts';
import { kindsIn, STANDINGS, type Standing, type StaveJson, type View } from './view.ts';
import './view-choice.css';

interface ViewChoiceProps {
  staves: readonly StaveJson[];
  view: View;
  onChoose: (view: View) => void;
}

const ALL = '*';

/** From here on there is room for the choices beside the legend. */
const WIDE = 768;

export function ViewChoice({ staves, view, onChoose }: ViewChoiceProps) {
  const all = { value: ALL, label: season('all') } as const;
  const parties = staves.map(({ party, name }) => ({ value: party, label: name }));
  const present = kindsIn(staves, CALL_KINDS).map((kind) => ({ value: kind, label: kinds(kind) }));
  return (
    <search className="view-choice" aria-label={season('only')}>
      <fieldset className="legend">
        <legend className="unseen">{season('standing')}</legend>
        {STANDINGS.map((is) => (
          <LegendKey
            key={is}
            is={is}
            on={view.is === is}
            onPress={() => onChoose({ ...view, is: view.is === is ? '' : is })}
          />
        ))}
      </fieldset>
      <Folded>
        <div className="choices">
          <Choice
            label={season('institution')}
            value={view.party || ALL}
            options={[all, ...parties]}
            onChoose={(party) => onChoose({ ...view, party: party === ALL ? '' : party })}
          />
          <Choice
            label={season('kind')}
            value={view.kind || ALL}
            options={[all, ...present]}
            onChoose={(kind) => onChoose({ ...view, kind: kind === ALL ? '' : kind })}
          />
        </div>
      </Folded>
    </search>
  );
}

/** On a phone the choices are folded away: the score comes first. */
function Folded({ children }: { children: ReactNode }) {
  return window.innerWidth >= WIDE ? children : <Opens summary={season('only')}>{children}</Opens>;
}

function LegendKey({ is, on, onPress }: { is: Standing; on: boolean; onPress: () => void }) {
  return (
    <button type="button" className="legend-key" aria-pressed={on} onClick={onPress}>
      <svg className="score-stave" viewBox="0 35 30 20" width="30" height="20" aria-hidden="true">
        <path className="lines" d="M0 40.5h30M0 49.5h30" />
        <path className={`mark ${is}`} d={SAMPLES[is]} />
      </svg>
      {season(is)}
    </button>
  );
}

// One head of each standing, drawn as the score draws it: an hour and a half at noon of the first day.
const SAMPLES = Object.fromEntries(
  STANDINGS.map((is) => {
    const start = '1970-01-05T12:00:00+00:00[UTC]';
    const mark = {
      call: '',
      engagement: '',
      title: '',
      place: '',
      kind: 'rehearsal',
      start,
      end: start,
    } as const;
    const { paths } = draw([{ ...mark, minutes: 100, is }], { first: 4, weeks: 1, week: 70, gap: 10 });
    return [is, paths[is]];
  }),
) as Record<Standing, string>;
