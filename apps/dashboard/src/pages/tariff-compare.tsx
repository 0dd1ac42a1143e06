// Two tariffs, or two versions of one, on the same engagement. Which two is said in the address, to be kept or sent.
import { readTariff, type Tariff } from '@colla/rates';
import { refused } from '@colla/refusal';
import type { OrganisationJson, TariffJson, TariffWholeJson } from '@colla/wire';
import { useState } from 'react';
import { useLocation, useSearch } from 'wouter';
import { useAnswer } from '../books.ts';
import { tariffs as say } from '../catalogue/tariffs.ts';
import { compareOn } from '../features/tariffs/comparison.ts';
import { ComparisonTable } from '../features/tariffs/comparison-table.tsx';
import { startingExamples } from '../features/tariffs/example.ts';
import { ExampleForm, namesOf } from '../features/tariffs/example-form.tsx';
import { priceExample } from '../features/tariffs/example-priced.ts';
import { type ChosenVersion, VersionChoice, versionOf } from '../features/tariffs/version-choice.tsx';
import { spokenLocale } from '../locale.ts';
import { Page, Part, Shown } from '../ui/index.ts';

export function CompareTariffs({ organisation }: { organisation: OrganisationJson }) {
  const answer = useAnswer('listTariffs', { query: { limit: 200 } });
  return (
    <Page title={say('compareTitle')} under={say('compareUnder')}>
      <Shown answer={answer} what={say('fetching')}>
        {({ items }) => {
          const [first] = items;
          return first ? (
            <Chosen organisation={organisation} tariffs={items} first={first} />
          ) : (
            <p>{say('compareNone')}</p>
          );
        }}
      </Shown>
    </Page>
  );
}

interface ChosenProps {
  organisation: OrganisationJson;
  tariffs: readonly TariffJson[];
  first: TariffJson;
}

function Chosen({ organisation, tariffs, first }: ChosenProps) {
  const search = new URLSearchParams(useSearch());
  const [, goTo] = useLocation();
  const one = readChosen(search.get('one')) ?? { tariff: first.id };
  const other = readChosen(search.get('other')) ?? otherThan(one, tariffs);
  const ones = useAnswer('getTariff', { params: { id: one.tariff } });
  const others = useAnswer('getTariff', { params: { id: other.tariff } });
  const choose = (next: { one?: ChosenVersion; other?: ChosenVersion }) => {
    const chosen = { one, other, ...next };
    const said = new URLSearchParams({ one: sayChosen(chosen.one), other: sayChosen(chosen.other) });
    goTo(`/tariffs/compare?${said}`, { replace: true });
  };
  return (
    <>
      <div className="fields">
        <VersionChoice
          label={say('compareOne')}
          versionLabel={say('versionOfOne')}
          tariffs={tariffs}
          whole={ones.is === 'here' ? ones.value : undefined}
          chosen={one}
          onChoose={(one) => choose({ one })}
        />
        <VersionChoice
          label={say('compareOther')}
          versionLabel={say('versionOfOther')}
          tariffs={tariffs}
          whole={others.is === 'here' ? others.value : undefined}
          chosen={other}
          onChoose={(other) => choose({ other })}
        />
      </div>
      <Shown answer={ones} what={say('fetchingOne')}>
        {(ones) => (
          <Shown answer={others} what={say('fetchingOne')}>
            {(others) => (
              <Compared
                key={`${sayChosen(one)} ${sayChosen(other)}`}
                one={read(ones, one)}
                other={read(others, other)}
                zone={organisation.zone}
              />
            )}
          </Shown>
        )}
      </Shown>
    </>
  );
}

interface ComparedProps {
  one: Tariff | undefined;
  other: Tariff | undefined;
  zone: string;
}

function Compared({ one, other, zone }: ComparedProps) {
  const [example, setExample] = useState(() => startingExamples(one?.clauses ?? []).whole);
  if (!one || !other) return <p className="overdue">{say('compareUnread')}</p>;
  const said = { locale: spokenLocale(), zone };
  const { slips } = priceExample(example, one, { ...said, currency: one.currency });
  return (
    <>
      <ComparisonTable
        comparison={compareOn(example, one, other, said)}
        one={one}
        other={other}
        callNames={namesOf(example.calls)}
      />
      <Part title={say('compareOn')}>
        <ExampleForm
          example={example}
          currency={one.currency}
          slips={slips}
          onChange={setExample}
          onAgain={() => setExample(startingExamples(one?.clauses ?? []).whole)}
        />
      </Part>
    </>
  );
}

function read(whole: TariffWholeJson, chosen: ChosenVersion): Tariff | undefined {
  const tariff = readTariff(versionOf(whole, chosen).written);
  return refused(tariff) ? undefined : tariff;
}

/** The version before, where there is one; another tariff otherwise. */
function otherThan({ tariff }: ChosenVersion, tariffs: readonly TariffJson[]): ChosenVersion {
  const chosen = tariffs.find(({ id }) => id === tariff);
  if (chosen && chosen.latest.version > 1) return { tariff, version: chosen.latest.version - 1 };
  return { tariff: tariffs.find(({ id }) => id !== tariff)?.id ?? tariff };
}

function readChosen(said: string | null): ChosenVersion | undefined {
  const [tariff, version] = said?.split('~') ?? [];
  if (!tariff) return undefined;
  return version ? { tariff, version: Number(version) } : { tariff };
}

function sayChosen({ tariff, version }: ChosenVersion): string {
  return version === undefined ? tariff : `${tariff}~${version}`;
}
