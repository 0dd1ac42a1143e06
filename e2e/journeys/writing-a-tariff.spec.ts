// A tariff is written by filling in its sentences: on a desk from the keyboard alone, on a phone by touch. Then it is
// raised, set beside what it was, taken out as a file and read in again.
// By hand: an hour of rehearsal at 48 a half hour is 96.00; called off a day before, half of it is 48.00.

import type { Locator, Page, TestInfo } from '@playwright/test';
import { barriers } from '../barriers.ts';
import { openExample } from '../example.ts';
import { seesWhereItIs, walkTo } from '../keyboard.ts';
import { takePicture } from '../looking.ts';
import { expect, goTo, isTold, openBook, test } from '../pianist.ts';
import { blank, openExamples } from '../tariff.ts';

/** How one presses, types and chooses. */
interface Hands {
  readonly press: (target: Locator) => Promise<void>;
  readonly write: (target: Locator, text: string) => Promise<void>;
  /** By the word that stands for it, whatever the sentence says for it by then. */
  readonly choose: (target: Locator, word: string) => Promise<void>;
  readonly tick: (target: Locator) => Promise<void>;
}

test('a tariff is written in sentences, raised, compared, and taken out and in as a file', async ({
  page,
  server,
}, { project }) => {
  const hands = project.name === 'desk' ? atTheKeyboard(page) : byTouch(page);
  await openBook(page, server);
  await test.step('begins a tariff', () => begin(page, hands));
  await test.step('fills in a rate', () => fillInRate(page, hands));
  await test.step('types below a sentence what it does not ask', () => typeBelow(page, hands));
  await test.step('fills in what a cancellation costs', () => fillInCancellation(page, hands));
  await test.step('puts the one before the other, and takes a copy out again', () => reorder(page, hands));
  await test.step('sees three examples priced', () => seeExamples(page));
  await test.step('is asked before leaving', () => almostLeave(page, hands));
  await test.step('keeps it', () => keep(page, hands));
  await test.step('raises it by three per cent', () => raise(page, hands));
  await test.step('sets the two versions side by side', () => compare(page, hands));
  await test.step('takes it out as a file and reads it in', () => outAndIn(page, hands));
});

async function begin(page: Page, { press, write }: Hands): Promise<void> {
  await press(page.getByRole('navigation').getByRole('link', { name: 'Tariffs' }));
  await press(page.getByRole('link', { name: 'Write down a tariff' }));
  await write(page.getByLabel('Name of the tariff'), 'Lessons and rehearsals');
  await press(page.getByRole('button', { name: 'Keep the tariff' }));
  await expect(page.getByRole('alert')).toHaveText(/A tariff without a clause charges nothing/);
}

async function addByWord(page: Page, { press, write }: Hands, word: string, kind: string): Promise<void> {
  await press(page.getByRole('button', { name: 'Add a clause' }));
  const dialog = page.getByRole('dialog');
  await write(dialog.getByLabel('What should it do?'), word);
  await press(dialog.getByRole('button', { name: kind, exact: true }));
  await expect(dialog).toBeHidden();
}

async function fillInRate(page: Page, hands: Hands): Promise<void> {
  const { press, write, tick } = hands;
  await addByWord(page, hands, 'half hour', 'Rate for time');
  const rate = clauseAt(page, 1);
  const calls = rate.getByRole('button', { name: /^Kinds of call: / });
  // One is taken to the first field of what was added.
  await expect(calls).toBeFocused();
  await press(calls);
  await tick(rate.getByRole('checkbox', { name: 'Rehearsal', exact: true }));
  await press(rate.getByRole('button', { name: 'Done' }));
  await expect(calls).toBeFocused();
  await expect(calls).toHaveText('Rehearsals');
  const price = blank(rate, 'Price');
  await write(price, '4o');
  await expect(price).toHaveAttribute('aria-invalid', 'true');
  await expect(price).toHaveAccessibleDescription(/“4o” is not an amount/);
  await write(price, '48');
  await expect(price).toBeFocused();
  const each = blank(rate, 'For each (minutes)');
  // At rest a field reads as the sentence does; in it stands what was typed.
  await expect(each).toHaveValue('an hour');
  await write(each, '30');
  await expect(price).toHaveValue('48.00');
  await expect(each).toHaveValue('30');
  const least = blank(rate, 'At least (minutes)');
  await expect(least).toHaveValue('one hour');
  await write(least, '0');
  // No least is not said; the field stays as long as one is in it.
  await expect(least).toBeFocused();
  await write(blank(rate, 'Charged in steps of (minutes)'), '30');
  await expect(least).toBeHidden();
  await expect(each).toHaveValue('a half hour');
}

