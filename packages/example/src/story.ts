// The story of the season: who asked for what, and what became of it. Works are real, their minutes round figures
// from memory; everything else is invented.

import { type Told, type ToldWork, thereAndBack, weekly } from './told.ts';

const NET_LOFT = 'The Net Loft, Quaymarrow';
const ROPEWALK = 'Ropewalk Hall, Quaymarrow';
const STUDIO_6 = 'Conservatoire, studio 6';
const CUSTOMS_HOUSE = 'Old Customs House, Lanternsea';
const TWO_LIGHTS = 'Church of the Two Lights, Sillerhaven';
const ASSEMBLY_ROOMS = 'Assembly Rooms, Ostrevale';
const DUNE_ROW = 'Dune Row Hall, Pellow Sands';
const HARBOUR_ROAD = 'Harbour Road School, room 4';

const TO_OSTREVALE = { from: 'Quaymarrow', to: 'Ostrevale', km: '27.5', minutes: 35 };
const TO_SILLERHAVEN = { from: 'Quaymarrow', to: 'Sillerhaven', km: '11.2', minutes: 20 };
const TO_PELLOW_SANDS = { from: 'Quaymarrow', to: 'Pellow Sands', km: '16', minutes: 25 };

/** Works whose parts are on the desk. */
function ready(
  ...works: readonly (readonly [composer: string, title: string, minutes: number])[]
): ToldWork[] {
  return works.map(([composer, title, minutes]) => ({
    composer,
    title,
    minutes,
    state: 'ready',
    permission: 'not needed',
  }));
}

const conservatoire: Told[] = [
  {
    title: 'Voice juries, third year',
    institution: 'conservatoire',
    payers: { payer: 'conservatoire' },
    acceptedBy: 'Registry, Faculty of Performance',
    tariff: 'hours',
    asked: -10,
    calls: [
      ...weekly([-6], 'mon', { kind: 'rehearsal', from: '14:00', minutes: 120, place: STUDIO_6 }),
      ...['09:30', '09:55', '10:20', '11:00', '11:25', '11:50'].map((from) => ({
        kind: 'jury' as const,
        on: [-5, 'thu'] as const,
        from,
        minutes: 20,
        place: 'Conservatoire, small hall',
      })),
    ],
    ends: { is: 'agreed' },
    invoices: [
      { daysAgo: 16, paid: [{ daysAgo: 4, amount: '200.00', reference: 'Vendor 40718, first part' }] },
    ],
  },
  {
    title: 'Jury: Mirembe Okalo, viola',
    soloist: 'mirembe',
    institution: 'conservatoire',
    payers: { payer: 'mirembe' },
    about: { instrument: 'viola', level: 'second year', study: 'major' },
    tariff: 'hours',
    asked: -6,
    calls: [
      {
        kind: 'rehearsal',
        label: 'jury rehearsal',
        on: [-4, 'mon'],
        from: '16:00',
        minutes: 45,
        place: STUDIO_6,
      },
      {
        kind: 'rehearsal',
        label: 'jury rehearsal',
        on: [-3, 'mon'],
        from: '16:00',
        minutes: 60,
        over: 4,
        place: STUDIO_6,
      },
      {
        kind: 'jury',
        label: 'end-of-term jury',
        on: [-3, 'fri'],
        from: '11:20',
        minutes: 15,
        place: 'Conservatoire, small hall',
      },
    ],
    programme: [
      ...ready(['Rebecca Clarke', 'Sonata for viola and piano, first movement', 9]),
      {
        composer: 'Georg Philipp Telemann',
        title: 'Concerto in G, last movement',
        minutes: 4,
        state: 'ready',
        permission: 'not needed',
        cuts: 'tutti cut to four bars',
      },
    ],
    ends: { is: 'agreed' },
  },
  {
    title: 'Entrance auditions, second day',
    institution: 'conservatoire',
    payers: { payer: 'conservatoire' },
    acceptedBy: 'Registry, Faculty of Performance',
    tariff: 'hours',
    asked: -2,
    calls: ['09:30', '10:00', '10:30', '11:15', '11:45'].map((from) => ({
      kind: 'audition',
      on: [7, 'thu'],
      from,
      minutes: 25,
      place: 'Conservatoire, small hall',
    })),
    ends: { is: 'agreed' },
    note: 'The list of candidates comes a week before; ask for keys of the arias.',
  },
  {
    title: 'Studio class for two sopranos',
    institution: 'conservatoire',
    payers: {},
    tariff: 'hours',
    asked: -1,
    calls: weekly([8], 'tue', { kind: 'class', from: '18:00', minutes: 90, place: STUDIO_6 }),
    ends: { is: 'inquiry' },
    note: 'Who pays is not said yet: the department or the two students.',
  },
];

