// Which tariff, and which version of it; most have one, and are not asked for it.
import type { TariffJson, TariffWholeJson } from '@colla/wire';
import { tariffs as say } from '../../catalogue/tariffs.ts';
import { sayDay } from '../../locale.ts';
import { Choice } from '../../ui/index.ts';

/** A tariff by its id; its newest version where none is named. */
export interface ChosenVersion {
  readonly tariff: string;
  readonly version?: number | undefined;
}

interface VersionChoiceProps {
  label: string;
  versionLabel: string;
  tariffs: readonly TariffJson[];
  /** The one chosen, with its versions, once it is here. */
  whole: TariffWholeJson | undefined;
  chosen: ChosenVersion;
  onChoose: (chosen: ChosenVersion) => void;
}

export function VersionChoice(props: VersionChoiceProps) {
  const { label, versionLabel, tariffs, whole, chosen, onChoose } = props;
  const versions = whole?.versions ?? [];
  return (
    <>
      <Choice
        label={label}
        value={chosen.tariff}
        options={tariffs.map(({ id, name }) => ({ value: id, label: name }))}
        onChoose={(tariff) => onChoose({ tariff })}
      />
      {versions.length > 1 && (
        <Choice
          label={versionLabel}
          value={String(chosen.version ?? whole?.latest.version ?? '')}
          options={versions.map(({ version, from }) => ({
            value: String(version),
            label: say('since', { version, day: sayDay(from) }),
          }))}
          onChoose={(version) => onChoose({ ...chosen, version: Number(version) })}
        />
      )}
    </>
  );
}

/** The version that is meant. */
export function versionOf(whole: TariffWholeJson, { version }: ChosenVersion): TariffWholeJson['latest'] {
  return whole.versions.find((each) => each.version === version) ?? whole.latest;
}
