import { Temporal } from '@colla/calendar';
import { readTariff, type WrittenClause } from '@colla/rates';
import { granted } from '@colla/refusal';
import { describe, expect, it } from 'vitest';
import { agree } from './agree.ts';
import { nothingAsked } from './asked.fixture.ts';
import { addCall, agreeCall, cancelCall, playCall } from './calls.ts';
import { type Agreed, type Inquiry, type Quoted, quote } from './engagement.ts';
import { changeCall } from './moving.ts';
import { statementOf, statementOffered, termsOf } from './statement.ts';

const at = (text: string) => Temporal.ZonedDateTime.from(`${text}[Europe/London]`);
const house = { locale: 'en-GB', holidays: ['2026-04-06'], terms: [] };

const tariff = granted(
  readTariff({
    name: 'By the hour',
    currency: 'GBP',
    version: 1,
    from: '2026-01-01',
    clauses: [
      { id: 'time', kind: 'hourly', terms: { price: '60.00' } },
      {
        id: 'feast',
        kind: 'supplement',
        for: { days: ['public holiday'] },
        terms: { what: 'Holiday', by: { as: 'amount', amount: '10.00' } },
      },
      {
        id: 'notice',
        kind: 'cancellation',
        terms: {
          scale: [{ before: 48, owes: { owes: 'nothing' } }],
          otherwise: { owes: 'share', share: 5000 },
        },
      },
    ],
  }),
);

/** An hour on an ordinary Thursday, and one on Easter Monday, 6 April 2026. */
const asked: Inquiry = { ...nothingAsked, title: 'Easter', askedAt: at('2026-03-01T09:00') };
const thursday = {
  id: 'c1',
  kind: 'rehearsal',
  place: 'Hall',
  planned: { start: at('2026-04-02T10:00'), end: at('2026-04-02T11:00') },
} as const;
const monday = {
  id: 'c2',
  kind: 'service',
  place: 'Church',
  planned: { start: at('2026-04-06T10:00'), end: at('2026-04-06T11:00') },
} as const;
const encore = {
  id: 'c3',
  kind: 'recital',
  place: 'Hall',
  planned: { start: at('2026-04-09T19:00'), end: at('2026-04-09T20:00') },
  held: { onlyIf: 'the first is sold out' },
} as const;
const inquiry = [thursday, monday, encore].reduce<Inquiry>(
  (so, call) => granted(addCall(so, call)) as Inquiry,
  asked,
);
const quoted = granted(
  quote(inquiry, { tariff, choices: {}, at: at('2026-03-02T09:00'), validUntil: at('2026-03-20T09:00') }),
);
const agreed = granted(agree(quoted, { id: 'a1', at: at('2026-03-03T09:00'), acceptedBy: 'Noor', ...house }));
const now = at('2026-03-05T09:00');