const school: Told[] = [
  {
    title: 'Summer course, strings',
    institution: 'school',
    payers: { school: 'school', family: 'parents' },
    acceptedBy: 'Head of strings, Harbour Road School',
    about: { instrument: 'strings' },
    tariff: 'school',
    asked: -20,
    calls: [
      ...(['mon', 'tue', 'wed', 'thu', 'fri'] as const).map((day) => ({
        kind: 'rehearsal' as const,
        on: [-15, day] as const,
        from: '10:00',
        minutes: 120,
        place: HARBOUR_ROAD,
      })),
      {
        kind: 'recital',
        label: 'course concert',
        on: [-15, 'sat'],
        from: '17:00',
        minutes: 60,
        place: ROPEWALK,
      },
    ],
    ends: { is: 'settled' },
    invoices: [{ payer: 'school', daysAgo: 97, paid: [{ daysAgo: 71, reference: 'Order HR-226' }] }],
  },
  {
    title: 'Autumn term, strings',
    institution: 'school',
    payers: { school: 'school', family: 'parents' },
    acceptedBy: 'Head of strings, Harbour Road School',
    about: { instrument: 'strings' },
    tariff: 'school',
    asked: -14,
    calls: [
      ...weekly(
        [-12, -11, -10, -9, -8, -7, -5, -4, -3, -2, -1, 0, 1, 2],
        'tue',
        { kind: 'lesson', from: '15:30', minutes: 60, place: HARBOUR_ROAD },
        {
          [-9]: { falls: { by: 'payer', reason: 'illness', hoursBefore: 6 } },
          [-4]: { falls: { by: 'payer', reason: 'forgotten' } },
        },
      ),
      { kind: 'exam', label: 'grade exams', on: [2, 'fri'], from: '14:00', minutes: 90, place: HARBOUR_ROAD },
      {
        kind: 'recital',
        label: 'pupils’ concert',
        on: [3, 'thu'],
        from: '18:00',
        minutes: 75,
        place: ROPEWALK,
      },
    ],
    ends: { is: 'agreed' },
    note: 'No lesson in half-term.',
  },
];

const competition: Told[] = [
  {
    title: 'Official pianist, junior rounds',
    institution: 'competition',
    payers: { payer: 'competition' },
    acceptedBy: 'Competition secretary',
    tariff: 'rounds',
    asked: -18,
    calls: [
      { kind: 'rehearsal', on: [-9, 'fri'], from: '15:00', minutes: 180, place: CUSTOMS_HOUSE },
      ...[
        { from: '10:00', over: 0 },
        { from: '11:30', over: 20 },
      ].map(({ from, over }) => ({
        kind: 'competition round' as const,
        label: 'junior round',
        on: [-9, 'sat'] as const,
        from,
        minutes: 45,
        over,
        place: CUSTOMS_HOUSE,
      })),
      {
        kind: 'competition round',
        label: 'final',
        on: [-9, 'sun'],
        from: '15:00',
        minutes: 80,
        place: CUSTOMS_HOUSE,
      },
    ],
    legs: thereAndBack(
      { from: 'Quaymarrow', to: 'Lanternsea', km: '34', minutes: 40, purpose: 'Junior rounds' },
      [
        [-9, 'fri'],
        [-9, 'sat'],
        [-9, 'sun'],
      ],
    ),
    ends: { is: 'settled' },
    invoices: [{ daysAgo: 56, paid: [{ daysAgo: 37 }] }],
  },
  {
    title: 'Wenzel Ostrauer, cello: senior rounds',
    soloist: 'wenzel',
    institution: 'competition',
    payers: { payer: 'wenzel' },
    about: { instrument: 'cello', level: 'senior' },
    tariff: 'rounds',
    asked: -5,
    calls: [
      { kind: 'rehearsal', on: [-1, 'thu'], from: '18:30', minutes: 90, place: NET_LOFT },
      { kind: 'rehearsal', on: [1, 'mon'], from: '18:30', minutes: 75, place: NET_LOFT },
      {
        kind: 'competition round',
        label: 'first round',
        on: [2, 'fri'],
        from: '10:40',
        minutes: 25,
        place: CUSTOMS_HOUSE,
      },
      {
        kind: 'competition round',
        label: 'second round',
        on: [2, 'sat'],
        from: '15:00',
        minutes: 40,
        place: CUSTOMS_HOUSE,
        onlyIf: 'the first round is passed',
      },
      {
        kind: 'competition round',
        label: 'final',
        on: [2, 'sun'],
        from: '17:00',
        minutes: 60,
        place: CUSTOMS_HOUSE,
        onlyIf: 'the second round is passed',
      },
    ],
    programme: [
      ...ready(
        ['Nadia Boulanger', 'Three pieces for cello and piano', 8],
        ['Claude Debussy', 'Sonata for cello and piano', 12],
      ),
      {
        composer: 'Dmitri Shostakovich',
        title: 'Sonata for cello and piano, op. 40',
        minutes: 27,
        state: 'received',
        permission: 'asked',
        received: [-2, 'mon'],
      },
      {
        composer: 'Antonín Dvořák',
        title: 'Cello concerto, last movement (piano reduction)',
        minutes: 13,
        state: 'returned for a better copy',
        permission: 'not needed',
        cuts: 'last tutti from letter O',
      },
    ],
    ends: { is: 'agreed' },
  },
];

