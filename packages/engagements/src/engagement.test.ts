import { Temporal } from '@colla/calendar';
import type { Standing } from '@colla/hours';
import { currency } from '@colla/money';
import { readTariff, sentencesOf, type Tariff } from '@colla/rates';
import { granted, type OrRefusal, Refusal, refused } from '@colla/refusal';
import { describe, expect, it } from 'vitest';
import { agree } from './agree.ts';
import { nothingAsked } from './asked.fixture.ts';
import { addCall, agreeCall, cancelCall, missCall, playCall, releaseCall, reopenCall } from './calls.ts';
import {
  type Agreed,
  cancel,
  decline,
  type Engagement,
  hasAgreement,
  type Inquiry,
  lapse,
  quote,
  STAGES,
  type Stage,
  settle,
} from './engagement.ts';
import { changeCall } from './moving.ts';
import { statementOf } from './statement.ts';

const at = (text: string) => Temporal.ZonedDateTime.from(`${text}[Europe/London]`);
const house = { locale: 'en-GB', holidays: [], terms: [] };
const word = { by: 'payer', reason: 'other' } as const;

function tariff(version: number, price: string): Tariff {
  return granted(
    readTariff({
      name: 'By the hour',
      currency: 'GBP',
      version,
      from: `202${version}-01-01`,
      clauses: [
        {
          id: 'time',
          kind: 'hourly',
          terms: { price, band: { from: '40.00', to: '80.00' } },
        },
        {
          id: 'notice',
          kind: 'cancellation',
          terms: { scale: [{ before: 24, owes: { owes: 'nothing' } }], otherwise: { owes: 'all' } },
        },
      ],
    }),
  );
}

const offered = {
  tariff: tariff(1, '60.00'),
  choices: {},
  at: at('2026-01-02T10:00'),
  validUntil: at('2026-01-20T10:00'),
};
const yes = {
  id: 'a1',
  at: at('2026-01-05T10:00'),
  acceptedBy: 'Mara Lindqvar',
  locale: 'en-GB',
  holidays: [],
  terms: [],
};
const rehearsal = {
  id: 'c1',
  kind: 'rehearsal',
  place: 'Hall',
  planned: { start: at('2026-02-02T10:00'), end: at('2026-02-02T11:00') },
} as const;
/** The rehearsal's day, for ten hours. */
const longer = { start: at('2026-02-02T10:00'), end: at('2026-02-02T20:00') };
const round = {
  id: 'c2',
  kind: 'competition round',
  place: 'Hall',
  planned: { start: at('2026-02-09T10:00'), end: at('2026-02-09T11:00') },
  held: { onlyIf: 'the first round is passed' },
} as const;

const asked: Inquiry = { ...nothingAsked, title: 'Winter audition' };
const inquiry = granted(addCall(asked, rehearsal));
const quoted = granted(quote(inquiry, offered));
const agreed = granted(agree(quoted, yes));
/** When everything planned here has taken place. */
const afterwards = at('2026-02-10T10:00');
const played = granted(playCall(agreed, 'c1', rehearsal.planned, afterwards));
const books = { at: at('2026-03-01T10:00'), toInvoice: 0n, owed: 0n };

const standing: Readonly<Record<Stage, Engagement>> = {
  inquiry,
  quoted,
  agreed,
  settled: granted(settle(played, books)),
  declined: granted(decline(quoted, at('2026-01-03T10:00'))),
  lapsed: granted(lapse(quoted, at('2026-01-21T10:00'))),
  cancelled: granted(cancel(agreed, { ...word, at: at('2026-01-30T10:00') })),
};

type Move = (engagement: Engagement) => OrRefusal<Engagement>;

/** Every move of an engagement, the stages it may start from, and where it leads. */
const moves: readonly {
  name: string;
  verb: string;
  move: Move;
  from: readonly Stage[];
  to?: Stage;
  takesQuoteBack?: true;
}[] = [
  {
    name: 'quote',
    verb: 'quoted',
    move: (of) => quote(of, offered),
    from: ['inquiry', 'quoted'],
    to: 'quoted',
  },
  { name: 'agree', verb: 'agreed', move: (of) => agree(of, yes), from: ['quoted'], to: 'agreed' },
  {
    name: 'decline',
    verb: 'declined',
    move: (of) => decline(of, yes.at),
    from: ['inquiry', 'quoted'],
    to: 'declined',
  },
  {
    name: 'lapse',
    verb: 'let lapse',
    move: (of) => lapse(of, yes.at),
    from: ['inquiry', 'quoted'],
    to: 'lapsed',
  },
  {
    name: 'cancel',
    verb: 'cancelled',
    move: (of) => cancel(of, { ...word, at: at('2026-01-30T10:00') }),
    from: ['agreed'],
    to: 'cancelled',
  },
  {
    name: 'settle',
    verb: 'settled',
    move: (of) => settle(of.stage === 'agreed' ? played : of, books),
    from: ['agreed'],
    to: 'settled',
  },
  {
    name: 'add a call',
    verb: 'changed',
    move: (of) => addCall(of, { ...rehearsal, id: 'c9' }),
    from: ['inquiry', 'quoted', 'agreed'],
    takesQuoteBack: true,
  },
  {
    name: 'change a call',
    verb: 'changed',
    move: (of) => changeCall(of, 'c1', { place: 'Studio' }),
    from: ['inquiry', 'quoted', 'agreed'],
    takesQuoteBack: true,
  },
];

