// What the API itself refuses, and how a refusal leaves a handler: thrown, so that the transaction is rolled back.

import { type OrRefusal, Refusal, refused } from '@colla/refusal';
import { Refused } from '@colla/store';

/** The answer, or its refusal on the way out; `field` is the JSON pointer of what was read. */
export function must<Answer>(answer: OrRefusal<Answer>, field = ''): Answer {
  return refused(answer) ? refuse(field ? answer.at(field) : answer) : answer;
}

export function refuse(refusal: Refusal): never {
  throw new Refused(refusal);
}

const LISTS = {
  party: 'parties',
  tariff: 'tariffs',
  engagement: 'engagements',
  agreement: 'agreements',
  invoice: 'invoices',
  journal: 'journals',
  season: 'seasons',
  leg: 'legs',
  cost: 'costs',
} as const;

/** What was looked for by its id; `pointer` is the field that named it, where it was not the address. */
export function found<Thing>(thing: Thing | undefined, noun: keyof typeof LISTS, pointer?: string): Thing {
  if (thing !== undefined) return thing;
  const mend = pointer === undefined ? 'Go back to the list: it may have been taken out.' : 'Choose another.';
  return refuse(
    new Refusal(`${LISTS[noun]}/unknown`, `There is no such ${noun} in these books. ${mend}`, {}, pointer),
  );
}

export const noTerms = new Refusal(
  'engagements/no-terms',
  'There is nothing to price this engagement by yet. Put a tariff to the payer first.',
);

export const notEmpty = new Refusal(
  'example/not-empty',
  'The example season only opens in an empty book, and this one holds something. Start with another DATA_DIR to look at it.',
);

/** What is posted is in the book's currency, and one book has one. */
export function booksBegun({ currency }: { readonly currency: string }): Refusal {
  return new Refusal(
    'organisations/books-begun',
    `The books are kept in ${currency}, and something is posted in them. Keep that currency; engagements may be in any other.`,
    { currency },
    '/currency',
  );
}

export const yearNotOver = new Refusal(
  'organisations/year-not-over',
  'Only what is over can be closed. Give a day before today.',
  {},
  '/closedThrough',
);

export const badKey = new Refusal(
  'requests/no-key',
  'The Idempotency-Key is none: it is text of 1 to 200 letters, figures and signs in quotation marks, without spaces. Send a new one.',
);

export const noSession = new Refusal(
  'sessions/none',
  'These books are closed to this browser. Open them in the browser that used the printed address, or start the program again for a new one.',
);

export const otherHost = new Refusal(
  'sessions/other-host',
  'These books answer only at the address that the program printed. Open that one.',
);

export const otherOrigin = new Refusal(
  'sessions/other-origin',
  'Another site asked to change these books, and nothing was changed. Do it from their own pages.',
);

export const tooLarge = new Refusal(
  'body/too-large',
  'What was sent is larger than 1 MB, the most that is read at once. Send it in smaller parts.',
);

export const notJson = new Refusal(
  'body/not-json',
  'What was sent is not said to be JSON. Send it with the content type application/json.',
);

export function malformed(position: number): Refusal {
  return new Refusal(
    'body/malformed',
    `What was sent is not JSON: it goes wrong at character ${position}. Mend it there and send it again.`,
    { position },
  );
}