const church: Told[] = [
  {
    title: 'Sunday services, autumn',
    institution: 'church',
    payers: { payer: 'church' },
    acceptedBy: 'Vestry clerk',
    tariff: 'church',
    asked: -17,
    calls: [
      ...weekly(
        [-13, -11, -9, -7, -5, -3],
        'sun',
        { kind: 'service', from: '09:30', minutes: 70, place: TWO_LIGHTS },
        { [-9]: { from: '08:30', minutes: 60 }, [-7]: { over: 35 } },
      ),
      {
        kind: 'service',
        on: [-1, 'sun'],
        from: '09:30',
        minutes: 70,
        place: TWO_LIGHTS,
        afterInvoices: true,
      },
    ],
    legs: thereAndBack({ ...TO_SILLERHAVEN, purpose: 'Sunday service' }, [
      [-13, 'sun'],
      [-11, 'sun'],
      [-7, 'sun'],
      [-5, 'sun'],
      [-3, 'sun'],
    ]),
    ends: { is: 'agreed' },
    invoices: [{ daysAgo: 14, note: 'Thank you for the new lamp at the piano.' }],
  },
  {
    title: 'Wedding of Freya Lindqvar’s sister',
    soloist: 'freya',
    institution: 'church',
    payers: { payer: 'freya' },
    tariff: 'church',
    asked: -9,
    calls: [
      { kind: 'rehearsal', on: [-5, 'fri'], from: '17:00', minutes: 55, place: TWO_LIGHTS },
      { kind: 'service', label: 'wedding', on: [-4, 'sat'], from: '14:00', minutes: 50, place: TWO_LIGHTS },
    ],
    programme: ready(['Gabriel Fauré', 'Après un rêve', 3], ['Edvard Grieg', 'Morgen', 4]),
    ends: { is: 'cancelled', hoursBefore: 30, by: 'payer', reason: 'other' },
    invoices: [{ daysAgo: 21, note: 'With every good wish to both families.' }],
  },
  {
    title: 'Advent and Christmas services',
    institution: 'church',
    payers: { payer: 'church' },
    acceptedBy: 'Vestry clerk',
    tariff: 'church',
    asked: -4,
    calls: [
      ...weekly([1, 2, 3], 'sun', { kind: 'service', from: '09:30', minutes: 75, place: TWO_LIGHTS }),
      {
        kind: 'rehearsal',
        label: 'carol practice',
        on: [4, 'tue'],
        from: '19:00',
        minutes: 90,
        place: TWO_LIGHTS,
      },
      {
        kind: 'service',
        label: 'carol service',
        on: [4, 'fri'],
        from: '10:30',
        minutes: 75,
        place: TWO_LIGHTS,
      },
    ],
    programme: [
      { composer: 'Traditional', title: 'Seven carols, harbour book', minutes: 22, state: 'promised' },
    ],
    ends: { is: 'agreed' },
  },
];

