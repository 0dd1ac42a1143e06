// One line of a statement, and what it opens to.
import type { StatementLineJson } from '@colla/wire';
import { sayDay } from '../../locale.ts';
import { AmountLine } from '../../ui/index.ts';
import { type Reckoned, whenOf } from './reckoning.ts';
import { lineWhy } from './whys.ts';

export function LineView({ line, of }: { line: StatementLineJson; of: Reckoned }) {
  const when = line.on === undefined ? whenOf(line, of) : sayDay(line.on);
  return (
    <li>
      <AmountLine why={lineWhy(line, of)} under={when} bare />
    </li>
  );
}
