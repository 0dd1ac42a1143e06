import type { Temporal } from '@colla/calendar';
import type { Books } from '@colla/store';
import { showSeason } from '@colla/wire';
import type { Handlers } from '../answer.ts';
import { keepInvoice, type Printing } from '../paper.ts';
import { notEmpty, refuse } from '../refusals.ts';

export const example = {
  openExample: async ({ books, now, newId, paper }) => {
    const { id, zone } = await books.lockOrganisation();
    if (!(await isEmpty(books, now))) return refuse(notEmpty);
    const { exampleSeason } = await import('@colla/example');
    const story = exampleSeason({ newId, now: now.toZonedDateTimeISO(zone) });
    const organisation = { id, ...story.organisation };
    await books.changeOrganisation(organisation);
    await keep(story, { books, paper, now, organisation });
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

async function keep(story: Story, to: Omit<Printing, 'engagement'>): Promise<void> {
  const { books, now, organisation } = to;
  const entering = { today: now.toZonedDateTimeISO(organisation.zone).toPlainDate() };
  for (const party of story.parties) await books.saveParty(party);
  for (const { id, tariff } of story.tariffs) await books.addTariffVersion(id, tariff);
  await books.saveSeason(story.season);
  for (const engagement of story.engagements) await books.saveEngagement(engagement);
  for (const { draft, ...as } of story.invoices) {
    const invoice = await books.issueInvoice(draft, as, entering);
    const engagement = story.engagements.find(({ id }) => id === invoice.engagement);
    await keepInvoice(invoice, { ...to, engagement });
  }
  for (const payment of story.payments) await books.savePayment(payment, entering);
}
