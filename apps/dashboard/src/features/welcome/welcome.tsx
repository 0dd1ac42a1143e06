// The first screen of an empty book: the three things that somebody came to do, and an example one click away.
import type { ReactNode } from 'react';
import { useLocation } from 'wouter';
import { useSend } from '../../books.ts';
import { welcome } from '../../catalogue/welcome.ts';
import { Button, ButtonLink, Page, ProblemNote, Stave, useStatus } from '../../ui/index.ts';
import './welcome.css';

export function Welcome({ nameSeason }: { nameSeason: () => void }) {
  return (
    <Page title={welcome('title')} under={welcome('under')}>
      <ol className="welcome">
        <Way title={welcome('inquiry')} why={welcome('inquiryWhy')}>
          <ButtonLink kind="primary" to="/engagements/new">
            {welcome('inquiryDo')}
          </ButtonLink>
        </Way>
        <Way title={welcome('tariff')} why={welcome('tariffWhy')}>
          <ButtonLink to="/tariffs/new">{welcome('tariffDo')}</ButtonLink>
        </Way>
        <Way title={welcome('season')} why={welcome('seasonWhy')}>
          <Button onPress={nameSeason}>{welcome('seasonDo')}</Button>
        </Way>
      </ol>
      <Stave single />
      <Example />
    </Page>
  );
}

function Way({ title, why, children }: { title: string; why: string; children: ReactNode }) {
  return (
    <li>
      <h2>{title}</h2>
      <p>{why}</p>
      {children}
    </li>
  );
}

function Example() {
  const opening = useSend('openExample');
  const say = useStatus();
  const [, go] = useLocation();
  const open = async () => {
    const opened = await opening.send({});
    if (!opened) return;
    say(welcome('exampleOpened'));
    go(`/seasons/${opened.id}`);
  };
  return (
    <div className="welcome-example">
      <p>{welcome('example')}</p>
      <Button busy={opening.busy} onPress={open}>
        {welcome('exampleDo')}
      </Button>
      {opening.problem && <ProblemNote problem={opening.problem} />}
    </div>
  );
}
