// Which address shows which screen. Season comes with the first load; every other screen is loaded when it is asked for.
import { type ComponentType, useEffect, useState } from 'react';
import { Route, Switch } from 'wouter';
import { shell } from '../catalogue/shell.ts';
import { Screen as Season } from '../pages/season.tsx';
import { ButtonLink, Empty, Loading, Page, ProblemNote } from '../ui/index.ts';

export interface ScreenProps {
  id?: string | undefined;
}

type Load = () => Promise<{ Screen: ComponentType<ScreenProps> }>;

const screens: Readonly<Record<string, Load>> = {
  '/engagements': () => import('../pages/engagements.tsx'),
  '/engagements/:id': () => import('../pages/engagement.tsx'),
  '/invoices': () => import('../pages/invoices.tsx'),
  '/invoices/:id': () => import('../pages/invoice.tsx'),
  '/tariffs': () => import('../pages/tariffs.tsx'),
  '/tariffs/:id': () => import('../pages/tariff.tsx'),
  '/practice': () => import('../pages/practice.tsx'),
};

export function Pages() {
  return (
    <Switch>
      <Route path="/">{() => <Season />}</Route>
      <Route path="/seasons/:id">{({ id }) => <Season key={id} id={id} />}</Route>
      {Object.entries(screens).map(([path, load]) => (
        <Route key={path} path={path}>
          {(params: { id?: string }) => <Lazy key={params.id} load={load} id={params.id} />}
        </Route>
      ))}
      <Route>{() => <Nowhere />}</Route>
    </Switch>
  );
}

const loaded = new Map<Load, ComponentType<ScreenProps>>();

// Not React.lazy: a Suspense boundary holds a screen back longer than the loading takes.
function Lazy({ load, id }: { load: Load } & ScreenProps) {
  const [Loaded, setLoaded] = useState(() => loaded.get(load));
  const [failed, setFailed] = useState(false);
  useEffect(() => {
    if (Loaded || failed) return;
    load().then(
      ({ Screen }) => {
        loaded.set(load, Screen);
        setLoaded(() => Screen);
      },
      () => setFailed(true),
    );
  }, [load, Loaded, failed]);
  if (Loaded) return <Loaded id={id} />;
  return (
    <main className="page" id="page">
      {failed ? (
        <ProblemNote problem={{ detail: shell('screenFailed') }} again={() => setFailed(false)} />
      ) : (
        <Loading what={shell('screen')} />
      )}
    </main>
  );
}

function Nowhere() {
  return (
    <Page title={shell('nowhere')}>
      <Empty title={shell('nowhereWhy')}>
        <ButtonLink to="/" kind="primary">
          {shell('toSeason')}
        </ButtonLink>
      </Empty>
    </Page>
  );
}
