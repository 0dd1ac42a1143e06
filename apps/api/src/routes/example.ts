import type { Temporal } from '@colla/calendar';
import type { Books, Entering } from '@colla/store';
import { showSeason } from '@colla/wire';
import type { Handlers } from '../answer.ts';
import { notEmpty, refuse } from '../refusals.ts';

export const example = {
  openExample: async ({ books, now, newId }) => {
    const { id, zone } = await books.lockOrganisation();
    if (!(await isEmpty(books, now))) return refuse(notEmpty);
    const { exampleSeason } = await import('@colla/example');
    const story = exampleSeason({ newId, now: now.toZonedDateTimeISO(zone) });
    await books.changeOrganisation({ id, ...story.organisation });
    await keep(story, books, { today: now.toZonedDateTimeISO(zone).toPlainDate() });
    return showSeason(story.season);
  },
} satisfies Partial<Handlers>;

async function isEmpty(books: Books, now: Temporal.Instant): Promise<boolean> {
  const one = { limit: 1 };
  const lists = [
    books.engagements({ ...one, now }),
    books.tariffs(one),
    books.parties(one),
    books.seasons(one),
  ];
  return (await Promise.all(lists)).every(({ items }) => items.length === 0);
}

type Story = ReturnType<typeof import('@colla/example').exampleSeason>;

async function keep(story: Story, books: Books, entering: Entering): Promise<void> {
  for (const party of story.parties) await books.saveParty(party);
  for (const { id, tariff } of story.tariffs) await books.addTariffVersion(id, tariff);
  await books.saveSeason(story.season);
  for (const engagement of story.engagements) await books.saveEngagement(engagement);
  for (const { draft, ...as } of story.invoices) await books.issueInvoice(draft, as, entering);
  for (const payment of story.payments) await books.savePayment(payment, entering);
}
