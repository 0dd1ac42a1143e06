import {
  agreeCall,
  cancelCall,
  decline,
  type Engagement,
  missCall,
  playCall,
  quote,
} from '@colla/engagements';
import { currency } from '@colla/money';
import { readTariff } from '@colla/rates';
import { granted } from '@colla/refusal';
import { describe, expect, it } from 'vitest';
import { draftInvoice } from './draft.ts';
import {
  AFTERWARDS,
  at,
  BY_THE_HOUR,
  day,
  engaged,
  further,
  lasting,
  mara,
  organisation,
  POUND,
  statementOfAll,
} from './engaged.fixture.ts';
import { type Invoice, issue } from './invoice.ts';
import { type SeasonFacts, seasonScore } from './season-score.ts';

/** February 2026 begins on a Sunday: weeks of 26 January, and of 2, 9, 16 and 23 February. */
const february = { id: 's1', name: 'February', from: day('02-01'), to: day('02-28') };
const now = at('02-11T12:00');
const names = new Map([
  ['p1', 'Mara Lindqvar'],
  ['p2', 'Harbour Road School'],
  ['p3', 'Ödön Varga'],
]);

function score(engagements: readonly Engagement[], but: Partial<SeasonFacts> = {}, when = now) {
  return seasonScore(
    {
      season: february,
      engagements,
      invoices: [],
      paid: new Map(),
      names,
      house: organisation,
      weeklyLimit: 600,
      ...but,
    },
    when,
  );
}

function invoiceOf(engagement: Engagement, issuedOn: string, id = 'i1'): Invoice {
  if (engagement.stage !== 'agreed') throw new Error('it is not agreed');
  const draft = draftInvoice({
    engagement,
    statement: statementOfAll(engagement),
    payer: 'payer',
    to: mara,
    earlier: [],
    organisation,
    issuedOn: day(issuedOn),
  });
  return issue(granted(draft), { id, series: '2026', ordinal: 1 });
}

const agreed = engaged(BY_THE_HOUR, [
  ['c1', 'rehearsal', '02-02T10:00'],
  ['c2', 'rehearsal', '02-09T10:00'],
  ['c3', 'audition', '02-16T10:00'],
]);
const halfPlayed = granted(playCall(agreed, 'c1', lasting(agreed, 'c1', 75), AFTERWARDS));
const played = ['c2', 'c3'].reduce<Engagement>(
  (so, id) => granted(playCall(so, id, lasting(so, id, 60), AFTERWARDS)),
  halfPlayed,
);

describe('a stave', () => {
  it.each([
    [
      'is the institution’s where there is one',
      { institutionParty: 'p2', soloistParty: 'p3' },
      'Harbour Road School',
    ],
    ['is the soloist’s where there is none', { soloistParty: 'p3' }, 'Ödön Varga'],
    ['is the payer’s where there is neither', {}, 'Mara Lindqvar'],
  ])('%s', (_, who, name) => {
    const engagement = engaged(BY_THE_HOUR, [['c1', 'rehearsal', '02-02T10:00']], who);
    expect(score([engagement]).staves.map((stave) => stave.name)).toEqual([name]);
  });

  it('holds all engagements of its institution, and staves stand by name', () => {
    const one = (id: string, who: object) =>
      engaged(BY_THE_HOUR, [['c1', 'rehearsal', '02-02T10:00']], { id, ...who });
    const { staves } = score([
      one('e1', { soloistParty: 'p3' }),
      one('e2', { institutionParty: 'p2', soloistParty: 'p1' }),
      one('e3', { institutionParty: 'p2', soloistParty: 'p3' }),
      one('e4', {}),
    ]);
    expect(staves.map(({ name, engagements }) => [name, engagements])).toEqual([
      ['Harbour Road School', 2],
      ['Mara Lindqvar', 1],
      ['Ödön Varga', 1],
    ]);
  });
});

