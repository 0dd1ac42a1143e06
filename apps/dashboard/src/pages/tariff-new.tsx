// A new tariff: from nothing, from an example, from another tariff for a new season, or from a file.
import type { OrganisationJson } from '@colla/wire';
import { useEffect, useState } from 'react';
import { useLocation, useSearch } from 'wouter';
import { useAnswer, useSend } from '../books.ts';
import { tariffs as say } from '../catalogue/tariffs.ts';
import { StatementView } from '../features/statements/statement-view.tsx';
import type { TariffDraft } from '../features/tariffs/draft.ts';
import { ExampleMenu } from '../features/tariffs/example-menu.tsx';
import { FileDialog } from '../features/tariffs/file-dialog.tsx';
import { draftOf, exampleStart, isStart, type Start, seasonStart } from '../features/tariffs/starts.ts';
import { TariffEditor } from '../features/tariffs/tariff-editor.tsx';
import { type ChosenVersion, versionOf } from '../features/tariffs/version-choice.tsx';
import { todayIn } from '../local-time.ts';
import { Button, Dialog, Loading, Page, useStatus } from '../ui/index.ts';
import { ShownPage } from './shown-page.tsx';

interface HouseProps {
  organisation: OrganisationJson;
}

export function NewTariff({ organisation }: HouseProps) {
  const search = new URLSearchParams(useSearch());
  const example = search.get('example');
  const of = search.get('of');
  if (isStart(example)) return <FromExample key={example} organisation={organisation} start={example} />;
  const version = Number(search.get('version')) || undefined;
  if (of !== null) return <FromTariff key={of} organisation={organisation} of={{ tariff: of, version }} />;
  return <Written organisation={organisation} start={emptyDraft(organisation)} />;
}

function emptyDraft({ currency, zone }: OrganisationJson): TariffDraft {
  return { name: '', currency, from: todayIn(zone), note: '', clauses: [] };
}

function FromExample({ organisation, start }: HouseProps & { start: Start }) {
  const [draft, setDraft] = useState<TariffDraft>();
  const { currency: money, zone } = organisation;
  useEffect(() => {
    let left = false;
    exampleStart(start, { from: todayIn(zone), money }).then((draft) => !left && setDraft(draft));
    return () => {
      left = true;
    };
  }, [start, money, zone]);
  if (draft) return <Written organisation={organisation} start={draft} />;
  return (
    <Page title={say('newTitle')} under={say('newUnder')}>
      <Loading what={say('fetchingExamples')} />
    </Page>
  );
}

function FromTariff({ organisation, of }: HouseProps & { of: ChosenVersion }) {
  const answer = useAnswer('getTariff', { params: { id: of.tariff } });
  return (
    <ShownPage answer={answer} what={say('fetchingOne')} title={say('newTitle')}>
      {(tariff) => (
        <Written
          organisation={organisation}
          start={seasonStart(versionOf(tariff, of).written, todayIn(organisation.zone))}
        />
      )}
    </ShownPage>
  );
}

/** What was read from a file takes the place of what it started from. */
function Written({ organisation, start }: HouseProps & { start: TariffDraft }) {
  const { send, busy, problem } = useSend('addTariff');
  const [opened, setOpened] = useState({ draft: start, times: 0 });
  const [asked, setAsked] = useState<'example' | 'file'>();
  const [, goTo] = useLocation();
  const status = useStatus();
  const close = () => setAsked(undefined);
  const keep = async (body: Parameters<typeof send>[0]['body']) => {
    const kept = await send({ body });
    if (!kept) return;
    status(say('kept', { name: kept.name }));
    goTo(`/tariffs/${kept.id}`);
  };
  const actions = (
    <>
      <Button onPress={() => setAsked('example')}>{say('fromExample')}</Button>
      <Button onPress={() => setAsked('file')}>{say('fromFile')}</Button>
    </>
  );
  return (
    <Page title={say('newTitle')} under={say('newUnder')} actions={actions}>
      <TariffEditor
        key={opened.times}
        start={opened.draft}
        of="new tariff"
        zone={organisation.zone}
        busy={busy}
        problem={problem}
        show={(of) => <StatementView of={of} />}
        onKeep={keep}
        onGiveUp={() => goTo('/tariffs')}
      />
      {asked === 'example' && (
        <Dialog title={say('fromExampleTitle')} onClose={close}>
          <ExampleMenu onFollow={close} />
        </Dialog>
      )}
      {asked === 'file' && (
        <FileDialog
          onClose={close}
          onRead={(written) => {
            setOpened(({ times }) => ({ draft: draftOf(written), times: times + 1 }));
            status(say('started'));
            close();
          }}
        />
      )}
    </Page>
  );
}