describe('an engagement makes the moves of its stage and no other', () => {
  const cases = moves.flatMap(({ name, ...of }) =>
    STAGES.map((stage) => ({ name, stage, verdict: of.from.includes(stage) ? 'may' : 'refused', ...of })),
  );

  it.each(cases)('$name, when $stage: $verdict', ({ stage, move, from, to, verb, takesQuoteBack }) => {
    const answer = move(standing[stage]);
    if (from.includes(stage)) {
      expect(granted(answer).stage).toBe(takesQuoteBack && stage === 'quoted' ? 'inquiry' : (to ?? stage));
      return;
    }
    const said = (of: Stage) => (of === 'inquiry' ? 'an inquiry' : of);
    expect(answer).toMatchObject({ code: 'engagements/illegal-move', facts: { stage } });
    expect(refused(answer) && answer.sentence).toBe(
      `“Winter audition” is ${said(stage)} and cannot be ${verb}: that takes one that is ${from.map(said).join(' or ')}.`,
    );
  });

  it('and a refusal changes nothing', () => {
    const before = JSON.stringify(standing, plain);
    for (const { move } of moves) for (const stage of STAGES) move(standing[stage]);
    expect(JSON.stringify(standing, plain)).toBe(before);
  });
});

describe('a call makes the moves of its standing and no other', () => {
  type Is = Standing['is'];
  const withRound = granted(addCall(agreed, round));
  const late = at('2026-02-02T09:00');
  const calls: Readonly<Record<Is, { of: Engagement; id: string }>> = {
    held: { of: withRound, id: 'c2' },
    agreed: { of: agreed, id: 'c1' },
    played: { of: played, id: 'c1' },
    cancelled: { of: granted(cancelCall(agreed, 'c1', { ...word, at: late })), id: 'c1' },
    missed: { of: granted(missCall(agreed, 'c1', word, afterwards)), id: 'c1' },
  };
  const ways: readonly {
    name: string;
    verb: string;
    move: (of: Engagement, id: string) => OrRefusal<Engagement>;
    from: readonly Is[];
    to?: Is;
  }[] = [
    {
      name: 'move',
      verb: 'moved',
      move: (of, id) => changeCall(of, id, { place: 'Studio' }),
      from: ['held', 'agreed'],
    },
    { name: 'release', verb: 'released', move: releaseCall, from: ['held'] },
    {
      name: 'agree',
      verb: 'agreed',
      move: (of, id) => agreeCall(of, id, afterwards),
      from: ['held'],
      to: 'agreed',
    },
    {
      name: 'play',
      verb: 'played',
      move: (of, id) => playCall(of, id, rehearsal.planned, afterwards),
      from: ['agreed', 'played'],
      to: 'played',
    },
    {
      name: 'cancel',
      verb: 'cancelled',
      move: (of, id) => cancelCall(of, id, { ...word, at: late }),
      from: ['held', 'agreed'],
      to: 'cancelled',
    },
    {
      name: 'miss',
      verb: 'missed',
      move: (of, id) => missCall(of, id, word, afterwards),
      from: ['agreed'],
      to: 'missed',
    },
    {
      name: 'open again',
      verb: 'opened again',
      move: reopenCall,
      from: ['played', 'cancelled', 'missed'],
      to: 'agreed',
    },
  ];
  const cases = ways.flatMap(({ name, ...way }) =>
    (Object.keys(calls) as Is[]).map((is) => ({
      name,
      is,
      verdict: way.from.includes(is) ? 'may' : 'refused',
      ...way,
    })),
  );

  it.each(cases)('$name one that is $is: $verdict', ({ is, move, from, to, verb }) => {
    const { of, id } = calls[is];
    const answer = move(of, id);
    if (from.includes(is)) {
      const call = granted(answer).calls.find((call) => call.id === id);
      expect(call?.standing.is).toBe(verb === 'released' ? undefined : (to ?? is));
      return;
    }
    expect(answer).toMatchObject({ code: 'engagements/illegal-move', facts: { call: id, standing: is } });
    expect(refused(answer) && answer.sentence).toContain(`is ${is} and cannot be ${verb}`);
  });

  it('and one that is not there is refused by name', () => {
    for (const { move } of ways) {
      expect(move(agreed, 'nobody')).toMatchObject({
        code: 'engagements/no-such-call',
        facts: { call: 'nobody' },
      });
    }
  });

  it('a hold that was released and comes back is kept free again, not agreed behind the payer’s back', () => {
    const released = granted(cancelCall(inquiry, 'c1', { ...word, at: late }));
    expect(granted(reopenCall(released, 'c1')).calls[0]?.standing).toEqual({ is: 'held' });
  });

  it('word that comes once a call has begun is a call missed', () => {
    const refusal = cancelCall(agreed, 'c1', { ...word, at: at('2026-02-02T10:00') });
    expect(refusal).toMatchObject({ code: 'engagements/cancelled-too-late', field: '/at' });
    expect(refused(cancelCall(agreed, 'c1', { ...word, at: at('2026-02-02T09:59') }))).toBe(false);
  });

  const planned = rehearsal.planned;
  it.each([
    ['played', 'a minute before it begins', playCall(agreed, 'c1', planned, at('2026-02-02T09:59'))],
    ['missed', 'a minute before it begins', missCall(agreed, 'c1', word, at('2026-02-02T09:59'))],
    ['played', 'corrected to times ahead', playCall(played, 'c1', planned, at('2026-02-02T09:59'))],
  ])('that has not begun cannot be marked %s (%s)', (verb, _, answer) => {
    expect(answer).toMatchObject({
      code: 'engagements/not-yet',
      facts: { call: 'c1', begins: '2026-02-02T10:00:00+00:00[Europe/London]' },
    });
    expect(refused(answer) && answer.sentence).toBe(
      `The rehearsal begins on 2 February at 10:00. Mark it ${verb} once it has begun.`,
    );
  });

  it('that has just begun can be marked played or missed', () => {
    expect(refused(playCall(agreed, 'c1', planned, planned.start))).toBe(false);
    expect(refused(missCall(agreed, 'c1', word, planned.start))).toBe(false);
  });

  it('that was brought forward is played at its real times, before it was planned', () => {
    const times = { start: at('2026-01-31T10:00'), end: at('2026-01-31T11:00') };
    expect(granted(playCall(agreed, 'c1', times, at('2026-01-31T12:00'))).calls[0]?.standing).toEqual({
      is: 'played',
      times,
    });
  });

  it('that begins in another year is said with its year, on the clock of its place', () => {
    const tokyo = Temporal.ZonedDateTime.from('2027-01-01T08:30[Asia/Tokyo]');
    const times = { start: tokyo, end: tokyo.add({ hours: 1 }) };
    // In London it is still half past eleven on New Year's Eve.
    const answer = playCall(agreed, 'c1', times, at('2026-12-31T20:00'));
    expect(answer).toMatchObject({ field: '/from' });
    expect(refused(answer) && answer.sentence).toBe(
      'The rehearsal begins on 1 January 2027 at 08:30. Mark it played once it has begun.',
    );
  });
});

