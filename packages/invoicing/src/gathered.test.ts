import type { Engagement } from '@colla/engagements';
import { playCall } from '@colla/engagements';
import { currency } from '@colla/money';
import type { WrittenClause } from '@colla/rates';
import { granted, refused } from '@colla/refusal';
import { describe, expect, it } from 'vitest';
import { setAgainst } from './allocation.ts';
import { billable } from './billable.ts';
import { creditDraft, twoHours } from './billed.fixture.ts';
import { emptyBooks } from './books.fixture.ts';
import { applyDeposit } from './deposit.ts';
import { draftInvoice } from './draft.ts';
import {
  AFTERWARDS,
  day,
  lasting,
  mara,
  organisation,
  POUND,
  school,
  statementOfAll,
} from './engaged.fixture.ts';
import { documentSums, gather, issueGathered } from './gathered.ts';
import type { InvoiceDraft } from './invoice.ts';

const vat: WrittenClause = { id: 'tax', kind: 'tax', terms: { name: 'VAT', rate: 2000 } };
const soon: WrittenClause = {
  id: 'payment',
  kind: 'payment',
  terms: { due: [{ event: 'invoice', days: 14 }] },
};
/** Two engagements of 120.00 and 20 % tax each; the second is due in 14 days, the first in the usual 30. */
const [first, second] = [twoHours([vat]), { ...twoHours([vat, soon]), id: 'e2', title: 'Spring audition' }];

function draft(engagement: Engagement, but: Partial<Parameters<typeof draftInvoice>[0]> = {}): InvoiceDraft {
  if (!('agreement' in engagement)) throw new Error('nothing is agreed');
  return granted(
    draftInvoice({
      ...{ engagement, statement: statementOfAll(engagement), payer: 'payer', to: mara, earlier: [] },
      ...{ organisation, issuedOn: day('02-10') },
      ...but,
    }),
  );
}

const sections = granted(gather([draft(first), draft(second)]));
const document = issueGathered(sections, { ids: ['i1', 'i2'], series: '2026', ordinal: 7 });
const [one, two] = document;
if (!one || !two) throw new Error('two sections were to be there');

describe('several engagements of one payer on one document', () => {
  it('have one number, a section each, and the later due day', () => {
    expect(
      document.map(({ number, section, engagement, title, dueOn }) => [
        number,
        section,
        engagement,
        title,
        `${dueOn}`,
      ]),
    ).toEqual([
      ['2026-0007', 1, 'e1', 'Winter audition', '2026-03-12'],
      ['2026-0007', 2, 'e2', 'Spring audition', '2026-03-12'],
    ]);
  });

  it('come to one sum, each tax once', () => {
    expect(documentSums(document)).toEqual({
      net: 24000n,
      tax: 4800n,
      total: 28800n,
      taxes: [{ name: 'VAT', rate: 2000, code: 'S', inside: false, base: 24000n, amount: 4800n }],
    });
  });

  it('leave nothing to ask for in either', () => {
    expect(billable(statementOfAll(first), 'payer', [one]).lines).toEqual([]);
    expect(billable(statementOfAll(second), 'payer', [two]).lines).toEqual([]);
  });

  it('are paid as one: the first section is filled first', () => {
    const books = emptyBooks();
    for (const record of document) books.enter({ kind: 'invoice', record });
    const means = { party: 'p1', amount: 20000n, currency: POUND };
    expect(granted(setAgainst(means, [books.open(one), books.open(two)], 'oldest first'))).toEqual([
      { invoice: 'i1', amount: 14400n },
      { invoice: 'i2', amount: 5600n },
    ]);
  });

  it('each have their own deposit and their own difference', () => {
    const open = [one, two].map((invoice) => {
      const { id, number, total, currency, to, engagement, issuedOn, dueOn } = invoice;
      return { invoice: id, number, owed: total, currency, party: to.party, engagement, issuedOn, dueOn };
    });
    const held = { engagement: 'e2', party: 'p1', amount: 20000n, currency: POUND };
    const applied = applyDeposit({ id: 'a1', on: day('02-11') }, held, { open, against: 'oldest first' });
    expect(granted(applied).allocations).toEqual([{ invoice: 'i2', amount: 14400n }]);
    const shorter = granted(playCall(second, 'c1', lasting(second, 'c1', 30), AFTERWARDS));
    const theirs = open.filter(({ engagement }) => engagement === 'e2');
    const note = creditDraft(shorter, '02-12', { earlier: [two], invoices: theirs });
    expect(granted(note)).toMatchObject({ against: [{ invoice: 'i2', amount: 3600n }], credit: 0n });
  });
});

describe('are not put on one document', () => {
  it('where their payers differ', () => {
    const answer = gather([draft(first), draft(second, { to: school })]);
    expect(answer).toMatchObject({ code: 'invoicing/other-payer', field: '/engagements' });
    expect(refused(answer) && answer.sentence).toBe(
      '“Spring audition” is paid by Harbour Road School, the first one by Mara Lindqvar. Put engagements of one payer on one invoice.',
    );
  });

  it('where their currencies differ', () => {
    const euros = { ...twoHours([], { currency: granted(currency('EUR')) }), id: 'e3', title: 'Abroad' };
    expect(gather([draft(first), draft(euros)])).toMatchObject({ code: 'invoicing/other-currency' });
  });

  it('where there are none', () => {
    expect(gather([])).toMatchObject({ code: 'invoicing/nothing-to-invoice' });
  });

  it('on two days, which is a broken invariant', () => {
    const later = draft(second, { issuedOn: day('02-11') });
    expect(() => gather([draft(first), later])).toThrow('two days');
    expect(() => issueGathered(sections, { ids: ['i1'], series: '2026', ordinal: 7 })).toThrow(
      'an id of its own',
    );
  });
});
