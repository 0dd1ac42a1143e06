// An inquiry as it is written down, and what is wrong with it before it is sent.

import { describe, expect, it } from 'vitest';
import { callAfter, callInputOf, emptyCall } from './call-row.ts';
import {
  changeOf,
  emptyInquiry,
  emptyWork,
  type InquiryDraft,
  inquiryOf,
  newNames,
  withSoloist,
} from './inquiry.ts';
import { slipsIn } from './inquiry-slips.ts';
import { toldApart } from './naming.ts';

const zone = 'Europe/London';
const rehearsal = { ...emptyCall(0, zone), on: '2026-03-03', from: '10:00', until: '11:00', place: 'Room 4' };
const inquiry: InquiryDraft = {
  ...emptyInquiry(zone),
  title: ' Lieder recital ',
  soloist: 'Ida Fenn',
  institution: 'Tarn School of Music',
  payers: [
    { key: 0, role: 'payer', name: 'Ida Fenn' },
    { key: 1, role: 'school', name: 'Tarn School of Music' },
  ],
  instrument: 'mezzo-soprano',
  calls: [rehearsal],
  works: [{ ...emptyWork(0), title: 'Three songs', minutes: '9', requested: true }],
};
const school = { id: 'p2', name: 'Tarn School of Music', address: [] };
const ids = new Map([
  ['Ida Fenn', 'p1'],
  ['Tarn School of Music', 'p2'],
]);

describe('an inquiry', () => {
  it('is sent with its people by id and its times as written', () => {
    expect(slipsIn(inquiry, [])).toEqual([]);
    expect(inquiryOf(inquiry, ids)).toEqual({
      title: 'Lieder recital',
      soloistParty: 'p1',
      institutionParty: 'p2',
      payers: { payer: 'p1', school: 'p2' },
      soloist: { instrument: 'mezzo-soprano' },
      sharers: 1,
      circumstances: [],
      calls: [
        {
          kind: 'rehearsal',
          place: 'Room 4',
          planned: { on: '2026-03-03', from: '10:00', until: '11:00', zone },
        },
      ],
      programme: [{ composer: '', title: 'Three songs', minutes: 9, requested: true }],
    });
  });

  it('tells what the tariffs may ask: a membership, how hard a part is, and its pages', () => {
    const works = [{ ...emptyWork(0), title: 'Suite', difficulty: ' hard ', pages: '24' }];
    const { soloist, programme } = inquiryOf({ ...inquiry, membership: 'member', works }, ids);
    expect(soloist).toEqual({ instrument: 'mezzo-soprano', membership: 'member' });
    expect(programme?.[0]).toMatchObject({ difficulty: 'hard', pages: 24 });
  });

  it('refuses pages that are no whole number', () => {
    const works = [{ ...emptyWork(0), title: 'Suite', pages: '2.5' }];
    expect(slipsIn({ ...inquiry, works }, []).map(({ pointer }) => pointer)).toEqual(['/programme/0/pages']);
  });

  it('enters those whom the books do not know yet, each once', () => {
    expect(newNames(inquiry, toldApart([school]))).toEqual(['Ida Fenn']);
  });

  it('asks for a title, and for the day of a call that has none', () => {
    const unsaid = { ...inquiry, title: ' ', calls: [{ ...emptyCall(0, zone), place: 'Room 4' }] };
    expect(slipsIn(unsaid, []).map(({ pointer }) => pointer)).toEqual(['/title', '/calls/0/planned/on']);
  });

  it('needs no more than a title: a call in which nothing is written is left out', () => {
    const asked = { ...emptyInquiry(zone), title: 'A recital in spring' };
    expect(slipsIn(asked, [])).toEqual([]);
    expect(inquiryOf(asked, new Map()).calls).toEqual([]);
  });

  it('refuses a call that ends before it starts, beside its end', () => {
    const back = { ...inquiry, calls: [rehearsal, { ...rehearsal, from: '15:00', until: '14:00' }] };
    expect(slipsIn(back, []).map(({ pointer }) => pointer)).toEqual(['/calls/1/planned/until']);
  });

  it('refuses 01:30 in the night when London puts its clocks forward, and names the time meant', () => {
    const skipped = { ...rehearsal, on: '2026-03-29', from: '01:30', until: '03:00' };
    const [slip] = slipsIn({ ...inquiry, calls: [skipped] }, []);
    expect(slip?.pointer).toBe('/calls/0/planned/from');
    expect(slip?.detail).toContain('Did you mean 02:30?');
  });

  it('refuses a zone that is none, beside the zone', () => {
    const [slip] = slipsIn({ ...inquiry, calls: [{ ...rehearsal, zone: 'Atlantis/Harbour' }] }, []);
    expect(slip?.pointer).toBe('/calls/0/planned/zone');
  });

  it('is paid by its soloist until somebody else is named', () => {
    const paid = { ...inquiry, ...withSoloist(inquiry, 'Ida Fennimore') };
    expect(paid.payers[0]?.name).toBe('Ida Fennimore');
    const parent = { ...inquiry, payers: [{ key: 0, role: 'payer', name: 'Per Fenn' }] };
    expect(withSoloist(parent, 'Ida Fennimore').payers[0]?.name).toBe('Per Fenn');
  });

  it('asks which of two is meant where they share a name', () => {
    const two = toldApart([
      { id: 'p7', name: 'Ida Fenn', address: ['Hill House'] },
      { id: 'p8', name: 'Ida Fenn', address: ['Ford End'] },
    ]);
    expect(slipsIn(inquiry, two).map(({ pointer }) => pointer)).toEqual(['/soloistParty', '/payers/0/name']);
    expect(newNames(inquiry, two)).toEqual(['Tarn School of Music']);
    const named = { ...inquiry, ...withSoloist(inquiry, 'Ida Fenn (Ford End)') };
    expect(slipsIn(named, two)).toEqual([]);
  });

  it('has one payer for each role', () => {
    const payers = [...inquiry.payers, { key: 2, role: 'school', name: 'Ida Fenn' }];
    expect(slipsIn({ ...inquiry, payers }, []).map(({ pointer }) => pointer)).toEqual(['/payers/2/role']);
  });

  it('changed later takes away the institution and the note that have been emptied', () => {
    expect(changeOf({ ...inquiry, institution: '', note: ' ' }, ids)).toMatchObject({
      soloistParty: 'p1',
      institutionParty: null,
      note: null,
    });
  });

  it('keeps an option free until the last minute of the day on which it lapses, at its place', () => {
    const option = { ...rehearsal, onlyIf: 'she is well', lapsesOn: '2026-02-20' };
    expect(callInputOf(option)).toMatchObject({
      onlyIf: 'she is well',
      lapsesAt: { on: '2026-02-20', at: '23:59', zone },
    });
    expect(callInputOf(rehearsal)).not.toHaveProperty('lapsesAt');
  });

  it('refuses a call kept free until a day after its own', () => {
    const late = { ...rehearsal, lapsesOn: '2026-03-04' };
    expect(slipsIn({ ...inquiry, calls: [late] }, []).map(({ pointer }) => pointer)).toEqual([
      '/calls/0/lapsesAt',
    ]);
    expect(slipsIn({ ...inquiry, calls: [{ ...late, lapsesOn: '2026-03-03' }] }, [])).toEqual([]);
  });

  it('offers a further call at the place and clock times of the last', () => {
    expect(callAfter([{ ...rehearsal, lapsesOn: '2026-02-20' }], zone)).toEqual({
      ...rehearsal,
      key: 1,
      on: '',
    });
  });
});
