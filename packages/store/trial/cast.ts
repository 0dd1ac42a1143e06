// Invented people, places and engagements that the tests of the books are about.

import { localTime, readDay, span, type Temporal, zone } from '@colla/calendar';
import {
  type Agreed,
  agree,
  type Engagement,
  type Inquiry,
  type Organisation,
  type Party,
  type Quoted,
  quote,
  statementUnder,
} from '@colla/engagements';
import type { Call, Standing } from '@colla/hours';
import { draftInvoice, type InvoiceDraft } from '@colla/invoicing';
import { currency } from '@colla/money';
import { readTariff, type Tariff, type WrittenClause } from '@colla/rates';
import { granted } from '@colla/refusal';
import { distance } from '@colla/travel';
import type { Store } from '../src/index.ts';

export const GBP = granted(currency('GBP'));
export const EUR = granted(currency('EUR'));
export const LONDON = granted(zone('Europe/London'));

let ids = 0;

/** Another id, never given before. */
export function newId(): string {
  ids += 1;
  return `00000000-0000-4000-8000-${ids.toString(16).padStart(12, '0')}`;
}

/** Everything that the tests enter was entered on this day. */
export const TODAY = { today: granted(readDay('2026-06-30')) };

/** A day, and a moment in London or elsewhere. */
export const day = (text: string): Temporal.PlainDate => granted(readDay(text));
export const at = (on: string, time: string, place: string = LONDON): Temporal.ZonedDateTime =>
  granted(localTime(on, time, place));

export function organisation(changes: Partial<Organisation> = {}): Organisation {
  return {
    id: newId(),
    name: 'Wren Halloway, piano',
    address: ['4 Tern Lane', 'Saltmarsh'],
    email: 'wren@example.org',
    payTo: ['Saltmarsh Bank', 'account “W, H”'],
    currency: GBP,
    zone: LONDON,
    locale: 'en-GB',
    paper: 'A4',
    weeklyLimit: 1800,
    holidays: ['2026-12-25', '2026-12-28'],
    terms: [{ name: 'spring', from: day('2026-01-12'), to: day('2026-03-27') }],
    ...changes,
  };
}

export function party(name: string, changes: Partial<Party> = {}): Party {
  return { id: newId(), name, address: [], ...changes };
}

/** Books of a new organisation with a soloist, a school, and the tariff that both know. */
export async function newBooks(store: Store) {
  const home = organisation();
  const soloist = party('Odalys Brandt', { address: ['9 Quay Street', 'Saltmarsh'] });
  const school = party('Saltmarsh School of Music', { reference: 'Order 7, west wing' });
  await store.addOrganisation(home);
  await store.within(home.id, async (books) => {
    await books.saveParty(soloist);
    await books.saveParty(school);
  });
  return { home, soloist, school };
}

export const clauses: readonly WrittenClause[] = [
  { id: 'rehearsal', kind: 'hourly', terms: { price: '60.00', minimum: 60 } },
  { id: 'vat', kind: 'tax', terms: { name: 'VAT', rate: 2000 } },
  { id: 'terms', kind: 'payment', terms: { due: [{ event: 'invoice', days: 14 }] } },
];

export function tariff(
  changes: { name?: string; version?: number; from?: string; clauses?: readonly WrittenClause[] } = {},
): Tariff {
  return granted(
    readTariff({
      name: 'House tariff',
      currency: 'GBP',
      version: 1,
      from: '2026-01-01',
      clauses,
      ...changes,
    }),
  );
}

/** A call of an hour in London, by default a rehearsal at ten that is kept free. */
export function call(
  on: string,
  changes: Partial<Omit<Call, 'planned'>> & { from?: string; until?: string; zone?: string } = {},
): Call {
  const { from = '10:00', until = '11:00', zone = LONDON, ...rest } = changes;
  return {
    id: newId(),
    kind: 'rehearsal',
    place: 'Saltmarsh School, room 4',
    planned: granted(span({ on, from, until, zone })),
    standing: { is: 'held' },
    ...rest,
  };
}

/** A recital with two calls, a programme, a journey and a cost, as it is asked for. */
export function inquiry(
  { soloist, school }: { soloist: Party; school: Party },
  changes: Partial<Inquiry> = {},
): Inquiry {
  return {
    stage: 'inquiry',
    id: newId(),
    title: 'Odalys Brandt, spring recital',
    currency: GBP,
    soloistParty: soloist.id,
    institutionParty: school.id,
    payers: { school: school.id, payer: soloist.id },
    calls: [call('2026-03-12'), call('2026-03-14', { kind: 'recital', from: '19:30', until: '21:00' })],
    programme: [
      {
        id: newId(),
        composer: 'An invented composer',
        title: 'Sonata in “A”',
        minutes: 24,
        requested: true,
        difficulty: 'hard',
        pages: 32,
        part: {
          edition: 'copy of the soloist’s',
          key: 'A',
          cuts: 'second repeat',
          state: 'received',
          permission: 'granted',
          receivedOn: day('2026-02-27'),
        },
      },
      {
        id: newId(),
        composer: 'Another one',
        title: 'Three songs',
        minutes: 0,
        requested: false,
        part: { state: 'wanted', permission: 'not asked' },
      },
    ],
    legs: [
      {
        id: newId(),
        on: day('2026-03-14'),
        from: 'Saltmarsh',
        to: 'Ferry Hill',
        distance: granted(distance('12.5', 'mile')),
        minutes: 35,
        purpose: 'recital',
      },
    ],
    costs: [{ id: newId(), on: day('2026-03-14'), what: 'parking', amount: 650n }],
    moves: [],
    rolledOver: { hours: 45 },
    soloist: { level: 'grade 8', instrument: 'cello', membership: 'guild' },
    sharers: 1,
    circumstances: ['outside event'],
    note: 'Second half\nwithout a page turner.',
    askedAt: at('2026-02-01', '09:15'),
    ...changes,
  };
}

export function quoted(asked: Inquiry, offered: Tariff = tariff()): Quoted {
  const offer = { choices: {}, at: at('2026-02-02', '10:00'), validUntil: at('2026-03-01', '23:59') };
  return granted(quote(asked, { tariff: offered, ...offer }));
}

export function agreed(asked: Inquiry, offered: Tariff = tariff()): Agreed {
  return granted(
    agree(quoted(asked, offered), {
      id: newId(),
      at: at('2026-02-05', '12:00'),
      acceptedBy: 'Odalys Brandt',
      locale: 'en-GB',
      holidays: ['2026-04-06'],
      terms: [{ name: 'spring', from: day('2026-01-12'), to: day('2026-03-20') }],
      soFar: 2,
    }),
  );
}

/** The same engagement with its first call standing otherwise. */
export function withStanding<E extends Engagement>(engagement: E, standing: Standing): E {
  const [first, ...rest] = engagement.calls;
  return first ? { ...engagement, calls: [{ ...first, standing }, ...rest] } : engagement;
}

/** What is to be invoiced of it: one hour and an hour and a half at 60.00, and 20 % VAT on top: 180.00. */
export function draft(
  engagement: Agreed,
  { home, soloist }: { home: Organisation; soloist: Party },
  changes: Partial<InvoiceDraft> = {},
): InvoiceDraft {
  const asOf = at('2026-03-20', '09:00');
  const made = draftInvoice({
    engagement,
    statement: statementUnder(engagement, engagement.agreement, asOf, home),
    payer: 'payer',
    to: soloist,
    earlier: [],
    organisation: home,
    issuedOn: day('2026-03-20'),
    note: 'With thanks.',
  });
  return { ...granted(made), ...changes };
}
