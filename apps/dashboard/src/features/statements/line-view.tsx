// One line of a statement, and what it opens to.
import type { StatementLineJson } from '@colla/wire';
import { statements as say } from '../../catalogue/statements.ts';
import { sayDay } from '../../locale.ts';
import { Figure, Opens } from '../../ui/index.ts';
import { namedCalls, type Reckoned, sentenceFor, whenOf } from './reckoning.ts';
import { Why } from './why.tsx';

export function LineView({ line, of }: { line: StatementLineJson; of: Reckoned }) {
  const calls = namedCalls(line.calls, of);
  const when = line.on === undefined ? whenOf(line, of) : sayDay(line.on);
  const summary = (
    <>
      <span>
        {line.what}
        {when && <span className="aside when">{when}</span>}
      </span>
      <Figure amount={line.amount} currency={of.statement.currency} bare />
    </>
  );
  const facts = line.facts.map(sayFact);
  return (
    <li>
      <Opens summary={summary}>
        <Why
          sentence={sentenceFor(line.clause, of)}
          rows={[
            [say('calls'), calls.length > 1 ? calls.join('; ') : ''],
            [say('facts'), facts.join('; ')],
            [say('arithmetic'), line.arithmetic],
          ]}
        />
      </Opens>
    </li>
  );
}

/** What was judged is a sentence by itself: “cancelled 42.5 h before the rehearsal”. */
function sayFact({ name, value }: StatementLineJson['facts'][number]): string {
  return name === 'why' ? value : `${name} ${value}`;
}
