// What else can be done with a tariff: set it beside another, raise it, take it into a new season or out as a file.
import { readTariff } from '@colla/rates';
import { granted } from '@colla/refusal';
import type { TariffWholeJson } from '@colla/wire';
import { tariffs as say } from '../../catalogue/tariffs.ts';
import { Button, ButtonLink, Buttons, Part, useStatus } from '../../ui/index.ts';
import { fileName, writeFile } from './file.ts';
import { saveAs } from './save-as.ts';

interface FurtherProps {
  tariff: TariffWholeJson;
  /** The version that is seen: it is the one that is raised, duplicated and saved. */
  shown: TariffWholeJson['latest'];
  onRaise: () => void;
}

export function Further({ tariff, shown, onRaise }: FurtherProps) {
  const { written } = shown;
  const status = useStatus();
  const save = () => {
    saveAs(fileName(written), writeFile(granted(readTariff(written))));
    status(say('exported', { name: tariff.name, version: written.version }));
  };
  return (
    <Part title={say('further')}>
      <Buttons>
        <Button onPress={onRaise}>{say('raise')}</Button>
        <ButtonLink to={`/tariffs/new?of=${tariff.id}&version=${shown.version}`}>
          {say('duplicate')}
        </ButtonLink>
        <ButtonLink to={`/tariffs/compare?${toCompare(tariff, shown)}`}>{say('compare')}</ButtonLink>
        <Button onPress={save}>{say('exportIt')}</Button>
      </Buttons>
    </Part>
  );
}

/** The version seen beside the newest; the newest beside the one before it; otherwise beside a tariff still to be chosen. */
function toCompare({ id, latest }: TariffWholeJson, { version }: TariffWholeJson['latest']): string {
  if (version < latest.version) return `one=${id}~${version}&other=${id}~${latest.version}`;
  return version > 1 ? `one=${id}~${version - 1}&other=${id}~${version}` : `one=${id}`;
}
