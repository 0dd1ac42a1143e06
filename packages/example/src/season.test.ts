import { inSeason, staleZones, Temporal, weeksOf } from '@colla/calendar';
import { type Engagement, hasAgreement, STAGES, statementOf, termsApart } from '@colla/engagements';
import { timesOf } from '@colla/hours';
import {
  billable,
  blockOf,
  type Invoice,
  issue,
  leftToInvoice,
  seasonScore,
  standingOf,
} from '@colla/invoicing';
import { fromDecimal } from '@colla/money';
import { granted } from '@colla/refusal';
import { describe, expect, it } from 'vitest';
import { EURO } from './cast.ts';
import { type ExampleSeason, exampleSeason } from './season.ts';

const WEDNESDAY = '2026-11-25T13:45[Europe/Lisbon]';

/** The weekdays, the turn of the year and its holidays among what is paid, a leap day, both clock changes, and a reader far away. */
const INSTANTS = [
  WEDNESDAY,
  '2026-11-23T00:10[Europe/Lisbon]',
  '2026-11-29T23:50[Europe/Lisbon]',
  '2027-01-01T08:00[Europe/Lisbon]',
  '2027-02-15T12:00[Europe/Lisbon]',
  '2027-03-28T12:00[Europe/Lisbon]',
  '2027-10-31T12:00[Europe/Lisbon]',
  '2028-02-29T12:00[Europe/Lisbon]',
  '2026-06-10T05:00[Pacific/Auckland]',
] as const;

function tell(at: string): ExampleSeason {
  let last = 0;
  const newId = () => {
    last += 1;
    return `id-${last}`;
  };
  return exampleSeason({ newId, now: Temporal.ZonedDateTime.from(at) });
}

function invoicesOf({ invoices }: ExampleSeason): Invoice[] {
  const ordinals = new Map<string, number>();
  return invoices.map(({ id, draft, series }) => {
    const ordinal = (ordinals.get(series) ?? 0) + 1;
    ordinals.set(series, ordinal);
    return issue(draft, { id, series, ordinal });
  });
}

function paidOn({ payments }: ExampleSeason): Map<string, bigint> {
  const paid = new Map<string, bigint>();
  for (const { invoice, amount } of payments.flatMap(({ allocations }) => allocations))
    paid.set(invoice, (paid.get(invoice) ?? 0n) + amount);
  return paid;
}

const euro = (text: string) => granted(fromDecimal(text, EURO));

function titled(season: ExampleSeason, start: string): Engagement {
  const found = season.engagements.find(({ title }) => title.startsWith(start));
  if (!found) throw new Error(`nothing is titled ${start}`);
  return found;
}

