// The menu of clauses: by what they do, each kind by its title, with the sentence that says what it is for.
import { KINDS, type Kind, menu } from '@colla/rates';
import { type KeyboardEvent, useState } from 'react';
import { tariffs as say } from '../../catalogue/tariffs.ts';
import { Button, Dialog, TextField } from '../../ui/index.ts';
import { GROUPS, type Group, groupOf } from './clause-groups.ts';

export function ClauseMenu({ onChoose, onClose }: { onChoose: (kind: Kind) => void; onClose: () => void }) {
  const [wanted, setWanted] = useState('');
  const found = KINDS.filter((kind) => speaksOf(kind, wanted));
  const [first] = GROUPS.flatMap((group) => found.filter((kind) => groupOf(kind) === group));
  const takeFirst = (event: KeyboardEvent) => {
    if (event.key !== 'Enter' || wanted.trim() === '' || !first) return;
    event.preventDefault();
    onChoose(first);
  };
  return (
    <Dialog title={say('addClauseTitle')} onClose={onClose}>
      <div className="clause-menu">
        {/* biome-ignore lint/a11y/noStaticElementInteractions: Enter in the field inside it takes the first that is found */}
        <div onKeyDown={takeFirst}>
          <TextField
            label={say('menuSearch')}
            hint={say('menuSearchHint')}
            value={wanted}
            onType={setWanted}
          />
        </div>
        {found.length === 0 && <p>{say('menuNone')}</p>}
        {GROUPS.map((group) => (
          <KindsOf
            key={group}
            group={group}
            kinds={found.filter((kind) => groupOf(kind) === group)}
            onChoose={onChoose}
          />
        ))}
      </div>
    </Dialog>
  );
}

interface KindsOfProps {
  group: Group;
  kinds: readonly Kind[];
  onChoose: (kind: Kind) => void;
}

function KindsOf({ group, kinds, onChoose }: KindsOfProps) {
  if (kinds.length === 0) return undefined;
  return (
    <section aria-label={say(`group_${group}`)}>
      <h3>{say(`group_${group}`)}</h3>
      <ul>
        {kinds.map((kind) => (
          <li key={kind}>
            <Button onPress={() => onChoose(kind)}>{menu[kind].title}</Button>
            <p className="aside">{menu[kind].help}</p>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** Whether a kind says of itself, or shows in its examples, every word looked for. */
function speaksOf(kind: Kind, wanted: string): boolean {
  const { title, help, examples } = menu[kind];
  const said = [title, help, ...examples.map((example) => example.case)].join(' ').toLowerCase();
  return wanted
    .toLowerCase()
    .split(/\s+/)
    .every((word) => said.includes(word));
}
