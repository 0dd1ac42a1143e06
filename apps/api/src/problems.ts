// One table: what a refusal is over HTTP. Everything that goes wrong leaves here as a problem (RFC 9457).

import type { Refusal } from '@colla/refusal';
import { Refused } from '@colla/store';
import { type Misread, type Problem, problemType } from '@colla/wire';
import type { ErrorRequestHandler, RequestHandler } from 'express';
import { tooLarge } from './refusals.ts';

/** Kinds of refusal by their code: status and title. */
export const KINDS: Readonly<Record<string, readonly [status: number, title: string]>> = {
  'body/malformed': [400, 'Not JSON'],
  'body/not-json': [415, 'Not said to be JSON'],
  'body/too-large': [413, 'Too large'],
  'body/misread': [422, 'Not as it should be'],
  'store/bad-cursor': [400, 'No such place in the list'],
  'store/changed-meanwhile': [409, 'Changed meanwhile'],
  'store/no-such-character': [422, 'A character that cannot be kept'],
  'store/version-taken': [409, 'Version taken meanwhile'],
  'store/unreadable-tariff': [500, 'A stored tariff cannot be read'],
  'requests/no-key': [400, 'Not a key'],
  'requests/other-request': [422, 'Another request’s key'],
  'requests/under-way': [409, 'Under way'],
  'sessions/none': [401, 'Closed'],
  'sessions/other-host': [421, 'Another address'],
  'sessions/other-origin': [403, 'Another site'],
  'agreements/unknown': [404, 'No such agreement'],
  'costs/unknown': [404, 'No such cost'],
  'engagements/unknown': [404, 'No such engagement'],
  'invoices/unknown': [404, 'No such invoice'],
  'journals/unknown': [404, 'No such journal'],
  'legs/unknown': [404, 'No such leg'],
  'parties/unknown': [404, 'No such party'],
  'seasons/unknown': [404, 'No such season'],
  'tariffs/unknown': [404, 'No such tariff'],
  'engagements/no-such-call': [404, 'No such call'],
  'example/not-empty': [409, 'The book is not empty'],
  'organisations/books-begun': [409, 'The books have begun'],
  'organisations/year-not-over': [422, 'The year is not over'],
  'organisations/unknown-locale': [422, 'No such language'],
  'organisations/terms-overlap': [422, 'Two terms on one day'],
  'calendar/ends-before-it-starts': [422, 'Ends before it starts'],
  'calendar/no-such-day': [422, 'No such day'],
  'calendar/no-such-instant': [422, 'No such instant'],
  'calendar/no-such-time': [422, 'No such time of day'],
  'calendar/season-ends-early': [422, 'The season ends before it begins'],
  'calendar/season-too-long': [422, 'The season is too long'],
  'calendar/skipped-time': [422, 'Clocks skip this time'],
  'calendar/too-long': [422, 'Too long'],
  'calendar/unknown-zone': [422, 'No such time zone'],
  'money/not-an-amount': [422, 'Not an amount'],
  'money/too-large': [422, 'Amount too large'],
  'money/too-many-decimals': [422, 'Too many decimals'],
  'money/unknown-currency': [422, 'No such currency'],
  'travel/no-distance': [422, 'Not a distance'],
  'rates/contradiction': [422, 'Clauses contradict'],
  'rates/from-the-future': [422, 'Written by a later version of this program'],
  'rates/malformed-tariff': [422, 'A clause is not as it should be'],
  'rates/no-choice': [422, 'No price to choose'],
  'rates/no-reference-rate': [422, 'No reference rate for that half-year'],
  'rates/no-such-clause': [422, 'No such clause'],
  'rates/same-name': [422, 'Two clauses of one name'],
  'rates/unknown-kind': [422, 'No such kind of clause'],
  'tariffs/begins-too-early': [422, 'Begins too early'],
  'tariffs/no-such-version': [422, 'No such version'],
  'tariffs/not-yet-begun': [409, 'Not in force yet'],
  'tariffs/other-currency': [422, 'Another currency'],
  'edits/stale': [412, 'Changed meanwhile'],
  'engagements/calls-open': [409, 'Calls are open'],
  'engagements/cancelled-too-late': [422, 'Word came too late'],
  'engagements/hold-lapsed': [409, 'The hold has lapsed'],
  'engagements/illegal-move': [409, 'Not at this stage'],
  'engagements/moved-too-late': [422, 'Word came too late'],
  'engagements/money-open': [409, 'Money is open'],
  'engagements/no-calls': [409, 'No calls'],
  'engagements/no-terms': [409, 'No terms yet'],
  'engagements/nothing-moves': [422, 'Nothing moves'],
  'engagements/not-yet': [409, 'Not begun yet'],
  'engagements/other-currency': [422, 'Another currency'],
  'engagements/part-ahead': [422, 'Not come yet'],
  'engagements/played-elsewhen': [422, 'Not near its plan'],
  'engagements/quote-ends-before-it-starts': [422, 'The quote ends before it starts'],
  'engagements/quote-lapsed': [409, 'The quote has lapsed'],
  'engagements/unknown-party': [422, 'Nobody of this id'],
  'engagements/word-ahead': [422, 'Not come yet'],
  'engagements/word-too-early': [422, 'Word came before the agreement'],
  'invoicing/allocated-nothing': [422, 'Nothing is set against it'],
  'invoicing/allocated-twice': [422, 'Named twice'],
  'invoicing/beyond-invoiced': [409, 'More than was invoiced'],
  'invoicing/beyond-the-money': [422, 'More than there is'],
  'invoicing/credited-too-early': [422, 'Before its invoice'],
  'invoicing/deposit-asked': [409, 'Not left to ask for'],
  'invoicing/issued-ahead': [422, 'Issued on a later day'],
  'invoicing/issued-too-early': [422, 'Issued before the agreement'],
  'invoicing/less-than-invoiced': [409, 'Less than was invoiced'],
  'invoicing/more-than-credit': [409, 'More than the credit'],
  'invoicing/more-than-deposit': [409, 'More than is awaited'],
  'invoicing/more-than-held': [409, 'More than is held'],
  'invoicing/more-than-late': [409, 'More than is late'],
  'invoicing/more-than-owed': [409, 'More than is owed'],
  'invoicing/no-credit': [409, 'No credit'],
  'invoicing/no-deposit': [409, 'No deposit is agreed'],
  'invoicing/no-deposit-held': [409, 'No deposit is held'],
  'invoicing/no-payment': [422, 'No payment'],
  'invoicing/no-rate': [422, 'No exchange rate'],
  'invoicing/nobody-pays': [409, 'Nobody pays'],
  'invoicing/not-blocked': [409, 'Not blocked'],
  'invoicing/not-open': [409, 'Not to be paid'],
  'invoicing/not-paid': [409, 'Not paid'],
  'invoicing/not-to-take-back': [409, 'Not to be taken back'],
  'invoicing/not-to-write-off': [409, 'Not to be written off'],
  'invoicing/nothing-open': [409, 'Nothing is open'],
  'invoicing/nothing-to-bounce': [422, 'It cannot bounce'],
  'invoicing/nothing-to-credit': [409, 'Nothing to give back'],
  'invoicing/nothing-to-invoice': [409, 'Nothing to invoice'],
  'invoicing/other-currency': [422, 'Another currency'],
  'invoicing/other-payer': [422, 'Another payer’s'],
  'invoicing/paid-meanwhile': [409, 'Paid meanwhile'],
  'invoicing/received-ahead': [422, 'Not received yet'],
  'invoicing/taken-back-already': [409, 'Taken back already'],
  'invoicing/undone-already': [409, 'Taken back already'],
  'invoicing/undone-too-early': [422, 'Before its record'],
  'invoicing/written-off-too-early': [422, 'Before its invoice'],
  'bank/breaks-off': [422, 'The file breaks off'],
  'bank/broken-file': [422, 'The file is damaged'],
  'bank/declares-its-own': [422, 'The file declares its own rules'],
  'bank/empty-file': [422, 'The file is empty'],
  'bank/no-reference': [422, 'No payment reference'],
  'bank/no-statement': [422, 'No account in the file'],
  'bank/not-a-reference': [422, 'Not a payment reference'],
  'bank/not-an-iban': [422, 'Not an IBAN'],
  'bank/not-text': [415, 'Not a text file'],
  'bank/not-to-scan': [422, 'Nothing to scan'],
  'bank/open-quotation': [422, 'An open quotation mark'],
  'bank/other-columns': [422, 'Other columns'],
  'bank/other-kind': [422, 'Another kind of file'],
  'bank/too-large': [413, 'Too large'],
  'bank/unclear-entry': [422, 'An unclear entry'],
  'bank/wrong-rows': [422, 'Rows that cannot be read'],
  'ledger/ahead': [422, 'A day to come'],
  'ledger/closed-year': [409, 'A closed year'],
  'ledger/ends-before-it-starts': [422, 'Ends before it starts'],
  'ledger/one-of-them': [422, 'One at a time'],
  'ledger/not-a-rate': [422, 'Not an exchange rate'],
  'ledger/rate-to-itself': [422, 'One currency'],
  'ledger/rate-without-source': [422, 'No source'],
};