describe('a mark', () => {
  it('stands where the call was really played, as long as it lasted', () => {
    const [first, second] = score([halfPlayed]).staves[0]?.marks ?? [];
    expect(first).toMatchObject({ call: 'c1', is: 'played', minutes: 75, start: at('02-02T10:00') });
    expect(second).toMatchObject({ call: 'c2', is: 'agreed', minutes: 60 });
  });

  it('tells how every call stands', () => {
    const missed = granted(missCall(halfPlayed, 'c2', { by: 'payer', reason: 'forgotten' }, AFTERWARDS));
    const fallen = granted(cancelCall(missed, 'c3', { at: at('02-10T10:00'), by: 'payer', reason: 'other' }));
    const held = further(fallen, ['c4', 'rehearsal', '02-20T10:00']);
    const marks = score([held]).staves[0]?.marks ?? [];
    expect(marks.map(({ is }) => is)).toEqual(['played', 'missed', 'cancelled', 'held']);
  });

  it('of a call kept free for what was declined is struck through', () => {
    const tariff = granted(
      readTariff({ name: 'Terms', currency: 'GBP', version: 1, from: '2026-01-01', clauses: BY_THE_HOUR }),
    );
    const { agreement: _, ...facts } = agreed;
    const kept = facts.calls.map((call) => ({ ...call, standing: { is: 'held' } as const }));
    const asked: Engagement = { ...facts, calls: kept, stage: 'inquiry' };
    const quoted = granted(
      quote(asked, { tariff, choices: {}, at: at('01-03T09:00'), validUntil: at('01-20T09:00') }),
    );
    const declined = granted(decline(quoted, at('01-04T09:00')));
    expect(score([quoted]).staves[0]?.marks.map(({ is }) => is)).toEqual(['held', 'held', 'held']);
    expect(score([declined]).staves[0]?.marks.map(({ is }) => is)).toEqual([
      'cancelled',
      'cancelled',
      'cancelled',
    ]);
    expect(score([declined]).weeks.every(({ held }) => held === 0)).toBe(true);
  });

  it('outside the season is not drawn, and an engagement without one leaves no stave', () => {
    const march = granted(
      agreeCall(further(agreed, ['c4', 'rehearsal', '03-01T10:00']), 'c4', at('02-01T09:00')),
    );
    expect(score([march]).staves[0]?.marks.map(({ call }) => call)).toEqual(['c1', 'c2', 'c3']);
    expect(score([engaged(BY_THE_HOUR, [['c1', 'rehearsal', '03-02T10:00']])]).staves).toEqual([]);
  });
});

describe('hours by week', () => {
  it('count what was played as it was, what is agreed as planned, and nothing that fell', () => {
    const fallen = granted(
      cancelCall(halfPlayed, 'c3', { at: at('02-10T10:00'), by: 'payer', reason: 'other' }),
    );
    const held = further(fallen, ['c4', 'rehearsal', '02-20T10:00']);
    expect(
      score([held]).weeks.map((week) => [week.monday.toString(), week.played, week.agreed, week.held]),
    ).toEqual([
      ['2026-01-26', 0, 0, 0],
      ['2026-02-02', 75, 0, 0],
      ['2026-02-09', 0, 60, 0],
      ['2026-02-16', 0, 0, 60],
      ['2026-02-23', 0, 0, 0],
    ]);
  });

  it('are told by stave too', () => {
    const other = engaged(BY_THE_HOUR, [['d1', 'lesson', '02-03T10:00']], {
      id: 'e2',
      institutionParty: 'p2',
    });
    const week = score([halfPlayed, other]).weeks[1];
    expect(week?.byStave).toEqual({ p1: 75, p2: 60 });
    expect((week?.played ?? 0) + (week?.agreed ?? 0)).toBe(135);
  });
});