describe('a quote', () => {
  it.each<[string, Engagement, Partial<typeof offered>, string]>([
    ['needs a call to quote for', asked, {}, 'engagements/no-calls'],
    [
      'does not lapse before it is made',
      inquiry,
      { validUntil: offered.at },
      'engagements/quote-ends-before-it-starts',
    ],
    ['keeps a chosen price within its band', inquiry, { choices: { time: '80.01' } }, 'rates/contradiction'],
    [
      'leaves no choice where the clause has none',
      inquiry,
      { choices: { notice: '1.00' } },
      'rates/no-choice',
    ],
    [
      'is in the currency of the engagement',
      { ...inquiry, currency: granted(currency('EUR')) },
      {},
      'engagements/other-currency',
    ],
  ])('%s', (_, of, but, code) => {
    expect(quote(of, { ...offered, ...but })).toMatchObject({ code });
  });

  it('may be made again at another price', () => {
    const again = granted(quote(quoted, { ...offered, choices: { time: '55.00' } }));
    expect(statementOf(again, offered.at, house)?.total).toBe(5500n);
  });

  it.each<[string, Move]>([
    ['a call is added', (of) => addCall(of, round)],
    ['a call is made longer', (of) => changeCall(of, 'c1', { planned: longer })],
    ['a hold is released', (of) => releaseCall(of, 'c1')],
    ['word comes that a call falls', (of) => cancelCall(of, 'c1', { ...word, at: offered.at })],
  ])('is taken back when %s: nobody says yes to calls that were not quoted for', (_, change) => {
    const changed = granted(change(quoted));
    expect(changed.stage).toBe('inquiry');
    expect(changed).not.toHaveProperty('quote');
    expect(agree(changed, yes)).toMatchObject({ code: 'engagements/illegal-move' });
  });

  it('stands until its last instant, and no longer', () => {
    expect(granted(agree(quoted, { ...yes, at: offered.validUntil })).stage).toBe('agreed');
    expect(agree(quoted, { ...yes, at: offered.validUntil.add({ seconds: 1 }) })).toMatchObject({
      code: 'engagements/quote-lapsed',
      facts: { validUntil: '2026-01-20' },
    });
  });
});