/** A refusal that is not in the table yet is the sender's to mend. */
const OTHERWISE = [422, 'Refused'] as const;

/** What was sent does not fit the schema of its route. */
export class NotRead extends Error {
  constructor(readonly misread: readonly Misread[]) {
    super('not read');
  }
}

/** Nothing is at this address. */
export class NotFound extends Error {}

export const answerProblem: ErrorRequestHandler = (error: unknown, _request, response, next) => {
  if (response.headersSent) return next(error);
  const problem = problemOf(error);
  response.status(problem.status).type('application/problem+json').send(JSON.stringify(problem));
};

/** What stands at the address that a problem has for its type. */
export const showKind: RequestHandler<{ noun: string; what: string }> = ({ params }, response) => {
  const code = `${params.noun}/${params.what}`;
  if (!Object.hasOwn(KINDS, code)) throw new NotFound();
  const [status, title] = KINDS[code] ?? OTHERWISE;
  response.json({ type: problemType(code), title, status });
};

function problemOf(error: unknown): Problem {
  if (error instanceof Refused) return refusedProblem(error.refusal);
  if (error instanceof NotRead) return misreadProblem(error.misread);
  if (error instanceof NotFound) return plain(404, 'Not found', NOTHING_HERE);
  const status = statusOf(error);
  if (status === 413) return refusedProblem(tooLarge);
  if (status !== undefined && status < 500) return plain(status, 'Not readable', NOT_READABLE);
  console.error(error);
  return plain(500, 'Unexpected', UNEXPECTED);
}

