// What a new version says that the one before it did not, and what it says no longer.
import type { Tariff } from '@colla/rates';
import { tariffs as say } from '../../catalogue/tariffs.ts';
import { Part } from '../../ui/index.ts';
import { type Change, changesBetween } from './changes.ts';

interface VersionChangesProps {
  before: Tariff;
  now: Tariff | undefined;
  locale: string;
}

export function VersionChanges({ before, now, locale }: VersionChangesProps) {
  const changes = now ? changesBetween(before, now, locale) : [];
  const count = (how: Change['how']) => changes.filter((change) => change.how === how).length;
  const found = { added: count('added'), changed: count('changed'), removed: count('removed') };
  return (
    <Part title={say('changes', { version: before.version })}>
      <p className="aside">{changes.length === 0 ? say('changesNone') : say('changesFound', found)}</p>
      <ul className="tariff-changes">
        {changes.map(({ clause, how, was, is }) => (
          <li key={clause}>
            <p className="aside">{say(`change_${how}`)}</p>
            {is && (
              <p>
                <ins>{is}</ins>
              </p>
            )}
            {was && (
              <p>
                <del>{how === 'changed' ? say('changeWas', { sentence: was }) : was}</del>
              </p>
            )}
          </li>
        ))}
      </ul>
    </Part>
  );
}