describe('what an engagement costs', () => {
  it('is not said of a mere inquiry, but can be asked of any tariff', () => {
    expect(statementOf(inquiry, now, house)).toBeUndefined();
    expect(termsOf(inquiry)).toBeUndefined();
    // two hours at 60.00 and the holiday 10.00; the encore waits and costs nothing yet
    expect(statementOffered(inquiry, tariff, now, house).total).toBe(13000n);
  });

  it('is the same as quoted and as agreed', () => {
    expect(statementOf(quoted, now, house)?.total).toBe(13000n);
    expect(statementOf(agreed, now, house)?.total).toBe(13000n);
    expect(termsOf(quoted)).toBe(quoted.quote);
    expect(termsOf(agreed)).toBe(agreed.agreement);
  });

  it('is not moved by holidays that are entered or taken out after it was agreed', () => {
    const later = { locale: 'en-GB', holidays: ['2026-04-02'], terms: [] };
    // as quoted today Thursday is the holiday; as agreed Easter Monday stays it
    const feasts = (of: Quoted | Agreed) =>
      statementOf(of, now, later)?.lines.flatMap(({ clause, calls }) => (clause === 'feast' ? calls : []));
    expect(feasts(agreed)).toEqual(['c2']);
    expect(feasts(quoted)).toEqual(['c1']);
  });

  it('follows what was really played', () => {
    const { start, end } = thursday.planned;
    const times = { start, end: end.add({ minutes: 20 }) };
    const longer = granted(playCall(agreed, 'c1', times, times.end));
    // 80 minutes in quarter hours are an hour and a half: 90.00 + 60.00 + 10.00
    expect(statementOf(longer, now, house)?.total).toBe(16000n);
  });

  it('follows a call that fell late: half of 60.00 and the holiday’s 10.00 with it', () => {
    const fallen = granted(
      cancelCall(agreed, 'c2', { at: at('2026-04-05T12:00'), by: 'payer', reason: 'other' }),
    );
    // 60.00 for Thursday and half of 70.00
    expect(statementOf(fallen, now, house)?.total).toBe(9500n);
  });

  it('says what it would cost to cancel everything now', () => {
    expect(statementOf(agreed, now, house)?.ifCancelled?.total).toBe(0n);
    // 24 hours before Thursday’s call: half of 60.00; Easter Monday is still five days away
    expect(statementOf(agreed, at('2026-04-01T10:00'), house)?.ifCancelled?.total).toBe(3000n);
    // Thursday’s call begins and cannot fall any more: all of 60.00, and nothing for Easter Monday
    expect(statementOf(agreed, thursday.planned.start, house)?.ifCancelled?.total).toBe(6000n);
  });
});

describe('a deposit', () => {
  const withDeposit = granted(
    readTariff({
      ...tariff.written,
      clauses: [
        ...tariff.written.clauses,
        { id: 'moving', kind: 'change', terms: { after: [5000] } },
        {
          id: 'deposit',
          kind: 'deposit',
          terms: { of: { as: 'first call' }, due: [{ event: 'agreement', days: 7 }] },
        },
      ],
    }),
  );
  const yes = { id: 'a2', at: at('2026-03-03T09:00'), acceptedBy: 'Noor', ...house };
  const deal = granted(
    agree(
      granted(
        quote(inquiry, {
          tariff: withDeposit,
          choices: {},
          at: at('2026-03-02T09:00'),
          validUntil: at('2026-03-20T09:00'),
        }),
      ),
      yes,
    ),
  );
  const deposit = (engagement: Agreed) => statementOf(engagement, now, house)?.deposit?.amount;

  it('is the fee of the first call as it was agreed: Thursday’s hour at 60.00', () => {
    expect(deposit(deal)).toBe(6000n);
  });

  it.each<[string, () => unknown]>([
    [
      'another call is put before it',
      () =>
        granted(
          agreeCall(
            granted(
              addCall(deal, {
                id: 'c4',
                kind: 'rehearsal',
                place: 'Hall',
                planned: { start: at('2026-04-01T10:00'), end: at('2026-04-01T13:00') },
              }),
            ),
            'c4',
            now,
          ),
        ),
    ],
    [
      'the first call is moved behind the second, and moving costs something',
      () =>
        granted(
          changeCall(
            deal,
            'c1',
            { planned: { start: at('2026-04-08T10:00'), end: at('2026-04-08T11:00') } },
            { at: at('2026-03-04T09:00'), by: 'payer' },
          ),
        ),
    ],
    [
      'the first call is made longer',
      () =>
        granted(
          changeCall(deal, 'c1', {
            planned: { start: at('2026-04-02T10:00'), end: at('2026-04-02T12:00') },
          }),
        ),
    ],
    [
      'the first call falls for nothing',
      () => granted(cancelCall(deal, 'c1', { at: at('2026-03-05T08:00'), by: 'payer', reason: 'other' })),
    ],
  ])('stays what it was when %s', (_, changed) => {
    const { agreement, ...rest } = changed() as Agreed;
    const { deposit: _kept, ...before } = agreement;
    expect(deposit({ ...rest, agreement })).toBe(6000n);
    // also in books from before it was kept with the agreement
    expect(deposit({ ...rest, agreement: before })).toBe(6000n);
  });

  describe('of a quarter of the fee', () => {
    const quarter = { as: 'share', share: 2500 };
    const work = {
      ...{ id: 'w1', composer: 'Ildry', title: 'Sonata', minutes: 12, requested: false },
      part: { state: 'promised', permission: 'not needed' },
    } as const;
    /** One recital in May, agreed on 3 March under these clauses. */
    const agreedOn = (...fees: WrittenClause[]): Agreed => {
      const planned = { start: at('2026-05-20T19:00'), end: at('2026-05-20T20:00') };
      const call = { id: 'c1', kind: 'recital', place: 'Hall', planned } as const;
      const asking = granted(addCall({ ...asked, programme: [{ ...work, pages: 10 }] }, call));
      const due = [{ event: 'agreement', days: 7 }];
      const clauses = [...fees, { id: 'deposit', kind: 'deposit', terms: { of: quarter, due } }];
      const terms = granted(readTariff({ ...tariff.written, clauses }));
      const until = { at: at('2026-03-02T09:00'), validUntil: at('2026-03-20T09:00') };
      return granted(agree(granted(quote(asking, { tariff: terms, choices: {}, ...until })), yes));
    };
    const dueIn = (engagement: Agreed) => {
      const of = statementOf(engagement, at('2026-05-10T09:00'), house);
      return [of?.deposit?.amount, of?.total];
    };

    it('stays what it was when pages are added to the programme', () => {
      const pages: WrittenClause = { id: 'pages', kind: 'fixed', terms: { price: '5.00', each: 'page' } };
      const more = agreedOn(pages);
      expect(dueIn(more)).toEqual([1250n, 5000n]);
      expect(dueIn({ ...more, programme: [{ ...work, pages: 20 }] })).toEqual([1250n, 10000n]);
    });

    it('stays what it was when the place is another', () => {
      const at = (place: string, price: string): WrittenClause => ({
        ...{ id: place.toLowerCase(), kind: 'fixed', for: { places: [place] } },
        terms: { price },
      });
      const hall = agreedOn(at('Hall', '100.00'), at('Away', '200.00'));
      expect(dueIn(hall)).toEqual([2500n, 10000n]);
      expect(dueIn(granted(changeCall(hall, 'c1', { place: 'Away' })) as Agreed)).toEqual([2500n, 20000n]);
    });

    it('stays what it was when music comes late', () => {
      const fee: WrittenClause = { id: 'fee', kind: 'fixed', terms: { price: '200.00' } };
      const late: WrittenClause = {
        ...{ id: 'late', kind: 'late-score' },
        terms: { steps: [{ days: 28, means: { as: 'charge', amount: '25.00' } }] },
      };
      expect(dueIn(agreedOn(fee, late))).toEqual([5000n, 22500n]);
    });
  });
});