describe('agreeing freezes', () => {
  const dearer = tariff(2, '75.00');

  it('the tariff version and its sentences, whatever the tariff becomes', () => {
    expect(agreed.agreement.tariff.version).toBe(1);
    expect(agreed.agreement.sentences).toEqual(sentencesOf(offered.tariff, 'en-GB'));
    expect(agreed.agreement.sentences).not.toEqual(sentencesOf(dearer, 'en-GB'));
    expect(statementOf(agreed, yes.at, house)?.total).toBe(6000n);
    expect(quote(agreed, { ...offered, tariff: dearer })).toBeInstanceOf(Refusal);
  });

  it('who said yes, when, and to which calls', () => {
    const two = granted(agree(granted(quote(granted(addCall(inquiry, round)), offered)), yes));
    expect(two.agreement).toMatchObject({
      id: 'a1',
      acceptedBy: 'Mara Lindqvar',
      agreedAt: yes.at,
      calls: [{ id: 'c1', kind: 'rehearsal', planned: rehearsal.planned }],
    });
  });

  it('each call as it was planned: a rehearsal that becomes a long recital stays beside it', () => {
    const moved = granted(changeCall(agreed, 'c1', { kind: 'recital', planned: longer }));
    expect(moved.calls).toMatchObject([{ id: 'c1', kind: 'recital', planned: longer }]);
    expect(hasAgreement(moved) && moved.agreement.calls).toEqual([
      { id: 'c1', kind: 'rehearsal', planned: rehearsal.planned },
    ]);
  });

  it('once: what happens to the calls afterwards leaves the agreement as it was', () => {
    const frozen = JSON.stringify(agreed.agreement, plain);
    const steps: Move[] = [
      (of) => addCall(of, round),
      (of) => agreeCall(of, 'c2', afterwards),
      (of) => changeCall(of, 'c2', { place: 'Studio' }),
      (of) => playCall(of, 'c1', rehearsal.planned, afterwards),
      (of) => missCall(of, 'c2', word, afterwards),
      (of) => settle(of, books),
    ];
    const end = steps.reduce<Engagement>((of, step) => granted(step(of)), agreed);
    expect(hasAgreement(end) && JSON.stringify(end.agreement, plain)).toBe(frozen);
    expect(hasAgreement(end) && Object.is(end.agreement, agreed.agreement)).toBe(true);
  });

  it('no hold that has lapsed: it waits until the call is entered again', () => {
    const until = at('2026-01-05T09:59');
    const held = granted(addCall(asked, { ...rehearsal, held: { lapsesAt: until } }));
    const put = granted(quote(held, offered));
    expect(granted(agree(put, { ...yes, at: until })).stage).toBe('agreed');
    const late = agree(put, yes);
    expect(late).toMatchObject({ code: 'engagements/hold-lapsed', facts: { call: 'c1' } });
    expect(refused(late) && late.sentence).toBe(
      'The rehearsal was kept free until 2026-01-05 and no longer. Release it, and enter it again if it is still free.',
    );
    const second = granted(addCall(agreed, { ...round, held: { ...round.held, lapsesAt: until } }));
    expect(agreeCall(second, 'c2', yes.at)).toMatchObject({ code: 'engagements/hold-lapsed' });
  });

  it('no conditional round that fell and was opened again: it waits for its condition as before', () => {
    const lapsesAt = at('2026-02-08T12:00');
    const two = granted(addCall(inquiry, { ...round, held: { ...round.held, lapsesAt } }));
    const again = granted(reopenCall(granted(cancelCall(two, 'c2', { ...word, at: offered.at })), 'c2'));
    expect(again.calls[1]).toEqual(two.calls[1]);
    const both = granted(agree(granted(quote(again, offered)), yes));
    expect(both.calls[1]?.standing).toEqual({ is: 'held', onlyIf: 'the first round is passed', lapsesAt });
  });

  it('a round that waits for another stays kept free', () => {
    const two = granted(agree(granted(quote(granted(addCall(inquiry, round)), offered)), yes));
    expect(two.calls.map(({ standing }) => standing)).toEqual([
      { is: 'agreed' },
      { is: 'held', onlyIf: 'the first round is passed' },
    ]);
  });
});

