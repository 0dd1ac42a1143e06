// Hours that a department or presenter covers: granted, used, left, lapsed or lost, and which calls drew on them.
import type { StatementJson } from '@colla/wire';
import { statements as say } from '../../catalogue/statements.ts';
import { CopyText, Hours, Opens } from '../../ui/index.ts';
import { coveredText, drawsOf, type Reckoned, sentenceFor, usedShare } from './reckoning.ts';

type Drawn = StatementJson['entitlements'][number];

export function Covered({ drawn, of }: { drawn: Drawn; of: Reckoned }) {
  const parts = (['granted', 'used', 'left', 'lapsed'] as const).filter(
    (part) => part !== 'lapsed' || drawn.lapsed > 0,
  );
  return (
    <section className="statement-covered">
      <h3>{say('covered')}</h3>
      <p>{sentenceFor(drawn.clause, of)}</p>
      <dl className="figures">
        {parts.map((part) => (
          <div key={part}>
            <dt>{say(part)}</dt>
            <dd>
              <Hours minutes={drawn[part]} /> h
            </dd>
          </div>
        ))}
      </dl>
      <span className="drawn" aria-hidden="true">
        <span style={{ inlineSize: `${usedShare(drawn)}%` }} />
      </span>
      {drawn.lost !== undefined && <p className="overdue">{say('lost', { why: drawn.lost })}</p>}
      {drawn.occasions && <p>{say('occasions', drawn.occasions)}</p>}
      <Opens summary={<span>{say('drawnBy')}</span>}>
        <ul>
          {drawsOf(drawn, of).map((draw) => (
            <li key={draw}>{draw}</li>
          ))}
        </ul>
        <CopyText text={() => coveredText(drawn, of)} />
      </Opens>
    </section>
  );
}