describe.each(INSTANTS)('the season told at %s', (at) => {
  const season = tell(at);
  const now = Temporal.ZonedDateTime.from(at).withTimeZone('Europe/Lisbon');
  const house = season.organisation;
  const invoices = invoicesOf(season);
  const statements = season.engagements.map((engagement) => statementOf(engagement, now, house));

  it('lasts 26 weeks and holds every call', () => {
    expect(weeksOf(season.season)).toHaveLength(26);
    const days = season.engagements
      .flatMap(({ calls }) => calls)
      .map((call) => timesOf(call).start.toPlainDate());
    expect(days.filter((day) => !inSeason(day, season.season))).toEqual([]);
  });

  it('shows an engagement at every stage', () => {
    const stages = new Set(season.engagements.map(({ stage }) => stage));
    expect([...STAGES].filter((stage) => !stages.has(stage))).toEqual([]);
  });

  it('shows a call of every standing, and a round that waits for another', () => {
    const calls = season.engagements.flatMap(({ calls }) => calls);
    const standings = new Set(calls.map(({ standing }) => standing.is));
    expect([...standings].sort()).toEqual(['agreed', 'cancelled', 'held', 'missed', 'played']);
    const waiting = calls.filter(({ standing }) => standing.is === 'held' && standing.onlyIf !== undefined);
    expect(waiting.map(({ label }) => label)).toEqual(['second round', 'final']);
  });

  it('shows invoices that are open, part paid, overdue and paid', () => {
    const paid = paidOn(season);
    const standings = invoices.map((of) => standingOf(of, paid.get(of.id) ?? 0n, now.toPlainDate()).is);
    expect([...new Set(standings)].sort()).toEqual(['open', 'overdue', 'paid', 'part paid']);
  });

  it('prices every call that counts', () => {
    expect(statements.flatMap((of) => of?.unpriced ?? [])).toEqual([]);
  });

  it('sums the lines and taxes of each statement to its total, and its payers too', () => {
    for (const of of statements.filter((of) => of !== undefined)) {
      const lines = of.lines.reduce((sum, { amount }) => sum + amount, 0n);
      const added = of.taxes.reduce((sum, { inside, amount }) => sum + (inside ? 0n : amount), 0n);
      expect(lines + added).toBe(of.total);
      expect(of.payers.reduce((sum, { total }) => sum + total, 0n)).toBe(of.total);
    }
  });

  it('asks for nothing twice: what was invoiced and what is left are the statement', () => {
    for (const [index, engagement] of season.engagements.entries()) {
      const statement = statements[index];
      if (!statement || !hasAgreement(engagement)) continue;
      const asked = invoices.filter((invoice) => invoice.engagement === engagement.id);
      const invoiced = asked.reduce((sum, { total }) => sum + total, 0n);
      expect(invoiced + leftToInvoice(statement, asked)).toBe(statement.total);
    }
  });

  it('invoices a call after it took place, and is paid after it was asked', () => {
    const issuedOn = new Map(invoices.map((invoice) => [invoice.id, invoice.issuedOn]));
    const late = invoices.flatMap(({ lines, issuedOn }) =>
      lines.filter(({ on }) => on && Temporal.PlainDate.compare(on, issuedOn) > 0),
    );
    expect(late).toEqual([]);
    for (const { allocations, receivedOn } of season.payments)
      for (const { invoice } of allocations)
        expect(issuedOn.get(invoice)?.until(receivedOn).days).toBeGreaterThanOrEqual(0);
  });

  it('gives invoices in the order they were issued, none of them in the future', () => {
    const days = invoices.map(({ issuedOn }) => issuedOn.toString());
    expect([...days].sort()).toEqual(days);
    expect(days.at(-1)?.localeCompare(now.toPlainDate().toString())).toBe(-1);
  });

  it('agrees before the first call is played', () => {
    for (const engagement of season.engagements.filter(hasAgreement)) {
      const starts = engagement.calls.map(({ planned }) => planned.start.epochMilliseconds);
      expect(engagement.agreement.agreedAt.epochMilliseconds).toBeLessThan(Math.min(...starts));
    }
  });

  it('names only parties it brings along', () => {
    const known = new Set(season.parties.map(({ id }) => id));
    const named = season.engagements.flatMap(({ soloistParty, institutionParty, payers }) => [
      soloistParty,
      institutionParty,
      ...Object.values(payers),
    ]);
    expect(named.filter((id) => id !== undefined && !known.has(id))).toEqual([]);
  });
});

