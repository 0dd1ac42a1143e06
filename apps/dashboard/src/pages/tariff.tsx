// What one tariff says; the same address writes its next version, `/tariffs/new` the first of a new one, and
// `/tariffs/compare` sets two side by side.
import type { WrittenTariff } from '@colla/rates';
import type { OrganisationJson, TariffWholeJson } from '@colla/wire';
import { useState } from 'react';
import { useAnswer, useSend } from '../books.ts';
import { tariffs as say } from '../catalogue/tariffs.ts';
import { StatementView } from '../features/statements/statement-view.tsx';
import { Further } from '../features/tariffs/further.tsx';
import { RaiseDialog } from '../features/tariffs/raise-dialog.tsx';
import { draftOf } from '../features/tariffs/starts.ts';
import { TariffEditor } from '../features/tariffs/tariff-editor.tsx';
import { TariffSentences } from '../features/tariffs/tariff-sentences.tsx';
import { inForce, nextBegin } from '../features/tariffs/versions.ts';
import { todayIn } from '../local-time.ts';
import { sayDay } from '../locale.ts';
import { Button, Page, useStatus } from '../ui/index.ts';
import { ShownPage } from './shown-page.tsx';
import { CompareTariffs } from './tariff-compare.tsx';
import { NewTariff } from './tariff-new.tsx';

export function Screen({ id = 'new' }: { id?: string | undefined }) {
  const organisation = useAnswer('getOrganisation', {});
  return (
    <ShownPage answer={organisation} what={say('fetchingOne')} title={say('title')}>
      {(organisation) =>
        id === 'new' ? (
          <NewTariff organisation={organisation} />
        ) : id === 'compare' ? (
          <CompareTariffs organisation={organisation} />
        ) : (
          <Tariff id={id} organisation={organisation} />
        )
      }
    </ShownPage>
  );
}

function Tariff({ id, organisation }: { id: string; organisation: OrganisationJson }) {
  const answer = useAnswer('getTariff', { params: { id } });
  const [writing, setWriting] = useState<WrittenTariff>();
  return (
    <ShownPage answer={answer} what={say('fetchingOne')} title={say('title')}>
      {(tariff) =>
        writing ? (
          <NewVersion
            tariff={tariff}
            written={writing}
            organisation={organisation}
            onDone={() => setWriting(undefined)}
          />
        ) : (
          <Read
            key={tariff.versions.length}
            tariff={tariff}
            today={todayIn(organisation.zone)}
            onWrite={setWriting}
          />
        )
      }
    </ShownPage>
  );
}

interface ReadProps {
  tariff: TariffWholeJson;
  today: string;
  /** A new version is to be written, from this. */
  onWrite: (written: WrittenTariff) => void;
}

/** One version is seen, in force today unless another is chosen; what is done with the tariff is done with that one. */
function Read({ tariff, today, onWrite }: ReadProps) {
  const [chosen, setChosen] = useState(() => inForce(tariff.versions, today)?.version);
  const [raising, setRaising] = useState(false);
  const shown = tariff.versions.find(({ version }) => version === chosen) ?? tariff.latest;
  const { version, written } = shown;
  const begin = version === tariff.latest.version ? say('newVersion') : say('newVersionFrom', { version });
  return (
    <Page
      title={tariff.name}
      under={`${tariff.currency}. ${say('since', { version, day: sayDay(shown.from) })}.`}
      actions={
        <Button kind="primary" onPress={() => onWrite(written)}>
          {begin}
        </Button>
      }
    >
      <TariffSentences tariff={tariff} shown={shown} today={today} onChoose={setChosen} />
      <Further tariff={tariff} shown={shown} onRaise={() => setRaising(true)} />
      {raising && <RaiseDialog written={written} onClose={() => setRaising(false)} onTake={onWrite} />}
    </Page>
  );
}

interface NewVersionProps {
  tariff: TariffWholeJson;
  /** What the new version starts from. */
  written: WrittenTariff;
  organisation: OrganisationJson;
  onDone: () => void;
}

function NewVersion({ tariff, written, organisation, onDone }: NewVersionProps) {
  const { send, busy, problem } = useSend('addTariffVersion');
  const status = useStatus();
  const [start] = useState(() => ({
    ...draftOf(written),
    from: nextBegin(tariff.latest, todayIn(organisation.zone)),
  }));
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
