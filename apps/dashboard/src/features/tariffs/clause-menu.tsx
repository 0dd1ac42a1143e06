// The menu of clauses: each kind by its title, with the sentence that says what it is for.
import { KINDS, type Kind, menu } from '@colla/rates';
import { tariffs as say } from '../../catalogue/tariffs.ts';
import { Button, Dialog } from '../../ui/index.ts';

export function ClauseMenu({ onChoose, onClose }: { onChoose: (kind: Kind) => void; onClose: () => void }) {
  return (
    <Dialog title={say('addClauseTitle')} onClose={onClose}>
      <ul className="clause-menu">
        {KINDS.map((kind) => (
          <li key={kind}>
            <Button onPress={() => onChoose(kind)}>{menu[kind].title}</Button>
            <p className="aside">{menu[kind].help}</p>
          </li>
        ))}
      </ul>
    </Dialog>
  );
}
