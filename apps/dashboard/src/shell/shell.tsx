// What stands around every screen: whose books these are, where one can go, and what has just been done.
import { Fragment, useSyncExternalStore } from 'react';
import { Link, useLocation } from 'wouter';
import { useAnswer } from '../books.ts';
import { shell } from '../catalogue/shell.ts';
import { speakIn } from '../locale.ts';
import { Button, Loading, ProblemNote, WithStatus } from '../ui/index.ts';
import { chooseScheme, schemeInSight, watchScheme } from '../ui/scheme.ts';
import { Pages } from './pages.tsx';
import './shell.css';

const PLACES = [
  { to: '/', under: '/seasons', name: 'season' },
  { to: '/engagements', under: '/engagements', name: 'engagements' },
  { to: '/invoices', under: '/invoices', name: 'invoices' },
  { to: '/tariffs', under: '/tariffs', name: 'tariffs' },
  { to: '/practice', under: '/practice', name: 'practice' },
] as const;

export function Shell() {
  const answer = useAnswer('getOrganisation', {});
  if (answer.is === 'loading') return <Loading what={shell('books')} />;
  if (answer.is === 'failed') {
    return (
      <main className="page">
        <ProblemNote problem={answer.problem} again={answer.again} />
      </main>
    );
  }
  const { name, locale } = answer.value;
  speakIn(locale);
  return (
    <WithStatus>
      {/* A new locale is a new reading of every text. */}
      <Fragment key={locale}>
        <a className="skip" href="#page">
          {shell('skip')}
        </a>
        <header className="shell">
          <p className="whose">{name}</p>
          <Places />
          <SchemeSwitch />
        </header>
        <Pages />
      </Fragment>
    </WithStatus>
  );
}

function Places() {
  const [at] = useLocation();
  return (
    <nav aria-label={shell('navigation')}>
      <ul>
        {PLACES.map(({ to, under, name }) => {
          const here = at === to || at.startsWith(under);
          return (
            <li key={name}>
              <Link href={to} aria-current={here ? 'page' : undefined}>
                {shell(name)}
              </Link>
            </li>
          );
        })}
      </ul>
    </nav>
  );
}

function SchemeSwitch() {
  const scheme = useSyncExternalStore(watchScheme, schemeInSight);
  const other = scheme === 'dark' ? 'light' : 'dark';
  return (
    <Button
      kind="quiet"
      label={shell(other === 'dark' ? 'turnDark' : 'turnLight')}
      onPress={() => chooseScheme(other)}
    >
      {shell(other)}
    </Button>
  );
}
