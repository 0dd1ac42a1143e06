import { cameBy } from '@colla/engagements';
import { refused } from '@colla/refusal';
import { readEach, readWork } from '@colla/wire';
import type { Handlers } from '../answer.ts';
import { change } from '../move.ts';

export const programme = {
  setProgramme: async (ask) =>
    change(ask, (open, { at }) => {
      const known = new Set(open.programme.map(({ id }) => id));
      const works = readEach(ask.body.works, '', (work) =>
        readWork(work, work.id !== undefined && known.delete(work.id) ? work.id : ask.newId()),
      );
      const came = refused(works) ? works : cameBy(works, at.toPlainDate());
      return refused(came) ? came.at('/works') : { ...open, programme: came };
    }),
} satisfies Partial<Handlers>;
