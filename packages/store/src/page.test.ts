// Lists by page: complete, each once, whatever is added while somebody turns the pages.

import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { at, call, inquiry, newBooks, newId, organisation, party } from '../trial/cast.ts';
import { databases, type Trial } from '../trial/databases.ts';
import type { Books, Page, PageOf } from './books.ts';

const now = at('2026-02-10', '10:00').toInstant();

describe.each(databases)('$name', (database) => {
  let trial: Trial;
  beforeAll(async () => {
    trial = await database.begin();
  });
  afterAll(() => trial.end());

  /** Turns all pages, doing something between two of them. */
  async function turn<Item>(
    list: (page: PageOf) => Promise<Page<Item>>,
    limit: number,
    between: () => Promise<unknown> = async () => undefined,
  ): Promise<Item[][]> {
    const pages: Item[][] = [];
    let after: string | undefined;
    do {
      const page = await list({ after, limit });
      pages.push([...page.items]);
      after = page.next;
      await between();
    } while (after !== undefined);
    return pages;
  }

  const within = <Answer>(home: { id: string }, work: (books: Books) => Promise<Answer>) =>
    trial.store.within(home.id, work);

  test('the newest engagements come first, and those asked for at one instant once each', async () => {
    const { home, ...others } = await newBooks(trial.store);
    // Seven engagements, three of them at the same instant: by hand, pages of three hold 3, 3 and 1.
    const days = [
      '2026-02-01',
      '2026-02-02',
      '2026-02-02',
      '2026-02-02',
      '2026-02-03',
      '2026-02-04',
      '2026-02-05',
    ];
    const asked = days.map((on) => inquiry(others, { askedAt: at(on, '09:00') }));
    await within(home, async (books) => {
      for (const one of asked) await books.saveEngagement(one);
    });
    const late = () =>
      within(home, (books) => books.saveEngagement(inquiry(others, { askedAt: at('2026-03-01', '09:00') })));
    const pages = await turn((page) => within(home, (books) => books.engagements({ ...page, now })), 3, late);
    expect(pages.map((page) => page.length)).toEqual([3, 3, 1]);
    expect(pages.flat().map(({ id }) => id)).toEqual(asked.map(({ id }) => id).reverse());
  });

  test('parties come by name, complete, while others are entered before and after the page', async () => {
    const home = organisation();
    await trial.store.addOrganisation(home);
    const names = Array.from({ length: 25 }, (_, n) => `Singer ${String(n).padStart(2, '0')}`);
    await within(home, (books) => Promise.all(names.map((name) => books.saveParty(party(name)))));
    let added = 0;
    const pages = await turn(
      (page) => within(home, (books) => books.parties(page)),
      10,
      () => within(home, (books) => books.saveParty(party(`Alto ${++added}`))),
    );
    expect(pages.flat().map(({ name }) => name)).toEqual(names);
  });

  test('a last page that is just full has no next one', async () => {
    const home = organisation();
    await trial.store.addOrganisation(home);
    await within(home, (books) => Promise.all(['a', 'b'].map((name) => books.saveParty(party(name)))));
    expect(await within(home, (books) => books.parties({ limit: 2 }))).not.toHaveProperty('next');
  });

  const encoded = (of: unknown) => Buffer.from(JSON.stringify(of)).toString('base64url');
  const bad: [string, string][] = [
    ['no cursor at all', 'page 2'],
    ['empty', ''],
    ['of another list', encoded(['parties', 'a', newId()])],
    ['without a place', encoded(['engagements'])],
    ['of an instant that is none', encoded(['engagements', 'yesterday', newId()])],
    ['of an instant before the first year', encoded(['engagements', '-000001-01-01T00:00:00Z', newId()])],
    ['of an instant that no clock shows', encoded(['engagements', '2026-02-30 00:00:00+00', newId()])],
    ['of an id that is none', encoded(['engagements', '2026-01-01T00:00:00Z', "' or true --"])],
    ['too long', encoded(['engagements', '2026-01-01T00:00:00Z', newId(), 1])],
  ];
  test.each(bad)('a cursor that is %s is refused in one sentence', async (_, after) => {
    const { home } = await newBooks(trial.store);
    await expect(within(home, (books) => books.engagements({ after, limit: 5, now }))).rejects.toMatchObject({
      refusal: {
        code: 'store/bad-cursor',
        sentence: 'This is not a place in the list. Begin again at its first page.',
        field: '/after',
      },
    });
  });

  test('the pages of one stage pass the others over', async () => {
    const { home, ...others } = await newBooks(trial.store);
    await within(home, async (books) => {
      for (const on of ['2026-02-01', '2026-02-02', '2026-02-03']) {
        await books.saveEngagement(inquiry(others, { askedAt: at(on, '09:00'), calls: [call(on)] }));
      }
    });
    const turned = (stage: 'inquiry' | 'agreed') =>
      turn((page) => within(home, (books) => books.engagements({ ...page, now, stage })), 2);
    expect((await turned('inquiry')).map((page) => page.length)).toEqual([2, 1]);
    expect(await turned('agreed')).toEqual([[]]);
  });
});