describe('what is known of the place and the payer', () => {
  const from = (text: string) => Temporal.PlainDate.from(text);
  const spring = { name: 'spring', from: from('2026-04-01'), to: from('2026-04-04') };
  const asking = granted(
    readTariff({
      ...tariff.written,
      clauses: [
        ...tariff.written.clauses,
        {
          id: 'term',
          kind: 'supplement',
          for: { terms: ['spring'] },
          terms: { what: 'In term', by: { as: 'amount', amount: '5.00' } },
        },
        {
          id: 'again',
          kind: 'discount',
          for: { soFar: { from: 2 } },
          terms: { what: 'Third time', by: { as: 'amount', amount: '1.00', each: 'engagement' } },
        },
      ],
    }),
  );
  const told = { ...house, terms: [spring], soFar: 2 };
  const offered = granted(
    quote(inquiry, {
      tariff: asking,
      choices: {},
      at: at('2026-03-02T09:00'),
      validUntil: at('2026-03-20T09:00'),
    }),
  );
  const deal = granted(agree(offered, { id: 'a3', at: at('2026-03-03T09:00'), acceptedBy: 'Noor', ...told }));

  it('prices a quote as it is known today, and an agreement as it was known that day', () => {
    // 130.00, Thursday in term 5.00, the third time 1.00 less; without either, 130.00
    expect([offered, deal].map((of) => statementOf(of, now, told)?.total)).toEqual([13400n, 13400n]);
    expect([offered, deal].map((of) => statementOf(of, now, house)?.total)).toEqual([13000n, 13400n]);
  });
});
