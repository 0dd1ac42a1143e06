// What the money of a season opens to in the end comes with the first opening: it needs what reads and explains a whole
// engagement, which the first screen does without.
import { type ReactNode, useEffect, useState } from 'react';
import { season as say } from '../catalogue/season.ts';
import { shell } from '../catalogue/shell.ts';
import type { Explained } from '../features/season/whys.ts';
import { Loading, ProblemNote } from '../ui/index.ts';

type Whys = typeof import('./season-whys.tsx');

export const EXPLAINED: Explained = {
  owing: (part, which) => <Later>{({ Owing }) => <Owing part={part} which={which} />}</Later>,
  earning: (earning) => <Later>{({ EarnedLines }) => <EarnedLines earning={earning} />}</Later>,
};

let loaded: Whys | undefined;

function Later({ children }: { children: (whys: Whys) => ReactNode }) {
  const [whys, setWhys] = useState(loaded);
  const [failed, setFailed] = useState(false);
  useEffect(() => {
    if (whys || failed) return;
    import('./season-whys.tsx').then(
      (module) => {
        loaded = module;
        setWhys(module);
      },
      () => setFailed(true),
    );
  }, [whys, failed]);
  if (whys) return children(whys);
  if (!failed) return <Loading what={say('why')} />;
  return <ProblemNote problem={{ detail: shell('screenFailed') }} again={() => setFailed(false)} />;
}