const society: Told[] = [
  {
    title: 'Song evening: Teodor Brânzan',
    soloist: 'teodor',
    institution: 'society',
    payers: { payer: 'society' },
    acceptedBy: 'Concert secretary',
    about: { instrument: 'baritone' },
    tariff: 'recital',
    choices: { 'recital-package': '540.00' },
    asked: -18,
    calls: [
      ...weekly([-12, -10], 'mon', { kind: 'rehearsal', from: '19:00', minutes: 120, place: NET_LOFT }),
      { kind: 'dress rehearsal', on: [-8, 'sat'], from: '11:00', minutes: 90, place: ASSEMBLY_ROOMS },
      { kind: 'recital', on: [-8, 'sat'], from: '19:30', minutes: 95, over: 10, place: ASSEMBLY_ROOMS },
    ],
    programme: ready(
      ['Robert Schumann', 'Dichterliebe, op. 48', 29],
      ['Gerald Finzi', 'Let us garlands bring', 15],
      ['Maurice Ravel', 'Don Quichotte à Dulcinée', 7],
    ),
    legs: thereAndBack({ ...TO_OSTREVALE, purpose: 'Song evening' }, [[-8, 'sat']]),
    costs: [{ on: [-13, 'wed'], what: 'Score, Finzi', amount: '24.90' }],
    ends: { is: 'settled' },
    invoices: [
      {
        daysAgo: 48,
        paid: [
          { daysAgo: 41, amount: '300.00', method: 'cheque' },
          { daysAgo: 34, method: 'bank transfer' },
        ],
      },
    ],
  },
  {
    title: 'Three public classes for singers',
    institution: 'society',
    payers: { payer: 'society' },
    tariff: 'hours',
    asked: -9,
    calls: weekly([-2, -1, 1], 'fri', { kind: 'class', from: '17:00', minutes: 150, place: ASSEMBLY_ROOMS }),
    ends: { is: 'lapsed' },
    note: 'The society’s grant was decided too late.',
  },
  {
    title: 'New Year concert: Haruna Sekizawa',
    soloist: 'haruna',
    institution: 'society',
    payers: { payer: 'society' },
    acceptedBy: 'Concert secretary',
    about: { instrument: 'violin' },
    tariff: 'recital',
    choices: { 'recital-package': '580.00' },
    asked: -6,
    calls: [
      ...weekly([3, 5], 'mon', { kind: 'rehearsal', from: '18:00', minutes: 120, place: NET_LOFT }),
      { kind: 'dress rehearsal', on: [6, 'sun'], from: '13:00', minutes: 90, place: ASSEMBLY_ROOMS },
      { kind: 'recital', on: [6, 'sun'], from: '17:00', minutes: 90, place: ASSEMBLY_ROOMS },
    ],
    programme: [
      {
        composer: 'César Franck',
        title: 'Sonata in A',
        minutes: 28,
        state: 'ready',
        permission: 'not needed',
        edition: 'own copy, fingered',
      },
      {
        composer: 'Amy Beach',
        title: 'Romance, op. 23',
        minutes: 6,
        state: 'received',
        permission: 'not needed',
        received: [-1, 'tue'],
      },
      { composer: 'Lili Boulanger', title: 'Two pieces for violin and piano', minutes: 9, state: 'promised' },
      {
        composer: 'Karol Szymanowski',
        title: 'La fontaine d’Aréthuse',
        minutes: 6,
        requested: true,
        difficulty: 'hard',
        pages: 11,
        state: 'wanted',
        permission: 'asked',
      },
    ],
    legs: thereAndBack({ ...TO_OSTREVALE, purpose: 'New Year concert' }, [[6, 'sun']]),
    ends: { is: 'agreed' },
  },
];

