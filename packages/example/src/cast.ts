// The cast of the example season: one freelance pianist and those she plays for. People and places are invented;
// addresses on the net are of the domains that RFC 2606 reserves for examples.

import { Temporal, zone } from '@colla/calendar';
import type { Organisation, Party } from '@colla/engagements';
import { currency } from '@colla/money';
import type { Term } from '@colla/rates';
import { granted } from '@colla/refusal';

export const EURO = granted(currency('EUR'));
/** The zone Quaymarrow keeps its clocks by; only the zone is real. */
export const ZONE = granted(zone('Europe/Lisbon'));

type Cast = Readonly<Record<string, Omit<Party, 'id'>>>;

const cast = {
  conservatoire: {
    name: 'Quaymarrow Conservatoire',
    address: ['Faculty of Performance', '12 Ropewalk', 'Quaymarrow'],
    email: 'accounts@conservatoire.example',
    reference: 'Vendor 40718',
  },
  school: {
    name: 'Harbour Road School of Music',
    address: ['3 Harbour Road', 'Quaymarrow'],
    email: 'office@harbourroad.example',
    reference: 'Order HR-226',
  },
  competition: {
    name: 'Lanternsea Competition for Young Players',
    address: ['The Old Customs House', 'Lanternsea'],
    email: 'secretary@lanternsea.example',
  },
  church: {
    name: 'Church of the Two Lights',
    address: ['The Vestry', 'Lighthouse Lane', 'Sillerhaven'],
    email: 'vestry@twolights.example',
  },
  society: {
    name: 'Ostrevale Chamber Society',
    address: ['Assembly Rooms', 'Upper Terrace', 'Ostrevale'],
    email: 'concerts@ostrevale.example',
    reference: 'Season ticket series 9',
  },
  singers: {
    name: 'Pellow Sands Singers',
    address: ['c/o the Treasurer', '8 Dune Row', 'Pellow Sands'],
    email: 'treasurer@pellowsands.example',
  },
  anouk: {
    name: 'Anouk Delvarre',
    address: ['41 Saltworks Street', 'Quaymarrow'],
    email: 'anouk@example.org',
  },
  teodor: { name: 'Teodor Brânzan', address: ['7 Mill Steps', 'Ostrevale'], email: 'teodor@example.org' },
  haruna: { name: 'Haruna Sekizawa', address: ['19 Ropewalk', 'Quaymarrow'], email: 'haruna@example.net' },
  joaquin: {
    name: 'Joaquín Talavira',
    address: ['2 Pilot Rise', 'Lanternsea'],
    email: 'joaquin@example.net',
  },
  freya: {
    name: 'Freya Lindqvar',
    address: ['Flat 5', '30 Weir Street', 'Quaymarrow'],
    email: 'freya@example.org',
  },
  mirembe: { name: 'Mirembe Okalo', address: ['16 Weir Street', 'Quaymarrow'], email: 'mirembe@example.org' },
  wenzel: { name: 'Wenzel Ostrauer', address: ['5 Tern Close', 'Sillerhaven'], email: 'wenzel@example.com' },
  nuala: { name: 'Nuala O’Tarran', address: ['22 Orchard Rise', 'Ostrevale'] },
  otarran: {
    name: 'Fiachra O’Tarran (for Nuala)',
    address: ['22 Orchard Rise', 'Ostrevale'],
    email: 'fiachra@example.com',
  },
  parents: {
    name: 'Parents’ Circle, Harbour Road School',
    address: ['3 Harbour Road', 'Quaymarrow'],
    email: 'parents@harbourroad.example',
  },
} as const satisfies Cast;

/** Who is who in the story. */
export type CastName = keyof typeof cast;

/** The cast as parties, each under its name in the story. */
export function castParties(newId: () => string): Readonly<Record<CastName, Party>> {
  const named = Object.entries(cast).map(([name, party]) => [name, { id: newId(), ...party }]);
  return Object.fromEntries(named) as Record<CastName, Party>;
}

/** What the pianist’s own page of the books says, for the holidays and terms of the years given. */
export function pianist(years: readonly number[]): Omit<Organisation, 'id'> {
  return {
    name: 'Ilka Torvane, piano',
    address: ['The Net Loft', '9 Capstan Yard', 'Quaymarrow'],
    email: 'ilka@example.org',
    taxNumber: 'EXAMPLE 118 204',
    payTo: ['Ilka Torvane', 'Quaymarrow Savings Bank', 'Account EXAMPLE 0042 7719'],
    currency: EURO,
    zone: ZONE,
    locale: 'en-GB',
    paper: 'A4',
    weeklyLimit: 10 * 60,
    holidays: years.flatMap((year) => [`${year}-01-01`, `${year}-12-25`, `${year}-12-26`]),
    terms: years.flatMap(termsOf),
  };
}

/** The terms of the Conservatoire, by which the town divides its year. */
function termsOf(year: number): Term[] {
  const term = (name: string, from: string, to: string) => ({
    name,
    from: Temporal.PlainDate.from(`${year}-${from}`),
    to: Temporal.PlainDate.from(`${year}-${to}`),
  });
  return [
    term('spring', '01-11', '03-27'),
    term('summer', '04-19', '07-03'),
    term('autumn', '09-13', '12-12'),
  ];
}