describe('money beside a stave', () => {
  it('is not asked for while a call is still ahead', () => {
    expect(score([halfPlayed]).staves[0]).toMatchObject({ toInvoice: 0, overdue: 0, money: [] });
  });

  it('waits to be invoiced once everything is played: 75 + 60 + 60 minutes at 60.00', () => {
    expect(score([played]).staves[0]).toMatchObject({
      toInvoice: 1,
      money: [{ currency: 'GBP', toInvoice: 19500n, owed: 0n, overdue: 0n }],
    });
  });

  it('is owed once it is invoiced, less what was paid', () => {
    const facts = { invoices: [invoiceOf(played, '02-17')], paid: new Map([['i1', 9500n]]) };
    expect(score([played], facts, at('02-20T12:00')).staves[0]).toMatchObject({
      toInvoice: 0,
      overdue: 0,
      money: [{ toInvoice: 0n, owed: 10000n, overdue: 0n }],
    });
  });

  it('is overdue after thirty days', () => {
    const facts = { invoices: [invoiceOf(played, '02-17')], paid: new Map([['i1', 9500n]]) };
    expect(score([played], facts, at('03-20T12:00')).staves[0]).toMatchObject({
      overdue: 1,
      money: [{ owed: 10000n, overdue: 10000n }],
    });
  });

  it('opens to the engagements that it comes from, and to no other', () => {
    const ahead = { ...halfPlayed, id: 'e2', title: 'Still ahead' };
    expect(score([played, ahead]).staves[0]?.owing).toEqual([
      {
        engagement: 'e1',
        title: played.title,
        payer: 'p1',
        payerName: 'Mara Lindqvar',
        currency: POUND,
        toInvoice: 19500n,
        owed: 0n,
        overdue: 0n,
      },
    ]);
  });

  it('is owed by whoever the invoice names, not by the soloist whose stave it is', () => {
    const sung = { ...played, soloistParty: 'p3' };
    const facts = { invoices: [invoiceOf(played, '02-17')] };
    const [stave] = score([sung], facts, at('02-20T12:00')).staves;
    expect([stave?.name, stave?.owing.map(({ payerName, owed }) => [payerName, owed])]).toEqual([
      'Ödön Varga',
      [['Mara Lindqvar', 19500n]],
    ]);
  });

  it('waits to be invoiced to the payer of the engagement, a department’s student or not', () => {
    const taught = { ...played, institutionParty: 'p2', soloistParty: 'p3' };
    expect(score([taught]).staves[0]?.owing).toMatchObject([{ payer: 'p1', toInvoice: 19500n }]);
  });

  it('that one payer was asked too much lessens nothing another still has to be asked', () => {
    const other = { ...played, id: 'e2' };
    const asked = { ...invoiceOf(played, '02-17'), engagement: 'e2' };
    const twice = { ...asked, id: 'i2', ordinal: 2 };
    const facts = {
      invoices: [asked, twice],
      paid: new Map([
        ['i1', 19500n],
        ['i2', 19500n],
      ]),
    };
    const [stave] = score([played, other], facts, at('02-20T12:00')).staves;
    expect(stave?.money).toMatchObject([{ toInvoice: 19500n, owed: 0n }]);
    expect(stave?.owing.map(({ engagement, toInvoice }) => [engagement, toInvoice])).toEqual([
      ['e1', 19500n],
      ['e2', -19500n],
    ]);
  });

  it('is told for each currency by itself', () => {
    const euro = engaged(BY_THE_HOUR, [['d1', 'lesson', '02-03T10:00']], {
      id: 'e2',
      currency: granted(currency('EUR')),
    });
    const taught = granted(playCall(euro, 'd1', lasting(euro, 'd1', 60), AFTERWARDS));
    expect(score([played, taught]).staves[0]?.money).toEqual([
      { currency: POUND, toInvoice: 19500n, owed: 0n, overdue: 0n },
      { currency: 'EUR', toInvoice: 6000n, owed: 0n, overdue: 0n },
    ]);
  });
});