describe('the season on 25 November 2026', () => {
  const season = tell(WEDNESDAY);
  const now = Temporal.ZonedDateTime.from(WEDNESDAY);
  const invoices = invoicesOf(season);
  const totalOf = (start: string) => statementOf(titled(season, start), now, season.organisation)?.total;

  it('tells the same twice over', () => {
    expect(JSON.stringify(tell(WEDNESDAY), plain)).toBe(JSON.stringify(season, plain));
  });

  it.each([
    // rehearsal 2 × 48.00, six juries at 52.00
    ['Voice juries', '408.00'],
    // package 118.00; 45 + 64 minutes less 90 leave 19, of which 5 are forgiven: one quarter hour of 48.00
    ['Jury: Mirembe', '130.00'],
    // ten hours at 37.00, the concert 125.00
    ['Summer course', '495.00'],
    // 84 + 84 + 21 + final 150 + 3 × 44 + 2 × 40 + 6 × 34 km × 0.38 = 628.52, and a tenth of it
    ['Official pianist', '691.37'],
    // seven services at 78.00, one step beyond 20.00, ten journeys at 9.00
    ['Sunday services', '656.00'],
    // the practice 36.00, and three quarters of 165.00
    ['Wedding', '159.75'],
    // 540 + 2 × (15.5 km × 0.38 + 35/60 × 14.00) + score 24.90
    ['Song evening', '593.02'],
    // 440 + half an hour of 46.00 beyond five hours + one work asked for 35.00
    ['Autumn recital', '498.00'],
    // 475 + 35 + 37.45
    ['Shared recital', '547.45'],
    // the pianist fell ill before any of it
    ['House concert', '0.00'],
  ])('comes to what it should: %s', (start, owed) => {
    expect(totalOf(start)).toBe(euro(owed));
  });

  it('shares a shared recital between two soloists to the last cent', () => {
    const shared = titled(season, 'Shared recital');
    const totals = invoices.filter(({ engagement }) => engagement === shared.id).map(({ total }) => total);
    expect(totals).toEqual([euro('273.73'), euro('273.72')]);
  });

  it('keeps the old price of an hour where it was agreed before the new one', () => {
    const versions = ['Harvest concert', 'Candlelight concert'].map((start) => {
      const engagement = titled(season, start);
      return hasAgreement(engagement) ? engagement.agreement.tariff.version : undefined;
    });
    expect(versions).toEqual([1, 2]);
  });

  it('asks only for the service that was added after the invoice', () => {
    const services = titled(season, 'Sunday services');
    const statement = statementOf(services, now, season.organisation);
    const asked = invoices.filter(({ engagement }) => engagement === services.id);
    const left = statement && billable(statement, 'payer', asked);
    expect(left?.lines.map(({ amount }) => amount)).toEqual([euro('78.00')]);
  });

  it('keeps what Freya paid beyond what she owed as credit', () => {
    const credits = season.payments.filter(({ credit }) => credit > 0n).map(({ credit }) => credit);
    expect(credits).toEqual([euro('4.50')]);
  });

  it('takes a tenth off for a member of the guild', () => {
    const audition = statementOf(titled(season, 'Opera studio audition'), now, season.organisation);
    const discount = audition?.lines.filter(({ clause }) => clause === 'guild').map(({ amount }) => amount);
    // coaching of 75 minutes twice at 48.00, an hour of rehearsal, the audition at 52.00: 120 + 48 + 52, a tenth off
    expect(discount?.reduce((sum, amount) => sum + amount, 0n)).toBe(euro('-22.00'));
  });

  it('asks more where a hard part is among the works', () => {
    const concert = statementOf(titled(season, 'New Year concert'), now, season.organisation);
    expect(concert?.lines.find(({ clause }) => clause === 'hard')?.amount).toBe(euro('20.00'));
  });

  it('moves one rehearsal at the singers’ wish, the first time for nothing', () => {
    const concert = titled(season, 'Candlelight concert');
    expect(concert.moves.map(({ was, by }) => [was.start.toPlainDate().toString(), by])).toEqual([
      ['2026-11-18', 'payer'],
    ]);
    const statement = statementOf(concert, now, season.organisation);
    expect(statement?.lines.filter(({ clause }) => clause === 'moving')).toEqual([]);
  });

  it('lets the rounds of a senior candidate wait for the money, due three weeks before the first', () => {
    const rounds = titled(season, 'Wenzel Ostrauer');
    if (rounds.stage !== 'agreed') throw new Error('the rounds are agreed');
    const block = blockOf({ engagement: rounds, invoices: [], house: season.organisation }, now);
    // the first round is on 11 December
    expect(block?.due.toString()).toBe('2026-11-20');
    expect(block?.calls).toHaveLength(2);
  });

  it('knows the terms of the town', () => {
    const names = season.organisation.terms.map(({ name }) => name);
    expect(new Set(names)).toEqual(new Set(['spring', 'summer', 'autumn']));
    expect(termsApart(season.organisation.terms)).toBe(season.organisation.terms);
  });

  it('draws a stave for each institution and for each soloist who asked alone', () => {
    const score = seasonScore(
      {
        season: season.season,
        engagements: season.engagements,
        invoices,
        paid: paidOn(season),
        names: new Map(season.parties.map(({ id, name }) => [id, name])),
        house: season.organisation,
        weeklyLimit: season.organisation.weeklyLimit,
      },
      now,
    );
    expect(score.staves).toHaveLength(12);
    expect(score.staves.every(({ name }) => name !== '')).toBe(true);
    expect(score.weeks.some(({ played }) => played > score.weeklyLimit)).toBe(true);
  });

  it('is set in a zone whose clocks this runtime knows', () => {
    expect(staleZones()).not.toContain(season.organisation.zone);
  });
});

function plain(_: string, value: unknown): unknown {
  return typeof value === 'bigint' ? `${value}n` : value;
}