const singers: Told[] = [
  {
    title: 'Harvest concert',
    institution: 'singers',
    payers: { payer: 'singers' },
    acceptedBy: 'Treasurer, Pellow Sands Singers',
    tariff: 'hours',
    asked: -16,
    calls: [
      ...weekly(
        [-13, -12, -11, -10, -9, -8, -7, -6],
        'wed',
        { kind: 'rehearsal', from: '19:30', minutes: 105, place: DUNE_ROW },
        {
          [-11]: { over: 12 },
          [-9]: { falls: { by: 'payer', reason: 'other', hoursBefore: 96 } },
          [-7]: { falls: { by: 'payer', reason: 'other', hoursBefore: 30 } },
        },
      ),
      { kind: 'dress rehearsal', on: [-5, 'fri'], from: '19:00', minutes: 150, place: DUNE_ROW },
      {
        kind: 'recital',
        label: 'harvest concert',
        on: [-5, 'sat'],
        from: '19:00',
        minutes: 110,
        over: 25,
        place: DUNE_ROW,
      },
    ],
    programme: ready(
      ['Fanny Hensel', 'Gartenlieder, op. 3', 17],
      ['Johannes Brahms', 'Liebeslieder-Walzer, op. 52 (selection)', 14],
      ['Ethel Smyth', 'Two part-songs', 8],
    ),
    legs: thereAndBack({ ...TO_PELLOW_SANDS, purpose: 'Harvest concert' }, [
      [-5, 'fri'],
      [-5, 'sat'],
    ]),
    ends: { is: 'agreed' },
    invoices: [{ daysAgo: 27 }],
  },
  {
    title: 'Candlelight concert',
    institution: 'singers',
    payers: { payer: 'singers' },
    acceptedBy: 'Treasurer, Pellow Sands Singers',
    tariff: 'hours',
    asked: -5,
    calls: [
      ...weekly(
        [-3, -2, -1, 0, 1, 2],
        'wed',
        { kind: 'rehearsal', from: '19:30', minutes: 105, place: DUNE_ROW },
        { [-1]: { on: [-1, 'tue'], moved: { was: [-1, 'wed'], by: 'payer', hoursBefore: 120 } } },
      ),
      { kind: 'dress rehearsal', on: [3, 'wed'], from: '19:00', minutes: 120, place: DUNE_ROW },
      {
        kind: 'recital',
        label: 'candlelight concert',
        on: [3, 'sat'],
        from: '18:30',
        minutes: 90,
        place: DUNE_ROW,
      },
    ],
    programme: [
      ...ready(['Benjamin Britten', 'A Ceremony of Carols (piano for harp)', 23]),
      {
        composer: 'Francis Poulenc',
        title: 'Four Christmas motets',
        minutes: 12,
        state: 'promised',
        permission: 'granted',
      },
    ],
    ends: { is: 'agreed' },
  },
];

