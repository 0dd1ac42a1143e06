// Hours that a department or presenter covers: granted, used, left, and which calls drew on them.
import type { StatementJson } from '@colla/wire';
import { statements as say } from '../../catalogue/statements.ts';
import { sayHours } from '../../locale.ts';
import { Hours, Opens } from '../../ui/index.ts';
import { usedShare } from './reckoning.ts';
import { Why } from './why.tsx';

interface CoveredProps {
  drawn: StatementJson['entitlements'][number];
  sentence: string | undefined;
  names: Readonly<Record<string, string>>;
}

export function Covered({ drawn, sentence, names }: CoveredProps) {
  const draws = drawn.draws.map(({ call, minutes }) => `${names[call] ?? call}: ${sayHours(minutes)} h`);
  return (
    <section className="statement-covered">
      <h3>{say('covered')}</h3>
      <dl className="figures">
        {(['granted', 'used', 'left'] as const).map((part) => (
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
      <Opens summary={<span>{say('draws')}</span>}>
        <Why sentence={sentence} rows={[[say('draws'), draws.join('; ')]]} />
      </Opens>
    </section>
  );
}
