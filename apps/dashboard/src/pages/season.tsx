// The season: its score, what is owed, the hours of each week. On an empty book, the first screen.

import { dayNumber, weekWithin } from '@colla/calendar';
import type { SeasonJson, SeasonScoreJson } from '@colla/wire';
import { useMemo, useState } from 'react';
import { useLocation } from 'wouter';
import { useAnswer } from '../books.ts';
import { season } from '../catalogue/season.ts';
import { Earned } from '../features/season/earned.tsx';
import { NameSeason } from '../features/season/name-season.tsx';
import { OwedTable } from '../features/season/owed.tsx';
import { Score } from '../features/season/score.tsx';
import { Summing } from '../features/season/summing.tsx';
import { CallTables, NothingInView, WeekTable } from '../features/season/tables.tsx';
import { earnedInView, inView, isWhole, WHOLE_VIEW, weeksInView } from '../features/season/view.ts';
import { ViewChoice } from '../features/season/view-choice.tsx';
import { Welcome } from '../features/welcome/welcome.tsx';
import { todayIn } from '../local-time.ts';
import { sayDay } from '../locale.ts';
import { Button, ButtonLink, Choice, Dialog, Empty, Page, Part, Shown } from '../ui/index.ts';
import './season.css';
import { EXPLAINED } from './season-explained.tsx';

export function Screen({ id }: { id?: string | undefined }) {
  const [naming, setNaming] = useState(false);
  const seasons = useAnswer('listSeasons', { query: { limit: 200 } });
  const today = useToday();
  return (
    <>
      <Shown answer={seasons} what={season('what')}>
        {({ items }) => {
          const chosen = items.find((each) => each.id === id) ?? current(items, today);
          return chosen ? (
            <OneSeason key={chosen.id} of={chosen} all={items} today={today} name={() => setNaming(true)} />
          ) : (
            <NoSeason name={() => setNaming(true)} />
          );
        }}
      </Shown>
      {naming && (
        <Dialog title={season('name')} onClose={() => setNaming(false)}>
          <NameSeason onNamed={() => setNaming(false)} />
        </Dialog>
      )}
    </>
  );
}

function useToday(): string {
  const organisation = useAnswer('getOrganisation', {});
  return todayIn(organisation.is === 'here' ? organisation.value.zone : 'UTC');
}

/** The season that today falls in, else the newest. */
function current(items: readonly SeasonJson[], today: string): SeasonJson | undefined {
  return items.find(({ from, to }) => from <= today && today <= to) ?? items[0];
}

function NoSeason({ name }: { name: () => void }) {
  const engagements = useAnswer('listEngagements', { query: { limit: 1 } });
  const tariffs = useAnswer('listTariffs', { query: { limit: 1 } });
  return (
    <Shown answer={engagements} what={season('what')}>
      {(asked) => (
        <Shown answer={tariffs} what={season('what')}>
          {(written) =>
            asked.items.length + written.items.length === 0 ? (
              <Welcome nameSeason={name} />
            ) : (
              <Page title={season('title')}>
                <Empty title={season('unnamedTitle')}>
                  <p>{season('unnamed')}</p>
                  <Button kind="primary" onPress={name}>
                    {season('name')}
                  </Button>
                </Empty>
              </Page>
            )
          }
        </Shown>
      )}
    </Shown>
  );
}

interface OneSeasonProps {
  of: SeasonJson;
  all: readonly SeasonJson[];
  today: string;
  name: () => void;
}

function OneSeason({ of, all, today, name }: OneSeasonProps) {
  const score = useAnswer('getSeasonScore', { params: { id: of.id } });
  return (
    <Page
      title={of.name}
      under={<SeasonChoice of={of} all={all} name={name} />}
      actions={
        <ButtonLink kind="primary" to="/engagements/new">
          {season('inquiry')}
        </ButtonLink>
      }
    >
      <Shown answer={score} what={season('what')}>
        {(value) => (value.staves.length > 0 ? <Whole score={value} today={today} /> : <NoCalls of={of} />)}
      </Shown>
    </Page>
  );
}

function SeasonChoice({ of, all, name }: Omit<OneSeasonProps, 'today'>) {
  const [, go] = useLocation();
  return (
    <div className="season-choice">
      <p>{season('span', { from: sayDay(of.from), to: sayDay(of.to), count: weeksOf(of) })}</p>
      {all.length > 1 && (
        <Choice
          label={season('pick')}
          value={of.id}
          options={all.map((each) => ({ value: each.id, label: each.name }))}
          onChoose={(id) => go(`/seasons/${id}`)}
        />
      )}
      <Button kind="quiet" onPress={name}>
        {season('name')}
      </Button>
      <span className="print">
        <Button kind="quiet" onPress={() => window.print()}>
          {season('print')}
        </Button>
      </span>
    </div>
  );
}

/** The weeks that a season touches, as the score draws them. */
function weeksOf({ from, to }: SeasonJson): number {
  return weekWithin(dayNumber(to), dayNumber(from));
}

function Whole({ score, today }: { score: SeasonScoreJson; today: string }) {
  const [view, setView] = useState(WHOLE_VIEW);
  const mondays = useMemo(() => score.weeks.map(({ monday }) => monday), [score]);
  const staves = useMemo(() => inView(score.staves, view), [score, view]);
  const weeks = useMemo(() => weeksInView(staves, mondays), [staves, mondays]);
  const earned = useMemo(() => earnedInView(score.earned, staves), [score, staves]);
  const none = staves.length === 0;
  return (
    <>
      <Summing staves={staves} weeks={weeks} earned={earned} whole={isWhole(view)} explained={EXPLAINED} />
      <ViewChoice staves={score.staves} view={view} onChoose={setView} />
      {none ? (
        <NothingInView>
          <Button onPress={() => setView(WHOLE_VIEW)}>{season('showAll')}</Button>
        </NothingInView>
      ) : (
        <>
          <div>
            <Score score={score} staves={staves} weeks={weeks} today={today} explained={EXPLAINED} />
            <p className="aside reading">{season('morning')}</p>
          </div>
          <div className="season-tables">
            <Part title={season('owedTitle')}>
              <OwedTable staves={staves} explained={EXPLAINED} />
            </Part>
            <Part title={season('earnedTitle')}>
              <Earned earned={earned} explained={EXPLAINED} />
            </Part>
            <Part title={season('hoursTitle')}>
              <WeekTable staves={staves} weeks={weeks} limit={score.weeklyLimit} />
            </Part>
            <Part title={season('callsTitle')}>
              <CallTables staves={staves} />
            </Part>
          </div>
        </>
      )}
    </>
  );
}

function NoCalls({ of }: { of: SeasonJson }) {
  return (
    <Empty title={season('emptyTitle', { name: of.name })}>
      <p>{season('empty', { from: sayDay(of.from), to: sayDay(of.to) })}</p>
    </Empty>
  );
}
