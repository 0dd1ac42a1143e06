import { createClient } from '@colla/wire/client';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { callAt, enterInquiry, harbourTariff } from '../trial/cast.ts';
import { databases, openPractice, type Practice, problemOf } from '../trial/practice.ts';

describe.each(databases)('an edit made from what is not so any more, %s', (_, begin) => {
  let practice: Practice;
  beforeAll(async () => {
    practice = await openPractice(begin);
  });
  afterAll(() => practice.close());

  const tabs = () => {
    const { fetch } = practice.browser;
    return [createClient({ fetch }), createClient({ fetch })] as const;
  };

  test('of an engagement is refused with what changed in the other tab, and nothing is lost', async () => {
    const [one, other] = tabs();
    const { id } = await enterInquiry(one);
    const params = { id };
    const [seen, seenThere] = [await one.getEngagement({ params }), await other.getEngagement({ params })];
    const call = callAt('rehearsal', '2026-11-05', ['10:00', '11:00']);
    await other.addCall({ params, body: call }, { seen: seenThere });
    const changing = one.changeEngagement({ params, body: { title: 'Mine' } }, { seen });
    expect(await problemOf(changing)).toMatchObject({
      status: 412,
      type: '/api/problems/edits/stale',
      detail:
        'This was made from an earlier state of the engagement: meanwhile its calls changed. Look at it again, then change what you want.',
      facts: { changed: 'calls' },
    });
    const now = await one.getEngagement({ params });
    expect([now.title, now.calls.length]).toEqual(['Autumn recital', 4]);
    const changed = await one.changeEngagement({ params, body: { title: 'Mine' } }, { seen: now });
    const again = await one.changeEngagement({ params, body: { note: 'Further.' } }, { seen: changed });
    expect([again.title, again.note]).toEqual(['Mine', 'Further.']);
  });

  test('of a party, the organisation and a tariff is refused likewise', async () => {
    const [one, other] = tabs();
    const party = await one.addParty({ body: { name: 'Sanna Ilves' } });
    const params = { id: party.id };
    await other.changeParty({ params, body: { name: 'Sanna I.', reference: 'PO 1' } });
    const stale = one.changeParty({ params, body: { name: 'S. Ilves' } }, { seen: party });
    expect((await problemOf(stale)).detail).toMatch('meanwhile its name and reference changed');

    const home = await one.getOrganisation();
    await other.changeOrganisation({ body: { payTo: ['Account 555-0100'] } });
    const late = one.changeOrganisation({ body: { name: 'Late' } }, { seen: home });
    expect((await problemOf(late)).detail).toMatch('meanwhile its means of payment changed');

    const tariff = await one.addTariff({ body: harbourTariff });
    const to = { id: tariff.id };
    await other.addTariffVersion({ params: to, body: { ...harbourTariff, from: '2027-01-01' } });
    const next = { ...harbourTariff, from: '2027-02-01' };
    const second = one.addTariffVersion({ params: to, body: next }, { seen: tariff });
    expect((await problemOf(second)).detail).toMatch('meanwhile its versions changed');
  });

  test('is let through where only something else was asked of the noun, and where nothing is said of what was seen', async () => {
    const [one, other] = tabs();
    const { id } = await enterInquiry(one);
    const params = { id };
    const seen = await one.getEngagement({ params });
    await enterInquiry(other, 'Another engagement');
    await one.changeEngagement({ params, body: { title: 'Seen' } }, { seen });
    await one.changeEngagement({ params, body: { title: 'Unseen' } });
    expect((await one.getEngagement({ params })).title).toBe('Unseen');
  });

  test('that is sent again because its answer was lost is answered as it was', async () => {
    const { fetch } = practice.browser;
    let lost = 0;
    const unsteady: typeof fetch = async (...asked) => {
      const answer = await fetch(...asked);
      if (lost-- > 0) throw new TypeError('the connection broke');
      return answer;
    };
    const client = createClient({ fetch: unsteady });
    const party = await client.addParty({ body: { name: 'Sanna Ilves' } });
    lost = 1;
    const changed = await client.changeParty(
      { params: { id: party.id }, body: { name: 'S. Ilves' } },
      { seen: party },
    );
    expect(changed.name).toBe('S. Ilves');
  });
});
