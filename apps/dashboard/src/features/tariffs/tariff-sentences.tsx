// One version of a tariff, clause by clause, in the sentences that a payer reads.
import type { TariffWholeJson } from '@colla/wire';
import { tariffs as say } from '../../catalogue/tariffs.ts';
import { sayDay } from '../../locale.ts';
import { Options, Part } from '../../ui/index.ts';
import './tariff.css';
import { standingOf } from './versions.ts';

interface TariffSentencesProps {
  tariff: TariffWholeJson;
  shown: TariffWholeJson['latest'];
  today: string;
  onChoose: (version: number) => void;
}

export function TariffSentences({ tariff, shown, today, onChoose }: TariffSentencesProps) {
  const { versions } = tariff;
  const options = versions.map((version) => ({
    value: String(version.version),
    label: `${say('since', { version: version.version, day: sayDay(version.from) })}, ${say(standingOf(version, versions, today), { day: sayDay(version.from) })}`,
  }));
  const payers = new Map(shown.written.clauses.map(({ id, payer }) => [id, payer]));
  return (
    <Part title={say('sentences')}>
      {versions.length > 1 && (
        <Options
          label={say('version')}
          value={String(shown.version)}
          options={options}
          onChoose={(version) => onChoose(Number(version))}
        />
      )}
      <ol className="tariff-sentences">
        {shown.sentences.map(({ clause, sentence }) => (
          <li key={clause}>
            <p>{sentence}</p>
            {payers.get(clause) && (
              <p className="aside">{say('paidBy', { payer: payers.get(clause) ?? '' })}</p>
            )}
          </li>
        ))}
      </ol>
      {shown.written.note && (
        <div>
          <h3>{say('note')}</h3>
          <p>{shown.written.note}</p>
        </div>
      )}
    </Part>
  );
}
