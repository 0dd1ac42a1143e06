import { Temporal } from '@colla/calendar';
import { readTariff } from '@colla/rates';
import { granted } from '@colla/refusal';
import { describe, expect, it } from 'vitest';
import { agree } from './agree.ts';
import { nothingAsked } from './asked.fixture.ts';
import { addCall, liftBlock } from './calls.ts';
import { type Agreed, type Engagement, type Inquiry, quote } from './engagement.ts';
import { changeCall } from './moving.ts';

const at = (text: string) => Temporal.ZonedDateTime.from(`${text}[Europe/London]`);
const span = (day: string, from = '10:00', until = '11:00') => ({
  start: at(`${day}T${from}`),
  end: at(`${day}T${until}`),
});

const asked: Inquiry = { ...nothingAsked, askedAt: at('2026-01-02T09:00') };
const monday = span('2026-02-02');
const inquiry = granted(
  addCall(asked, { id: 'c1', kind: 'rehearsal', label: 'first try', place: 'Hall', planned: monday }),
);
const tariff = granted(
  readTariff({ name: 'Terms', currency: 'GBP', version: 1, from: '2026-01-01', clauses: [] }),
);
const quoted = granted(
  quote(inquiry, { tariff, choices: {}, at: at('2026-01-03T09:00'), validUntil: at('2026-01-20T09:00') }),
);
/** Agreed on 5 January: a rehearsal on Monday 2 February, and a round kept free that nobody agreed. */
const agreed = granted(
  addCall(
    granted(
      agree(quoted, {
        id: 'a1',
        at: at('2026-01-05T10:00'),
        acceptedBy: 'Mara Lindqvar',
        locale: 'en-GB',
        holidays: [],
        terms: [],
      }),
    ),
    { id: 'c2', kind: 'competition round', place: 'Hall', planned: span('2026-03-02') },
  ),
) as Agreed;

const tuesday = { planned: span('2026-02-03') };
const word = { at: at('2026-01-28T18:00'), by: 'payer' } as const;
const callOf = (engagement: Engagement, id = 'c1') => engagement.calls.find((call) => call.id === id);

describe('an agreed call', () => {
  it('that somebody wishes at another time keeps where it stood, whose wish it was and when word came', () => {
    const moved = granted(changeCall(agreed, 'c1', tuesday, word));
    expect(callOf(moved)).toMatchObject({ ...tuesday, standing: { is: 'agreed' } });
    expect(moved.moves).toEqual([{ call: 'c1', was: monday, ...word }]);
  });

  it('that is moved twice keeps both moves, in the order in which they were entered', () => {
    const moved = granted(changeCall(agreed, 'c1', tuesday, word));
    const back = { at: at('2026-01-29T08:00'), by: 'pianist' } as const;
    const again = granted(changeCall(moved, 'c1', { planned: monday }, back));
    expect(again.moves).toEqual([
      { call: 'c1', was: monday, ...word },
      { call: 'c1', was: tuesday.planned, ...back },
    ]);
  });

  it('whose times are put right was moved by nobody', () => {
    expect(granted(changeCall(agreed, 'c1', tuesday)).moves).toEqual([]);
  });

  it('that was moved by a slip is put back, and then it was not moved', () => {
    const moved = granted(changeCall(agreed, 'c1', tuesday, word));
    expect(granted(changeCall(moved, 'c1', { planned: monday })).moves).toEqual([]);
  });

  it('that was moved and is named otherwise, or put at a third time, stays moved', () => {
    const moved = granted(changeCall(agreed, 'c1', tuesday, word));
    expect(granted(changeCall(moved, 'c1', { label: 'second try' })).moves).toHaveLength(1);
    expect(granted(changeCall(moved, 'c1', { planned: span('2026-02-04') })).moves).toHaveLength(1);
  });

  it.each([
    ['that keeps its times', 'c1', { planned: monday }, word, 'engagements/nothing-moves', '/moved'],
    ['that only gets another place', 'c1', { place: 'Studio' }, word, 'engagements/nothing-moves', '/moved'],
    ['that is only kept free', 'c2', tuesday, word, 'engagements/nothing-moves', '/moved'],
    [
      'that was not agreed when the word came',
      'c1',
      tuesday,
      { ...word, at: at('2026-01-04T10:00') },
      'engagements/word-too-early',
      '/moved/on',
    ],
    [
      'that begins when the word comes',
      'c1',
      tuesday,
      { ...word, at: monday.start },
      'engagements/moved-too-late',
      '/moved/on',
    ],
  ] as const)('is not moved by a word %s', (_, id, to, word, code, field) => {
    expect(changeCall(agreed, id, to, word)).toMatchObject({ code, field });
  });

  it('cannot be kept free until a day: that takes a hold', () => {
    expect(changeCall(agreed, 'c1', { lapsesAt: at('2026-01-30T18:00') })).toMatchObject({
      code: 'engagements/illegal-move',
      sentence: 'The rehearsal is agreed and cannot be kept free until a day: that takes one that is held.',
    });
  });

  it('loses its name by null, and keeps it where nothing is said of it', () => {
    expect(callOf(granted(changeCall(agreed, 'c1', { label: null })))).not.toHaveProperty('label');
    expect(callOf(granted(changeCall(agreed, 'c1', { place: 'Studio' })))?.label).toBe('first try');
  });

  it('is played though it is not paid for once its block is lifted, and the reason stays', () => {
    const lifted = { at: at('2026-02-02T09:00'), reason: 'She pays on Friday.' };
    const freed = granted(liftBlock(agreed, 'c1', lifted));
    expect(callOf(granted(changeCall(freed, 'c1', tuesday, word)))?.lifted).toEqual(lifted);
  });
});

describe('a call kept free', () => {
  it('is kept until another day, until none, and never loses its condition by that', () => {
    const round = granted(
      addCall(asked, {
        id: 'c3',
        kind: 'competition round',
        place: 'Hall',
        planned: span('2026-03-02'),
        held: { lapsesAt: at('2026-02-20T12:00'), onlyIf: 'the first round is passed' },
      }),
    );
    const later = granted(changeCall(round, 'c3', { lapsesAt: at('2026-02-25T12:00') }));
    const held = { is: 'held', onlyIf: 'the first round is passed' };
    expect(callOf(later, 'c3')?.standing).toEqual({ ...held, lapsesAt: at('2026-02-25T12:00') });
    expect(callOf(granted(changeCall(later, 'c3', { lapsesAt: null })), 'c3')?.standing).toEqual(held);
  });

  it('has no block to lift', () => {
    const lifted = { at: at('2026-02-02T09:00'), reason: 'She pays on Friday.' };
    expect(liftBlock(agreed, 'c2', lifted)).toMatchObject({ code: 'engagements/illegal-move' });
  });
});
