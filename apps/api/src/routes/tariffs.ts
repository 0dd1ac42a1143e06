import { readTariff } from '@colla/rates';
import { showPage, showTariff, showTariffWhole } from '@colla/wire';
import type { Handlers } from '../answer.ts';
import { found, must } from '../refusals.ts';
import { mayFollow } from '../tariff-versions.ts';

export const tariffs = {
  listTariffs: async ({ query, books }) => {
    const [page, { locale }] = await Promise.all([books.tariffs(query), books.organisation()]);
    return showPage(page, (tariff) => showTariff(tariff, locale));
  },

  addTariff: async ({ body, books, newId }) => {
    const tariff = must(readTariff({ ...body, version: 1 }));
    const { locale } = await books.organisation();
    const id = newId();
    await books.addTariffVersion(id, tariff);
    return showTariffWhole({ id, versions: [tariff] }, locale);
  },

  getTariff: async ({ params, books }) => {
    const [kept, { locale }] = await Promise.all([books.tariff(params.id), books.organisation()]);
    return showTariffWhole(found(kept, 'tariff'), locale);
  },

  addTariffVersion: async ({ params: { id }, body, books }) => {
    const [kept, { locale }] = await Promise.all([books.tariff(id), books.organisation()]);
    const { versions } = found(kept, 'tariff');
    const version = (versions.at(-1)?.version ?? 0) + 1;
    const tariff = must(mayFollow(versions, must(readTariff({ ...body, version }))));
    await books.addTariffVersion(id, tariff);
    return showTariffWhole({ id, versions: [...versions, tariff] }, locale);
  },
} satisfies Partial<Handlers>;
