// Everything that can be said of one call.
import type { CallJson } from '@colla/wire';
import { engagements as say } from '../../catalogue/engagements.ts';
import { Button, Dialog } from '../../ui/index.ts';
import type { CallMove } from './moves.ts';
import { callName, sayStanding } from './names.ts';

interface MoreDialogProps {
  call: CallJson;
  moves: readonly CallMove[];
  onMove: (move: CallMove) => void;
  onClose: () => void;
}

export function MoreDialog({ call, moves, onMove, onClose }: MoreDialogProps) {
  return (
    <Dialog title={callName(call)} onClose={onClose}>
      <p className="aside">{sayStanding(call)}</p>
      <ul className="call-moves">
        {moves.map((move) => (
          <li key={move}>
            <Button onPress={() => onMove(move)}>
              {say(move === 'play' && call.standing.is === 'played' ? 'playAgain' : move)}
            </Button>
          </li>
        ))}
      </ul>
    </Dialog>
  );
}
