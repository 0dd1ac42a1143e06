import { readDay } from '@colla/calendar';
import { currency } from '@colla/money';
import { granted } from '@colla/refusal';
import { describe, expect, it } from 'vitest';
import { sortOut } from './brought-in.ts';
import { entry, message, told } from './camt.fixture.ts';
import { readCamt } from './camt.ts';
import { readCsv } from './csv.ts';
import type { BankEntry } from './entry.ts';

const ACCOUNT = 'DE89370400440532013000';
const aurich = entry({ amount: '80.00', payments: [told('Ines Aurich', 'Lesson')] });
const lind = entry({ amount: '90.00', payments: [told('Bo Lind', 'Lesson')] });

function camt(inside: string): readonly BankEntry[] {
  return granted(readCamt(message(inside))).flatMap(({ entries }) => entries);
}

/** The same account as the bank's rows tell it. */
function rows(text: string): readonly BankEntry[] {
  const mapping = {
    delimiter: ';',
    headings: [],
    dateOrder: 'day month year',
    decimalMark: ',',
    day: 0,
    sum: { signed: 2 },
    words: [1],
    currency: granted(currency('EUR')),
  } as const;
  return granted(readCsv(text, mapping, ACCOUNT)).entries;
}

describe('entries brought in', () => {
  it('from the same file twice change nothing', () => {
    const file = camt(aurich + lind + aurich);
    expect(sortOut(file, [])).toMatchObject({ fresh: file, again: 0, doubtful: new Set() });
    expect(sortOut(file, file)).toEqual({ fresh: [], again: 3, doubtful: new Set() });
  });

  it('from a file that reaches back are only those that came since', () => {
    const { fresh, again, doubtful } = sortOut(camt(aurich + lind + aurich), camt(aurich));
    expect(fresh.map(({ amount }) => amount)).toEqual([9000n, 8000n]);
    expect([again, doubtful.size]).toEqual([1, 0]);
  });

  it('from the other kind of file of one account are doubtful, as many as are known', () => {
    const file = rows('25.11.2026;Aurich;80,00\n25.11.2026;Aurich Stunde;80,00\n25.11.2026;Lind;90,50');
    const { fresh, doubtful } = sortOut(file, camt(aurich + lind));
    expect(fresh).toHaveLength(3);
    expect([...doubtful]).toEqual([fresh[0]?.identity]);
  });

  it('are not doubtful beside a known entry that the same file tells', () => {
    const another = entry({ amount: '80.00', payments: [told('Tilo Aurich', 'Lesson')] });
    expect(sortOut(camt(aurich + another), camt(aurich)).doubtful).toEqual(new Set());
  });

  it('are kept by nothing but identity, day and sum', () => {
    const known = { on: granted(readDay('2026-11-25')), amount: 8000n, currency: granted(currency('EUR')) };
    expect(sortOut(camt(aurich), [{ identity: 'told otherwise', ...known }]).doubtful.size).toBe(1);
  });
});
