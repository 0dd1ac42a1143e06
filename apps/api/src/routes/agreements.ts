import { showAgreement } from '@colla/wire';
import type { Handlers } from '../answer.ts';
import { found } from '../refusals.ts';

export const agreements = {
  getAgreement: async ({ params, books }) => {
    const { agreement, engagement } = found(await books.agreement(params.id), 'agreement');
    return showAgreement(agreement, engagement);
  },
} satisfies Partial<Handlers>;
