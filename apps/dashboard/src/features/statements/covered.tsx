// Hours that a department or presenter covers, and their own account: occasion by occasion what was granted, which calls
// drew on it, what was left, lapsed or lost.
import type { StatementJson } from '@colla/wire';
import { statements as say } from '../../catalogue/statements.ts';
import { CopyText, Hours, Opens } from '../../ui/index.ts';
import { coveredText, grantName, grantSays, usedOf, usedShare } from './account.ts';
import { type Reckoned, sentenceFor } from './reckoning.ts';

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
      <ul className="statement-lines">
        {drawn.grants.map((grant, at) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: occasions stand in their order
          <li key={at}>
            <GrantView grant={grant} />
          </li>
        ))}
      </ul>
      <div>
        <CopyText text={() => coveredText(drawn, of)} />
      </div>
    </section>
  );
}

/** One occasion: what it granted, each call that drew on it, and what became of the rest. */
function GrantView({ grant }: { grant: Drawn['grants'][number] }) {
  const summary = (
    <>
      <span>{grantName(grant)}</span>
      <span className="figure">{usedOf(grant)}</span>
    </>
  );
  return (
    <Opens summary={summary}>
      <ol className="statement-account">
        {grantSays(grant).map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ol>
    </Opens>
  );
}