describe('times that cannot be', () => {
  it('a call played more than a week from its plan is another call', () => {
    const late = { start: at('2026-02-09T10:01'), end: at('2026-02-09T11:00') };
    const week = { start: at('2026-02-09T10:00'), end: at('2026-02-09T11:00') };
    expect(playCall(agreed, 'c1', late, afterwards)).toMatchObject({
      code: 'engagements/played-elsewhen',
      field: '/on',
    });
    expect(granted(playCall(agreed, 'c1', week, afterwards)).calls[0]?.standing.is).toBe('played');
  });

  it('no word comes before what it ends was agreed', () => {
    const early = { ...word, at: yes.at.subtract({ seconds: 1 }) };
    expect(cancelCall(agreed, 'c1', early)).toMatchObject({ code: 'engagements/word-too-early' });
    expect(cancel(agreed, early)).toMatchObject({ code: 'engagements/word-too-early' });
  });

  it('word in the very minute of the yes is not before it: people write a moment to the minute', () => {
    const agreement = { ...agreed.agreement, agreedAt: yes.at.add({ seconds: 31 }) };
    expect(
      granted(cancelCall({ ...agreed, agreement }, 'c1', { ...word, at: yes.at })).calls[0],
    ).toMatchObject({
      standing: { is: 'cancelled' },
    });
    expect(granted(cancel(agreed, { ...word, at: yes.at })).stage).toBe('cancelled');
  });
});

describe('what comes to nothing', () => {
  it.each([
    ['declined', decline],
    ['left to lapse', lapse],
  ])('releases every hold when it is %s', (_, close) => {
    const end = granted(close(quoted, at('2026-01-21T10:00')));
    expect(end.calls).toMatchObject([{ standing: { is: 'cancelled', wasAgreed: false } }]);
  });
});

describe('cancelling the whole', () => {
  const two = granted(addCall(played, round));
  const three = granted(
    agreeCall(granted(addCall(two, { ...rehearsal, id: 'c3', planned: round.planned })), 'c3', yes.at),
  );

  it('leaves what was played, cancels what was agreed and releases what was held', () => {
    const fallen = granted(cancel(three, { ...word, at: at('2026-02-03T10:00') }));
    expect(fallen.calls.map(({ standing }) => standing)).toMatchObject([
      { is: 'played' },
      { is: 'cancelled', wasAgreed: false },
      { is: 'cancelled', wasAgreed: true, by: 'payer' },
    ]);
  });

  it('waits until it is said how a call that had begun turned out', () => {
    const answer = cancel(agreed, { ...word, at: at('2026-02-02T10:30') });
    expect(answer).toMatchObject({ code: 'engagements/calls-open', facts: { calls: 1 } });
    expect(refused(answer) && answer.sentence).toBe(
      'A call had begun by then and is neither played nor cancelled. Say first how it turned out.',
    );
  });
});

describe('settling', () => {
  const waiting = granted(addCall(played, round));

  it.each<[string, Agreed['calls'], Partial<typeof books>, string, string]>([
    ['waits for a round that is kept free', waiting.calls, {}, 'engagements/calls-open', 'A call is neither'],
    [
      'waits for every call',
      [...waiting.calls, ...agreed.calls],
      {},
      'engagements/calls-open',
      '2 calls are neither played nor cancelled. Say first how they turned out.',
    ],
    [
      'waits for what is to be invoiced',
      played.calls,
      { toInvoice: 1n },
      'engagements/money-open',
      'Something is',
    ],
    [
      'waits for what is to be given back',
      played.calls,
      { toInvoice: -1n },
      'engagements/money-open',
      'Something is',
    ],
    ['waits for what is owed', played.calls, { owed: 1n }, 'engagements/money-open', 'Something is'],
  ])('%s', (_, calls, but, code, sentence) => {
    const answer = settle({ ...agreed, calls }, { ...books, ...but });
    expect(answer).toMatchObject({ code });
    expect(refused(answer) && answer.sentence).toContain(sentence);
  });
});

function plain(_: string, value: unknown): unknown {
  return typeof value === 'bigint' ? `${value}n` : value;
}