async function typeBelow(page: Page, { press, write }: Hands): Promise<void> {
  const rate = clauseAt(page, 1);
  const more = rate.locator('summary').filter({ hasText: /^More/ });
  await press(more);
  // The sentence says it from the first key on; its field stays where it is, and takes the other keys too.
  const forgiven = rate.getByLabel('Minutes forgiven before a new step');
  await write(forgiven, '12');
  await expect(forgiven).toBeFocused();
  await expect(forgiven).toHaveValue('12');
  await expect(rate.getByRole('paragraph').filter({ hasText: 'Rehearsals' })).toContainText('12 minutes');
  await rate.getByRole('combobox', { name: 'Add a condition' }).selectOption('memberships');
  const membership = rate.getByRole('textbox', { name: 'Membership' });
  await write(membership, 'studio');
  await expect(membership).toBeFocused();
  await expect(membership).toHaveValue('studio');
  await press(rate.getByRole('button', { name: /^Take out the condition/ }));
  await press(more);
  // Left, it has taken its place in the sentence.
  const inSentence = blank(rate, 'Minutes forgiven before a new step');
  await write(inSentence, '0');
  await page.keyboard.press('Tab');
  await expect(inSentence).toBeHidden();
  await press(more);
  await expect(forgiven).toHaveValue('0');
  await press(more);
}

async function fillInCancellation(page: Page, hands: Hands): Promise<void> {
  const { write, choose } = hands;
  await addByWord(page, hands, 'falls', 'Cancellation');
  const clause = clauseAt(page, 2);
  await write(blank(clause, 'At least this much before (1)'), '72');
  await choose(clause.getByRole('combobox', { name: 'Any later' }), 'share');
  // The share comes into the sentence before what says of what.
  const share = blank(clause, 'Any later, Share');
  await expect(share).toHaveValue('50');
  await page.keyboard.press('Shift+Tab');
  await expect(share).toBeFocused();
  await write(share, '80');
  await expect(share).toHaveValue('80');
}

async function reorder(page: Page, hands: Hands): Promise<void> {
  const { press } = hands;
  const second = page.getByRole('group', { name: /^Clause \d: Cancellation/ });
  await press(second.locator('summary').filter({ hasText: /^More/ }));
  await press(second.getByRole('button', { name: 'Move clause 2 up' }));
  await expect(clauseAt(page, 1)).toHaveAccessibleName('Clause 1: Cancellation');
  await press(second.getByRole('button', { name: 'Duplicate clause 1' }));
  const copy = clauseAt(page, 2);
  await expect(copy).toHaveAccessibleName('Clause 2: Cancellation');
  await expect(page.getByRole('paragraph').filter({ hasText: 'contradict' })).toContainText(
    'Clauses “cancellation” and “cancellation-2” contradict',
  );
  await press(copy.locator('summary').filter({ hasText: /^More/ }));
  await press(copy.getByRole('button', { name: 'Take out clause 2' }));
  await expect(page.getByRole('heading', { name: 'Clauses' })).toBeFocused();
}

async function seeExamples(page: Page): Promise<void> {
  await openExamples(page);
  const examples = page.getByRole('region', { name: 'Three examples at once' });
  for (const [shape, total] of [
    ['A call of each kind', '96.00'],
    ['One call alone', '96.00'],
    ['Called off the day before', '48.00'],
  ] as const) {
    await expect(examples.getByRole('row', { name: shape })).toContainText(total);
  }
}