const soloists: Told[] = [
  {
    title: 'Autumn recital: Anouk Delvarre',
    soloist: 'anouk',
    payers: { payer: 'anouk' },
    about: { instrument: 'mezzo-soprano' },
    tariff: 'recital',
    asked: -18,
    calls: [
      ...weekly([-14, -13], 'tue', { kind: 'rehearsal', from: '17:00', minutes: 90, place: NET_LOFT }),
      ...weekly([-12, -11], 'thu', { kind: 'rehearsal', from: '17:30', minutes: 75, place: NET_LOFT }),
      { kind: 'dress rehearsal', on: [-10, 'fri'], from: '18:00', minutes: 90, place: ROPEWALK },
      { kind: 'recital', on: [-10, 'sun'], from: '16:00', minutes: 75, place: ROPEWALK },
    ],
    programme: [
      ...ready(
        ['Clara Schumann', 'Six songs, op. 13', 15],
        ['Claude Debussy', 'Chansons de Bilitis', 9],
        ['Xavier Montsalvatge', 'Cinco canciones negras', 13],
      ),
      {
        composer: 'Alban Berg',
        title: 'Seven early songs',
        minutes: 16,
        requested: true,
        state: 'ready',
        permission: 'not needed',
        key: 'original, high',
      },
    ],
    ends: { is: 'settled' },
    invoices: [{ daysAgo: 62, paid: [{ daysAgo: 52 }] }],
  },
  {
    title: 'Spring recital: Anouk Delvarre',
    soloist: 'anouk',
    payers: { payer: 'anouk' },
    about: { instrument: 'mezzo-soprano' },
    tariff: 'recital',
    choices: { 'recital-package': '460.00' },
    asked: -1,
    calls: [
      ...weekly([8, 9], 'thu', { kind: 'rehearsal', from: '17:30', minutes: 90, place: NET_LOFT }),
      { kind: 'dress rehearsal', on: [10, 'fri'], from: '18:00', minutes: 90, place: ROPEWALK },
      { kind: 'recital', on: [10, 'sat'], from: '19:00', minutes: 75, place: ROPEWALK },
    ],
    programme: [
      { composer: 'Gustav Mahler', title: 'Rückert-Lieder', minutes: 20, state: 'wanted', key: 'medium' },
      {
        composer: 'Manuel de Falla',
        title: 'Siete canciones populares españolas',
        minutes: 13,
        state: 'wanted',
      },
    ],
    ends: { is: 'quoted' },
  },
  {
    title: 'Orchestra audition: Haruna Sekizawa',
    soloist: 'haruna',
    payers: { payer: 'haruna' },
    about: { instrument: 'violin' },
    tariff: 'hours',
    asked: -16,
    calls: [
      { kind: 'rehearsal', on: [-14, 'sat'], from: '10:00', minutes: 70, place: NET_LOFT },
      { kind: 'audition', on: [-13, 'mon'], from: '12:40', minutes: 20, place: 'Guildhall, Vessa Point' },
    ],
    programme: ready(['Wolfgang Amadeus Mozart', 'Violin concerto in A, first movement', 10]),
    legs: [
      { on: [-13, 'mon'], from: 'Quaymarrow', to: 'Vessa Point', km: '62', minutes: 70, purpose: 'Audition' },
    ],
    ends: { is: 'settled' },
    invoices: [{ daysAgo: 83, paid: [{ daysAgo: 80, method: 'cash' }] }],
  },
  {
    title: 'Recording for a summer school: Haruna Sekizawa',
    soloist: 'haruna',
    payers: { payer: 'haruna' },
    about: { instrument: 'violin' },
    tariff: 'hours',
    asked: -1,
    calls: [{ kind: 'recording', on: [5, 'sat'], from: '10:00', minutes: 180, place: ROPEWALK }],
    programme: [
      { composer: 'Ludwig van Beethoven', title: 'Sonata in F, op. 24', minutes: 23, state: 'wanted' },
    ],
    ends: { is: 'inquiry' },
  },
  {
    title: 'Coaching for a first song recital: Freya Lindqvar',
    soloist: 'freya',
    payers: { payer: 'freya' },
    about: { instrument: 'soprano' },
    tariff: 'hours',
    asked: -13,
    calls: weekly(
      [-11, -10, -9, -8],
      'fri',
      { kind: 'coaching', from: '10:00', minutes: 60, place: NET_LOFT },
      { [-9]: { on: [-9, 'thu'] }, [-8]: { over: 14 } },
    ),
    programme: ready(['Hugo Wolf', 'Five Mörike songs', 14]),
    ends: { is: 'settled' },
    invoices: [
      { daysAgo: 49, paid: [{ daysAgo: 44, change: '4.50', reference: 'keep the change for next time' }] },
    ],
  },
  {
    title: 'Shared recital: Joaquín Talavira and Freya Lindqvar',
    soloist: 'joaquin',
    payers: { 'first soloist': 'joaquin', 'second soloist': 'freya' },
    acceptedBy: 'Joaquín Talavira and Freya Lindqvar',
    sharers: 2,
    circumstances: ['shared recital'],
    tariff: 'recital',
    choices: { 'recital-package': '475.00' },
    asked: -13,
    calls: [
      ...weekly(
        [-8, -7],
        'sat',
        { kind: 'rehearsal', from: '14:00', minutes: 135, place: NET_LOFT },
        {
          [-8]: { on: [-8, 'sun'] },
        },
      ),
      { kind: 'dress rehearsal', on: [-6, 'sat'], from: '17:00', minutes: 100, place: ROPEWALK },
      { kind: 'recital', on: [-6, 'sun'], from: '16:00', minutes: 70, place: ROPEWALK },
    ],
    programme: [
      ...ready(
        ['Francis Poulenc', 'Sonata for clarinet and piano', 14],
        ['Franz Schubert', 'Der Hirt auf dem Felsen', 12],
      ),
      {
        composer: 'Louis Spohr',
        title: 'Six German songs, op. 103',
        minutes: 24,
        requested: true,
        state: 'ready',
        permission: 'not needed',
      },
    ],
    costs: [{ on: [-6, 'fri'], what: 'Tuning, half share', amount: '37.45' }],
    ends: { is: 'agreed' },
    invoices: [
      { payer: 'first soloist', daysAgo: 34, paid: [{ daysAgo: 26 }] },
      { payer: 'second soloist', daysAgo: 34 },
    ],
  },
  {
    title: 'House concert on Pilot Rise',
    soloist: 'joaquin',
    payers: { payer: 'joaquin' },
    about: { instrument: 'clarinet' },
    tariff: 'hours',
    asked: -7,
    calls: [
      { kind: 'rehearsal', on: [-2, 'thu'], from: '17:00', minutes: 90, place: NET_LOFT },
      { kind: 'recital', on: [-2, 'sat'], from: '18:00', minutes: 60, place: '2 Pilot Rise, Lanternsea' },
    ],
    ends: { is: 'cancelled', hoursBefore: 60, by: 'pianist', reason: 'illness' },
    note: 'I was ill and found nobody in time. They were very kind; offer the first free Saturday of spring.',
  },
  {
    title: 'Lessons with Nuala O’Tarran, flute',
    soloist: 'nuala',
    payers: { payer: 'otarran' },
    about: { instrument: 'flute', level: 'grade 7' },
    tariff: 'hours',
    asked: -5,
    calls: [
      ...weekly(
        [-4, -3, -2],
        'thu',
        { kind: 'lesson', from: '16:15', minutes: 60, place: NET_LOFT },
        { [-3]: { falls: { by: 'payer', reason: 'illness', hoursBefore: 3 } } },
      ),
      {
        kind: 'lesson',
        on: [-2, 'tue'],
        from: '17:00',
        minutes: 60,
        place: NET_LOFT,
        falls: { by: 'payer', reason: 'forgotten' },
      },
      {
        kind: 'exam',
        label: 'grade 7',
        on: [-2, 'sat'],
        from: '11:10',
        minutes: 25,
        place: 'Library, Ostrevale',
      },
    ],
    programme: ready(
      ['Cécile Chaminade', 'Concertino, op. 107', 8],
      ['Mel Bonis', 'Sonata for flute, scherzo', 4],
    ),
    legs: thereAndBack({ ...TO_OSTREVALE, purpose: 'Grade exam' }, [[-2, 'sat']]),
    ends: { is: 'agreed' },
  },
  {
    title: 'Opera studio audition: Teodor Brânzan',
    soloist: 'teodor',
    payers: { payer: 'teodor' },
    about: { instrument: 'baritone', membership: 'singers’ guild' },
    tariff: 'hours',
    asked: -4,
    calls: [
      ...weekly([-2, 0], 'mon', { kind: 'coaching', from: '19:00', minutes: 75, place: NET_LOFT }),
      { kind: 'rehearsal', on: [2, 'mon'], from: '19:00', minutes: 60, place: NET_LOFT },
      { kind: 'audition', on: [3, 'tue'], from: '13:20', minutes: 15, place: 'Opera Studio, Vessa Point' },
    ],
    programme: [
      ...ready(['Wolfgang Amadeus Mozart', 'Figaro: Hai già vinta la causa', 5]),
      {
        composer: 'Pyotr Ilyich Tchaikovsky',
        title: 'The Queen of Spades: Yeletsky’s aria',
        minutes: 5,
        state: 'received',
        permission: 'not needed',
        key: 'E flat',
        received: [-2, 'mon'],
      },
    ],
    legs: [
      { on: [3, 'tue'], from: 'Quaymarrow', to: 'Vessa Point', km: '62', minutes: 70, purpose: 'Audition' },
      { on: [3, 'tue'], from: 'Vessa Point', to: 'Quaymarrow', km: '62', minutes: 70, purpose: 'Audition' },
    ],
    costs: [{ on: [-3, 'fri'], what: 'Piano score, hired for six weeks', amount: '18.50' }],
    ends: { is: 'agreed' },
  },
  {
    title: 'Backing tracks for a chorus',
    soloist: 'teodor',
    payers: { payer: 'teodor' },
    tariff: 'hours',
    asked: -8,
    calls: [{ kind: 'recording', on: [-4, 'tue'], from: '10:00', minutes: 240, place: NET_LOFT }],
    ends: { is: 'declined' },
    note: 'The week was full. Sent him to two colleagues.',
  },
];

/** Every engagement of the season, stave by stave. */
export const story: readonly Told[] = [
  ...conservatoire,
  ...school,
  ...competition,
  ...church,
  ...society,
  ...singers,
  ...soloists,
];
