// The words documents are written with, one catalogue a language.

/** What a tax is where its rate is none, by the category of EN 16931 (UNCL 5305). */
type Untaxed = Readonly<Record<string, string>>;

export interface Words {
  readonly invoice: (number: string) => string;
  readonly to: string;
  readonly issued: string;
  readonly due: string;
  readonly yourReference: string;
  readonly ourReference: string;
  readonly taxNumber: (number: string) => string;
  readonly day: string;
  readonly service: string;
  readonly quantity: string;
  readonly rate: string;
  readonly amount: string;
  readonly beforeTax: string;
  readonly tax: (tax: { name: string; share: string; base: string }) => string;
  readonly untaxed: Untaxed;
  /** Where other charges are taxed, on how much it is not. */
  readonly untaxedPart: (tax: { name: string; why: string; base: string }) => string;
  readonly taxInside: (tax: { name: string; share: string; amount: string; base: string }) => string;
  readonly toPay: string;
  readonly received: string;
  readonly leftToPay: string;
  readonly paid: string;
  readonly howToPay: string;
  readonly quote: (number: string) => string;
  readonly terms: string;
  readonly note: string;
  readonly page: (number: string, page: number, pages: number) => string;
  /** How an amount came about, under the heading that it has. */
  readonly why: string;
  readonly whyFrom: (facts: readonly string[]) => string;
  /** One and several of a unit. `''`: the line itself says it. */
  readonly units: Readonly<Record<string, readonly [one: string, several: string]>>;
  /** Several of a unit that is not in the list: a word of the organisation's own. */
  readonly several: (unit: string) => string;
}

const en: Words = {
  invoice: (number) => `Invoice ${number}`,
  to: 'To',
  issued: 'Issued',
  due: 'Due',
  yourReference: 'Your reference',
  ourReference: 'Our reference',
  taxNumber: (number) => `Tax number ${number}`,
  day: 'Day',
  service: 'For',
  quantity: 'Quantity',
  rate: 'Rate',
  amount: 'Amount',
  beforeTax: 'Before tax',
  tax: ({ name, share, base }) => `${name}, ${share} of ${base}`,
  untaxedPart: ({ name, why, base }) => `${name}, ${why}, on ${base}`,
  untaxed: {
    Z: 'zero rate',
    E: 'exempt',
    AE: 'reverse charge: the payer accounts for it',
    O: 'outside its scope',
  },
  taxInside: ({ name, share, amount, base }) =>
    `Includes ${name} at ${share}: ${amount} on ${base} before tax.`,
  toPay: 'To pay',
  received: 'Received',
  leftToPay: 'Left to pay',
  paid: 'Paid in full, with thanks.',
  howToPay: 'How to pay',
  quote: (number) => `Please quote ${number}.`,
  terms: 'Terms',
  note: 'Note',
  page: (number, page, pages) => `${number} · page ${page} of ${pages}`,
  units: {
    hour: ['hour', 'hours'],
    'half hour': ['half hour', 'half hours'],
    'quarter hour': ['quarter hour', 'quarter hours'],
    km: ['km', 'km'],
    mile: ['mile', 'miles'],
    day: ['day', 'days'],
    week: ['week', 'weeks'],
    month: ['month', 'months'],
    journey: ['journey', 'journeys'],
    package: ['package', 'packages'],
    call: ['call', 'calls'],
    rehearsal: ['rehearsal', 'rehearsals'],
    recital: ['recital', 'recitals'],
    soloist: ['soloist', 'soloists'],
    cost: ['', ''],
    delay: ['', ''],
    difference: ['', ''],
    part: ['', ''],
    engagement: ['', ''],
    limit: ['', ''],
    cancellation: ['', ''],
  },
  why: 'How it is worked out',
  whyFrom: (facts) => facts.join(', '),
  several: severalInEnglish,
};

/** “juries”, “requested works”, “minutes of music”, “classes”; what begins with a figure is counted: “× 45 minutes”. */
function severalInEnglish(unit: string): string {
  if (/^\d/.test(unit)) return `× ${unit}`;
  const [, noun = unit, rest = ''] = /^(.*?)( of .*)?$/.exec(unit) ?? [];
  if (/[^aeiou]y$/.test(noun)) return `${noun.slice(0, -1)}ies${rest}`;
  return `${noun}${/(s|x|ch|sh)$/.test(noun) ? 'es' : 's'}${rest}`;
}

const catalogues: Readonly<Record<string, Words>> = { en };

/** The words for a reader of `locale`, and the language they are in: English where there are no others yet. */
export function wordsFor(locale: string): { words: Words; language: string } {
  const { language } = new Intl.Locale(locale);
  const words = catalogues[language];
  return words ? { words, language: locale } : { words: en, language: 'en' };
}