const NOTHING_HERE = 'There is nothing at this address. The routes are listed in /api/openapi.json.';
const NOT_READABLE = 'The request could not be read. Check how its address and headers are written.';
const UNEXPECTED =
  'Something failed that should not, and nothing was changed. Try again; what the program printed says more.';

function refusedProblem({ code, sentence, facts, field }: Refusal): Problem {
  const [status, title] = KINDS[code] ?? OTHERWISE;
  return {
    type: problemType(code),
    title,
    status,
    detail: sentence,
    ...(field === undefined ? {} : { pointer: field }),
    ...(Object.keys(facts).length === 0 ? {} : { facts }),
  };
}

/** The first thing wrong is said as the problem; all of them are listed. */
function misreadProblem(errors: readonly Misread[]): Problem {
  const [status, title] = KINDS['body/misread'] ?? OTHERWISE;
  const { pointer = '', detail = '' } = errors[0] ?? {};
  return { type: problemType('body/misread'), title, status, detail, pointer, errors: [...errors] };
}

function plain(status: number, title: string, detail: string): Problem {
  return { type: 'about:blank', title, status, detail };
}

/** The status that Express and its readers give to an error of the sender. */
function statusOf(error: unknown): number | undefined {
  const status = error instanceof Error && 'status' in error ? error.status : undefined;
  return typeof status === 'number' ? status : undefined;
}
