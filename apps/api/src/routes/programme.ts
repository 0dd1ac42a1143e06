import { refused } from '@colla/refusal';
import { readEach, readWork } from '@colla/wire';
import type { Handlers } from '../answer.ts';
import { change } from '../move.ts';

export const programme = {
  setProgramme: async (ask) =>
    change(ask, (open) => {
      const known = new Set(open.programme.map(({ id }) => id));
      const works = readEach(ask.body.works, '/works', (work) =>
        readWork(work, work.id !== undefined && known.delete(work.id) ? work.id : ask.newId()),
      );
      return refused(works) ? works : { ...open, programme: works };
    }),
} satisfies Partial<Handlers>;
