// What one tariff says; the same address writes its next version, and `/tariffs/new` the first of a new one.
import { currency } from '@colla/money';
import { granted } from '@colla/refusal';
import type { OrganisationJson, TariffWholeJson } from '@colla/wire';
import { useState } from 'react';
import { useLocation } from 'wouter';
import { useAnswer, useSend } from '../books.ts';
import { tariffs as say } from '../catalogue/tariffs.ts';
import { StatementView } from '../features/statements/statement-view.tsx';
import { openDraft, type TariffDraft } from '../features/tariffs/draft.ts';
import { TariffEditor } from '../features/tariffs/tariff-editor.tsx';
import { TariffSentences } from '../features/tariffs/tariff-sentences.tsx';
import { todayIn } from '../local-time.ts';
import { sayDay, spokenLocale } from '../locale.ts';
import { Button, Page, useStatus } from '../ui/index.ts';
import { ShownPage } from './shown-page.tsx';

export function Screen({ id = 'new' }: { id?: string | undefined }) {
  const organisation = useAnswer('getOrganisation', {});
  return (
    <ShownPage answer={organisation} what={say('fetchingOne')} title={say('title')}>
      {(organisation) =>
        id === 'new' ? (
          <NewTariff organisation={organisation} />
        ) : (
          <Tariff id={id} organisation={organisation} />
        )
      }
    </ShownPage>
  );
}

function NewTariff({ organisation }: { organisation: OrganisationJson }) {
  const { send, busy, problem } = useSend('addTariff');
  const [, goTo] = useLocation();
  const status = useStatus();
  const keep = async (body: Parameters<typeof send>[0]['body']) => {
    const kept = await send({ body });
    if (!kept) return;
    status(say('kept', { name: kept.name }));
    goTo(`/tariffs/${kept.id}`);
  };
  return (
    <Page title={say('newTitle')} under={say('newUnder')}>
      <TariffEditor
        start={emptyDraft(organisation)}
        of="new tariff"
        zone={organisation.zone}
        busy={busy}
        problem={problem}
        show={(of) => <StatementView of={of} />}
        onKeep={keep}
        onGiveUp={() => goTo('/tariffs')}
      />
    </Page>
  );
}

function emptyDraft({ currency, zone }: OrganisationJson): TariffDraft {
  return { name: '', currency, from: todayIn(zone), note: '', clauses: [] };
}

function Tariff({ id, organisation }: { id: string; organisation: OrganisationJson }) {
  const answer = useAnswer('getTariff', { params: { id } });
  const [writing, setWriting] = useState(false);
  return (
    <ShownPage answer={answer} what={say('fetchingOne')} title={say('title')}>
      {(tariff) =>
        writing ? (
          <NewVersion tariff={tariff} organisation={organisation} onDone={() => setWriting(false)} />
        ) : (
          <Page
            title={tariff.name}
            under={`${tariff.currency}. ${say('since', { version: tariff.latest.version, day: sayDay(tariff.latest.from) })}.`}
            actions={
              <Button kind="primary" onPress={() => setWriting(true)}>
                {say('newVersion')}
              </Button>
            }
          >
            <TariffSentences
              key={tariff.versions.length}
              tariff={tariff}
              today={todayIn(organisation.zone)}
            />
          </Page>
        )
      }
    </ShownPage>
  );
}

interface NewVersionProps {
  tariff: TariffWholeJson;
  organisation: OrganisationJson;
  onDone: () => void;
}

function NewVersion({ tariff, organisation, onDone }: NewVersionProps) {
  const { send, busy, problem } = useSend('addTariffVersion');
  const status = useStatus();
  const [start] = useState(() => {
    const reader = { currency: granted(currency(tariff.currency)), locale: spokenLocale() };
    return { ...openDraft(tariff.latest.written, reader), from: todayIn(organisation.zone) };
  });
  const keep = async (body: Parameters<typeof send>[0]['body']) => {
    const kept = await send({ params: { id: tariff.id }, body });
    if (!kept) return;
    status(say('keptVersion', { name: kept.name, version: kept.latest.version }));
    onDone();
  };
  return (
    <Page title={say('newVersionOf', { name: tariff.name })} under={say('newVersionUnder')}>
      <TariffEditor
        start={start}
        of="new version"
        before={tariff.latest.written}
        zone={organisation.zone}
        busy={busy}
        problem={problem}
        show={(of) => <StatementView of={of} />}
        onKeep={keep}
        onGiveUp={onDone}
      />
    </Page>
  );
}
