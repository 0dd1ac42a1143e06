// A bank's statement of an account as ISO 20022 writes it, camt.053: read into the entries that were booked.

import { type OrRefusal, Refusal, refused } from '@colla/refusal';
import { movementsOf } from './camt-entry.ts';
import { type Sum, signedSum, unclear } from './camt-sum.ts';
import { type Balance, type BankStatement, identified, type Movement } from './entry.ts';
import { type Element, readXml, textAt } from './xml.ts';

/**
 * Reads the statements of a camt.053 message. Versions 02, 04 and 08 are tried out here; the others have what is read
 * in the same places. Entries that are not booked yet are counted and passed over. Refuses what is no such message,
 * one that breaks off, and an entry without a sum, a side, a day or a state: then nothing of the file is read.
 */
export function readCamt(text: string): OrRefusal<BankStatement[]> {
  const statements: Told[] = [];
  const read = readXml(text, {
    depth: 4,
    root: isCamt053,
    part: (path, element) => (path.startsWith(STATEMENT) ? take(statements, element) : undefined),
  });
  if (refused(read)) return read;
  if (statements.length === 0) {
    return new Refusal(
      'bank/no-statement',
      'The file says nothing of any account. Take it from your bank again.',
    );
  }
  const seen = new Map<string, number>();
  return statements.map((told) => statementOf(told, seen));
}

const STATEMENT = 'Document/BkToCstmrStmt/Stmt/';

function isCamt053(name: string, namespace: string): Refusal | undefined {
  const [kind = ''] = /[a-z]{4}\.\d{3}\.\d{3}\.\d\d$/.exec(namespace) ?? [];
  if (name === 'Document' && kind.startsWith('camt.053.001.')) return undefined;
  const found =
    kind === '' ? 'This XML file is no message of a bank' : `This is another message of a bank, ${kind}`;
  return new Refusal(
    'bank/other-kind',
    `${found}. Ask your bank for its statement of the account as camt.053, or take its CSV.`,
    { kind },
  );
}

/** A statement as its parts come in. */
interface Told {
  readonly id: string;
  account: string;
  readonly balances: Map<string, Sum>;
  readonly movements: Movement[];
  pending: number;
}

/** Takes one part in. By the schema a statement begins with its name, so another name begins another statement. */
function take(statements: Told[], element: Element): Refusal | undefined {
  if (element.name === 'Id') {
    statements.push({ id: element.text.trim(), account: '', balances: new Map(), movements: [], pending: 0 });
  }
  const told = statements.at(-1);
  if (!told) return unclear(element, 'belongs to a statement without a name');
  if (element.name === 'Acct')
    told.account = textAt(element, 'Id/IBAN') ?? textAt(element, 'Id/Othr/Id') ?? '';
  if (element.name === 'Bal') return takeBalance(told, element);
  return element.name === 'Ntry' ? takeEntry(told, element) : undefined;
}

/** The balances booked: what the account opened with, or closed with the time before, and what it closed with. */
const BALANCES = ['OPBD', 'PRCD', 'CLBD'];

function takeBalance({ balances }: Told, element: Element): Refusal | undefined {
  const kind = textAt(element, 'Tp/CdOrPrtry/Cd') ?? '';
  if (!BALANCES.includes(kind) || balances.has(kind)) return undefined;
  const sum = signedSum(element, 'Amt');
  if (refused(sum)) return sum;
  balances.set(kind, sum);
  return undefined;
}

function takeEntry(told: Told, entry: Element): Refusal | undefined {
  // Since version 08 the state is chosen between a code and the bank's own word.
  const state = textAt(entry, 'Sts') ?? textAt(entry, 'Sts/Cd') ?? textAt(entry, 'Sts/Prtry');
  if (state === undefined) return unclear(entry, 'does not say whether it is booked');
  if (state !== 'BOOK') {
    told.pending += 1;
    return undefined;
  }
  const movements = movementsOf(entry);
  if (refused(movements)) return movements;
  told.movements.push(...movements);
  return undefined;
}

function statementOf(told: Told, seen: Map<string, number>): BankStatement {
  const { id, account, balances, movements, pending } = told;
  const balance = balanceOf(balances, movements);
  return {
    account,
    id,
    entries: identified(account, movements, seen),
    pending,
    ...(balance && { balance }),
  };
}

function balanceOf(balances: ReadonlyMap<string, Sum>, movements: readonly Movement[]): Balance | undefined {
  const opening = balances.get('OPBD') ?? balances.get('PRCD');
  const closing = balances.get('CLBD');
  if (!opening || !closing) return undefined;
  const { currency } = opening;
  const entries = movements.map(({ entry }) => entry);
  if ([closing, ...entries].some((sum) => sum.currency !== currency)) return undefined;
  const moved = entries.reduce((sum, { amount }) => sum + amount, 0n);
  const unexplained = closing.amount - opening.amount - moved;
  return { currency, opening: opening.amount, closing: closing.amount, unexplained };
}