async function almostLeave(page: Page, { press }: Hands): Promise<void> {
  const asked = page.getByRole('dialog', { name: 'Leave without keeping it?' });
  await press(page.getByRole('navigation').getByRole('link', { name: 'Tariffs' }));
  await press(asked.getByRole('button', { name: 'Stay and go on writing' }));
  await expect(clauseAt(page, 1)).toBeVisible();
  await page.goBack();
  await press(asked.getByRole('button', { name: 'Stay and go on writing' }));
  await expect(page.getByLabel('Name of the tariff')).toHaveValue('Lessons and rehearsals');
}

async function keep(page: Page, { press }: Hands): Promise<void> {
  await press(page.getByRole('button', { name: 'Keep the tariff' }));
  await isTold(page, 'The tariff “Lessons and rehearsals” is kept.');
  await expect(page.getByText('Rehearsals are 48.00 a half hour, charged in half hours.')).toBeVisible();
  await expect(page.getByText(/^Cancelling a call costs nothing until 72 hours before/)).toContainText(
    'and 80\u00a0% of it later.',
  );
}

async function raise(page: Page, { press }: Hands): Promise<void> {
  await press(page.getByRole('button', { name: 'Raise all rates' }));
  const dialog = page.getByRole('dialog');
  // 48 and three per cent are 49.44: in whole units, 49.
  await expect(dialog.getByRole('row', { name: /Rehearsals are 48\.00/ })).toContainText('49.00');
  await press(dialog.getByRole('button', { name: 'Take these into a new version' }));
  await openExamples(page);
  const changes = page.getByRole('region', { name: 'What changed since version 1' });
  await expect(changes).toContainText('0 added, 1 changed, 0 taken out.');
  await expect(changes.getByRole('insertion')).toHaveText(
    'Rehearsals are 49.00 a half hour, charged in half hours.',
  );
  // A version kept today cannot begin today once more: tomorrow is proposed.
  await press(page.getByRole('button', { name: 'Keep this version' }));
  await isTold(page, 'Version 2 of “Lessons and rehearsals” is kept.');
}

async function compare(page: Page, { press }: Hands): Promise<void> {
  await press(page.getByRole('link', { name: 'Compare it with another' }));
  const row = page.getByRole('row', { name: /^Rate for time/ });
  await expect(row).toContainText('96.00');
  await expect(row).toContainText('98.00');
  await expect(row).toContainText('2.00');
}

async function outAndIn(page: Page, hands: Hands): Promise<void> {
  const { press, write } = hands;
  await page.goBack();
  const saved = page.waitForEvent('download');
  await press(page.getByRole('button', { name: 'Save as a file' }));
  const file = await (await saved).path();
  await press(page.getByRole('navigation').getByRole('link', { name: 'Tariffs' }));
  await press(page.getByRole('link', { name: 'Write down a tariff' }));
  await press(page.getByRole('button', { name: 'Start from a file' }));
  const dialog = page.getByRole('dialog');
  const wrong =
    '{"name":"Odd","currency":"EUR","version":1,"from":"2026-09-01","clauses":[{"id":"a","kind":"fee","terms":{}}]}';
  await write(dialog.getByLabel('Or its text'), wrong);
  await press(dialog.getByRole('button', { name: 'Read it' }));
  await expect(dialog.getByRole('alert')).toContainText('“fee” is not a kind of clause.');
  await expect(dialog.getByRole('alert')).toContainText('/clauses/0/kind');
  const schema = page.waitForEvent('download');
  await press(dialog.getByRole('link', { name: 'The JSON Schema that such a file follows' }));
  expect((await schema).suggestedFilename()).toBe('tariff-schema.json');
  await dialog.getByLabel('File', { exact: true }).setInputFiles(file);
  await expect(dialog.getByLabel('Or its text')).toHaveValue(/"Lessons and rehearsals"/);
  await press(dialog.getByRole('button', { name: 'Read it' }));
  await isTold(page, 'The tariff is read. Look it through, then keep it.');
  await expect(page.getByLabel('Name of the tariff')).toHaveValue('Lessons and rehearsals');
  // Nothing is kept by reading.
  await press(page.getByRole('button', { name: 'Give it up' }));
  await expect(page.getByRole('rowheader', { name: 'Lessons and rehearsals' })).toHaveCount(1);
}

