// A journal and its postings as rows and back.

import type { MoneyEvent } from '@colla/invoicing';
import type { Account, ExchangeRate, Journal, Posted, Posting, Source } from '@colla/ledger';
import { postingsOf, transfersFrom } from '@colla/ledger';
import type { NewRow, Row } from './rows.ts';
import type { journals } from './tables/journals.ts';
import type { postings } from './tables/postings.ts';

type JournalRow = Row<typeof journals>;
type PostingRow = Row<typeof postings>;

/** The row of a journal. Its id is that of the record it posts. */
export function journalRow({ id, on, event, source, takesBack, currency, book, rate }: Journal) {
  return {
    ...{ id, on, event, currency, book },
    source: kindOf(source),
    ...(takesBack ? { takesBackKind: kindOf(takesBack), takesBack: takesBack.id } : {}),
    ...(rate ? { rate: rate.rate, rateOn: rate.on, rateSource: rate.source } : {}),
  } satisfies NewRow<typeof journals>;
}

/** What a record says beside its figures, of what has no table of its own. */
const SAID = ['method', 'reference', 'reason', 'because', 'note', 'arithmetic'] as const;

/** What was said of an event that is no figure. Documents and payments say it in their own rows. */
export function saidOf({ kind, record }: MoneyEvent): Readonly<Record<string, string>> {
  if (kind === 'invoice' || kind === 'credit note' || kind === 'payment') return {};
  const of: Readonly<Record<string, unknown>> = { ...record };
  return Object.fromEntries(SAID.flatMap((word) => (typeof of[word] === 'string' ? [[word, of[word]]] : [])));
}

/** The kinds a journal can name are those of the table, which refuses any other. */
function kindOf({ kind }: Source): JournalRow['source'] {
  return kind as JournalRow['source'];
}

/** The rows of its postings, in order. */
export function postingRows(journal: Journal): NewRow<typeof postings>[] {
  return postingsOf(journal).map(({ account, amount, book, party, engagement }, position) => ({
    ...{ journalId: journal.id, position, on: journal.on, currency: journal.currency, amount, book },
    ...accountRow(account),
    aboutParty: party ?? null,
    aboutEngagement: engagement ?? null,
  }));
}

type AccountRow = Pick<PostingRow, 'purpose' | 'party' | 'invoice' | 'engagement' | 'kind' | 'tax'>;

/** An account as the columns that name it. */
export function accountRow(account: Account): AccountRow {
  return {
    purpose: account.purpose,
    party: 'party' in account ? account.party : null,
    invoice: 'invoice' in account ? account.invoice : null,
    engagement: 'engagement' in account ? account.engagement : null,
    kind: 'kind' in account ? account.kind : null,
    tax: 'tax' in account ? account.tax : null,
  };
}

/** The account that columns name. What the table cannot hold is a broken invariant. */
export function accountOf({ purpose, party, invoice, engagement, kind, tax }: AccountRow): Account {
  switch (purpose) {
    case 'receivable':
      if (party && invoice) return { purpose, party, invoice };
      break;
    case 'deposits held':
      if (party && engagement) return { purpose, party, engagement };
      break;
    case 'credit held':
      if (party) return { purpose, party };
      break;
    case 'income':
      if (kind) return { purpose, kind };
      break;
    case 'tax collected':
      if (tax !== null) return { purpose, tax };
      break;
    default:
      return { purpose };
  }
  throw new Error(`an account for ${purpose} without what belongs to that`);
}

/** A journal as it was posted. */
export function journalOf(row: JournalRow, rows: readonly PostingRow[]): Journal {
  const { id, on, event, source, currency, book } = row;
  const rate = rateOf(row);
  return {
    ...{ id, on, event, source: { kind: source, id }, currency, book },
    ...takenBackBy(row),
    ...(rate ? { rate } : {}),
    transfers: transfersFrom(rows.map(postingOf)),
  };
}

/** A posting with what its journal says of it. */
export function postedOf(row: JournalRow, posting: PostingRow): Posted {
  const { id, on, event, source, currency } = row;
  return {
    ...postingOf(posting),
    ...{ journal: id, on, event, source: { kind: source, id }, currency },
    ...takenBackBy(row),
  };
}

function postingOf(row: PostingRow): Posting {
  const { amount, book, aboutParty, aboutEngagement } = row;
  return {
    account: accountOf(row),
    ...{ amount, book },
    ...(aboutParty === null ? {} : { party: aboutParty }),
    ...(aboutEngagement === null ? {} : { engagement: aboutEngagement }),
  };
}

function takenBackBy({ takesBack: id, takesBackKind: kind }: JournalRow): Pick<Journal, 'takesBack'> {
  return id !== null && kind !== null ? { takesBack: { kind, id } } : {};
}

function rateOf({
  currency: from,
  book: to,
  rate,
  rateOn: on,
  rateSource: source,
}: JournalRow): ExchangeRate | undefined {
  return rate !== null && on && source !== null ? { from, to, rate, on, source } : undefined;
}
