import { expect, test } from 'vitest';
import { keepAnswers } from './answers.ts';

const noAnswer = { type: 'about:blank', title: 'No answer', status: 0, detail: 'Nobody answers.' };

/** Books that answer when they are told to, each asking by itself. */
function books() {
  const asked: { key: string; answer: (value: unknown) => void; refuse: () => void }[] = [];
  const ask = (key: string) =>
    new Promise<unknown>((resolve, reject) => {
      asked.push({ key, answer: resolve, refuse: () => reject(new Error('refused')) });
    });
  return { asked, answers: keepAnswers(ask, () => noAnswer) };
}

// A settled promise is heard after the code that settled it has come to its end.
const heard = () => new Promise((resolve) => setImmediate(resolve));
const nobody = () => undefined;

test('a question is on its way until it is answered, and then here', async () => {
  const { asked, answers } = books();
  answers.watch('season', nobody);
  answers.askFor('season');
  expect(answers.at('season')).toEqual({ is: 'loading' });
  asked[0]?.answer('Autumn');
  await heard();
  expect(answers.at('season')).toEqual({ is: 'here', value: 'Autumn' });
});

test('two screens that ask the same ask once', () => {
  const { asked, answers } = books();
  answers.watch('season', nobody);
  answers.askFor('season');
  answers.askFor('season');
  expect(asked).toHaveLength(1);
});

test('what is in sight stays in sight while it is asked for anew, and every watcher hears of the change', async () => {
  const { asked, answers } = books();
  let changes = 0;
  answers.watch('season', () => {
    changes += 1;
  });
  answers.askFor('season');
  asked[0]?.answer('Autumn');
  await heard();
  answers.makeOld();
  expect(answers.at('season')).toEqual({ is: 'here', value: 'Autumn' });
  asked[1]?.answer('Winter');
  await heard();
  expect([answers.at('season'), changes]).toEqual([{ is: 'here', value: 'Winter' }, 2]);
});

test('an answer that comes after a later one was asked for is not believed', async () => {
  const { asked, answers } = books();
  answers.watch('season', nobody);
  answers.askFor('season');
  answers.makeOld();
  asked[1]?.answer('new');
  asked[0]?.answer('old');
  await heard();
  expect(answers.at('season')).toEqual({ is: 'here', value: 'new' });
});

test('a screen that is left and looked at again shows what it knew and asks anew', async () => {
  const { asked, answers } = books();
  const leave = answers.watch('season', nobody);
  answers.askFor('season');
  asked[0]?.answer('Autumn');
  await heard();
  leave();
  answers.watch('season', nobody);
  answers.askFor('season');
  expect([answers.at('season'), asked.length]).toEqual([{ is: 'here', value: 'Autumn' }, 2]);
});

test('a refusal says why, and can be asked again', async () => {
  const { asked, answers } = books();
  answers.watch('season', nobody);
  answers.askFor('season');
  asked[0]?.refuse();
  await heard();
  const refused = answers.at('season');
  expect(refused).toMatchObject({ is: 'failed', problem: noAnswer });
  if (refused.is === 'failed') refused.again();
  asked[1]?.answer('Autumn');
  await heard();
  expect(answers.at('season')).toEqual({ is: 'here', value: 'Autumn' });
});