test('every screen of a tariff can be read by everybody', async ({ page, server }, { project }) => {
  await openExample(page, server);
  for (const [screen, open] of Object.entries(screens)) {
    await test.step(screen, async () => {
      await goTo(page, 'Tariffs');
      await open(page);
      await look(page, screen, project);
      await page.goto('/');
    });
  }
});

const screens: Readonly<Record<string, (page: Page) => Promise<void>>> = {
  'the sentences of a new tariff': async (page) => {
    await page.goto('/tariffs/new?example=school');
    await expect(clauseAt(page, 1)).toBeVisible();
    const shut = page.locator('.clause-card > summary').first();
    if (await shut.isVisible()) await shut.click();
    await clauseAt(page, 1)
      .getByRole('button', { name: /^Kinds of call: / })
      .click();
  },
  'what a clause says beside its sentence': async (page) => {
    await page.goto('/tariffs/new?example=hours');
    const shut = page.locator('.clause-card > summary').first();
    await expect(clauseAt(page, 1)).toBeVisible();
    if (await shut.isVisible()) await shut.click();
    await clauseAt(page, 1).locator('summary').filter({ hasText: /^More/ }).click();
    await openExamples(page);
  },
  'the kinds of clause': async (page) => {
    await page.getByRole('link', { name: 'Write down a tariff' }).click();
    await page.getByRole('button', { name: 'Add a clause' }).click();
  },
  'rates being raised': async (page) => {
    await page.getByRole('link', { name: 'Example: recital package' }).click();
    await page.getByRole('button', { name: 'Raise all rates' }).click();
  },
  'a tariff from a file': async (page) => {
    await page.getByRole('link', { name: 'Write down a tariff' }).click();
    await page.getByRole('button', { name: 'Start from a file' }).click();
  },
  'two tariffs side by side': async (page) => {
    await page.getByRole('link', { name: 'Compare two tariffs' }).click();
    await expect(page.getByRole('row', { name: /^Total/ })).toBeVisible();
  },
};

async function look(page: Page, screen: string, project: TestInfo['project']): Promise<void> {
  const part = (await page.getByRole('dialog').isVisible()) ? 'in sight' : 'whole';
  for (const scheme of ['dark', 'light'] as const) {
    expect.soft(await barriers(page, scheme), `${screen} in ${scheme}`).toEqual([]);
    await takePicture(page, screen, { project, scheme, part });
  }
}

function clauseAt(page: Page, number: number): Locator {
  return page.getByRole('group', { name: new RegExp(`^Clause ${number}: `) });
}

function atTheKeyboard(page: Page): Hands {
  const { keyboard } = page;
  return {
    press: async (target) => {
      await walkTo(page, target);
      await keyboard.press('Enter');
    },
    write: async (target, text) => {
      await walkTo(page, target);
      await keyboard.press('ControlOrMeta+a');
      await keyboard.type(text);
      await seesWhereItIs(page);
    },
    choose: async (target, word) => {
      await walkTo(page, target);
      await keyboard.press('Home');
      while ((await target.inputValue()) !== word) await keyboard.press('ArrowDown');
    },
    tick: async (target) => {
      await walkTo(page, target);
      await keyboard.press('Space');
    },
  };
}

function byTouch(page: Page): Hands {
  return {
    press: (target) => target.tap(),
    write: async (target, text) => {
      await target.tap();
      await page.keyboard.press('ControlOrMeta+a');
      await page.keyboard.type(text);
    },
    // The list that a touch opens is the phone's own: what it does is to choose.
    choose: async (target, word) => {
      await target.focus();
      await target.selectOption(word);
    },
    tick: (target) => target.tap(),
  };
}
