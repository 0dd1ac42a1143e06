import { readFileSync } from 'node:fs';
import { granted, refused } from '@colla/refusal';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { balance, entry, message, told } from './camt.fixture.ts';
import { readCamt } from './camt.ts';
import type { BankStatement } from './entry.ts';
import { textOf } from './text.ts';

const BOOKED = { currency: 'EUR', reversal: false, references: [] } as const;

/** The statements of a sample, days as text so that they compare. */
function read(name: string) {
  return plain(granted(readCamt(granted(textOf(bytesOf(name))))));
}

function bytesOf(name: string): Uint8Array {
  return readFileSync(new URL(`../examples/${name}`, import.meta.url));
}

function plain(statements: readonly BankStatement[]) {
  return statements.map((statement) => ({
    ...statement,
    entries: statement.entries.map(({ identity: _, on, ...entry }) => ({ ...entry, on: String(on) })),
  }));
}

/** The entries of one message written by hand. */
function entriesOf(inside: string, version?: string) {
  return plain(granted(readCamt(message(inside, version))))[0]?.entries ?? [];
}

describe('a published statement of account (examples/README.md)', () => {
  it('of version 02 has its entry and, since its balances are in two currencies, nothing to add up', () => {
    expect(read('camt053.v2.minimal.xml')).toEqual([
      {
        account: 'NL26VAYB8060476890',
        id: '253EURNL26VAYB8060476890',
        pending: 0,
        entries: [
          {
            ...BOOKED,
            on: '2014-12-31',
            amount: 885n,
            name: 'NAME NAME',
            words: '',
            references: ['4654654654654654'],
          },
        ],
      },
    ]);
  });

  it('of two statements is read as two, each adding up', () => {
    const [first, second] = read('camt053.v2.multi.statement.xml');
    expect(first).toMatchObject({
      id: '253EURNL26VAYB8060476890',
      entries: [{ amount: 885n, words: 'Transaction Description 1' }],
      balance: { currency: 'EUR', opening: 1815n, closing: 2700n, unexplained: 0n },
    });
    expect(second).toMatchObject({
      id: '254EURNL26VAYB8060476890',
      entries: [{ amount: -700n, name: 'Company Name 2', words: 'Transaction Description 2' }],
      balance: { currency: 'EUR', opening: 2700n, closing: 2000n, unexplained: 0n },
    });
  });

  it('whose entry does not lead from its opening to its closing balance says how far it is off', () => {
    // 4.04 − 1.01 − 8.85; the sum is written 8.850.
    expect(read('camt053.v2.all-balance-types.xml')).toMatchObject([
      { entries: [{ amount: 885n }], balance: { opening: 101n, closing: 404n, unexplained: -582n } },
    ]);
  });

  it.each(['camt053.v4.xml', 'camt053.v8.xml'])(
    '%s has the payer, the reference and the bank’s own name',
    (name) => {
      const endToEnd = name === 'camt053.v8.xml' ? { endToEnd: 'MUELL/FINP/RA12345' } : {};
      expect(read(name)).toEqual([
        {
          account: 'NL26VAYB8060476890',
          id: '253EURNL26VAYB8060476890',
          pending: 0,
          entries: [
            {
              ...BOOKED,
              on: '2014-12-31',
              amount: 885n,
              name: 'NAME NAME',
              words: '',
              references: ['4654654654654654'],
              bankId: 'AAAASESS-FP-CN_98765/01',
              ...endToEnd,
            },
          ],
        },
      ]);
    },
  );

  it('of an invoice paid and a page turner’s travel leads from 1000.00 to 1331.26', () => {
    expect(read('camt053.v8.invoice-paid.xml')).toMatchObject([
      {
        account: 'DE89370400440532013000',
        entries: [
          { on: '2026-11-25', amount: 34846n, references: ['RF18539007547034'] },
          { on: '2026-11-25', amount: -1720n, words: 'Page turner travel' },
        ],
        balance: { opening: 100000n, closing: 133126n, unexplained: 0n },
      },
    ]);
  });
});

describe('an entry', () => {
  it('names who paid and for whom, and keeps all lines of words', () => {
    const parties =
      '<RltdPties><Dbtr><Pty><Nm>Ines Aurich</Nm></Pty></Dbtr><UltmtDbtr><Pty><Nm>Tilo Aurich</Nm></Pty></UltmtDbtr></RltdPties>';
    const words = '<RmtInf><Ustrd>Recital\n  in May,</Ustrd><Ustrd>2026-0042</Ustrd></RmtInf>';
    expect(entriesOf(entry({ amount: '80.00', payments: [parties + words] }))).toMatchObject([
      { amount: 8000n, name: 'Ines Aurich, Tilo Aurich', words: 'Recital in May, 2026-0042' },
    ]);
  });

  it('may have words that are kept from being read as XML', () => {
    const payments = [told('Bo Lind', '<![CDATA[Lied & Oper <2>]]>')];
    expect(entriesOf(entry({ amount: '80.00', payments }))).toMatchObject([{ words: 'Lied & Oper <2>' }]);
  });

  it('takes what the bank says of it where the payer wrote nothing', () => {
    const more = '<AddtlNtryInf>Cash paid in</AddtlNtryInf>';
    expect(entriesOf(entry({ amount: '80', more }))).toMatchObject([{ words: 'Cash paid in' }]);
  });

  it('has the day on the bank’s calendar, and where it is not told, the day from which interest counts', () => {
    const days = [
      '<BookgDt><DtTm>2026-11-25T00:30:00+14:00</DtTm></BookgDt>',
      '<ValDt><Dt>2026-11-26</Dt></ValDt>',
    ];
    const entries = entriesOf(days.map((day) => entry({ amount: '1.00', day })).join(''));
    expect(entries.map(({ on }) => on)).toEqual(['2026-11-25', '2026-11-26']);
  });

  it('that the bank has not booked yet is counted and passed over', () => {
    const states = ['<Sts>PDNG</Sts>', '<Sts><Cd>INFO</Cd></Sts>', '<Sts><Prtry>planned</Prtry></Sts>'];
    const inside = ['<Sts>BOOK</Sts>', ...states].map((state) => entry({ amount: '5.00', state })).join('');
    expect(granted(readCamt(message(inside)))).toMatchObject([{ entries: [{ amount: 500n }], pending: 3 }]);
  });

  it('that undoes an earlier one is a reversal, and its other side is who paid then', () => {
    const undone = entry({
      amount: '80.00',
      side: 'DBIT',
      more: '<RvslInd>true</RvslInd>',
      payments: [told('Ines Aurich', '2026-0042')],
    });
    const returned = entry({ amount: '12.00', payments: ['<RtrInf><Rsn><Cd>AC04</Cd></Rsn></RtrInf>'] });
    const undoneToo = entry({ amount: '80.00', side: 'DBIT', more: '<RvslInd>1</RvslInd>' });
    expect(entriesOf(undone + returned + undoneToo)).toMatchObject([
      { amount: -8000n, reversal: true, name: 'Ines Aurich' },
      { amount: 1200n, reversal: true },
      { amount: -8000n, reversal: true },
    ]);
  });
});

describe('several payments that the bank booked together', () => {
  const amounts = (first: string, second: string) => [
    `<Amt Ccy="EUR">${first}</Amt><CdtDbtInd>CRDT</CdtDbtInd>${told('Ines Aurich', '2026-0041')}`,
    `<Amt Ccy="EUR">${second}</Amt><CdtDbtInd>CRDT</CdtDbtInd>${told('Bo Lind', '2026-0042')}`,
  ];

  it('are told apart where each has its sum', () => {
    expect(entriesOf(entry({ amount: '100.00', payments: amounts('60.00', '40.00') }))).toMatchObject([
      { amount: 6000n, name: 'Ines Aurich', words: '2026-0041' },
      { amount: 4000n, name: 'Bo Lind', words: '2026-0042' },
    ]);
  });

  it('are told apart in version 02, where the sum lies among the details', () => {
    const part = (amount: string) => `<AmtDtls><TxAmt><Amt Ccy="EUR">${amount}</Amt></TxAmt></AmtDtls>`;
    const batch = entry({
      amount: '100.00',
      state: '<Sts>BOOK</Sts>',
      payments: [part('60.00'), part('40.00')],
    });
    expect(entriesOf(batch, '02').map(({ amount }) => amount)).toEqual([6000n, 4000n]);
  });

  it('are told apart where one of them went the other way', () => {
    const back = '<Amt Ccy="EUR">20.00</Amt><CdtDbtInd>DBIT</CdtDbtInd>';
    const [first = ''] = amounts('60.00', '');
    expect(
      entriesOf(entry({ amount: '40.00', payments: [first, back] })).map(({ amount }) => amount),
    ).toEqual([6000n, -2000n]);
  });

  it('stay one entry where one is told in another currency, though the figures add up', () => {
    const dollars = '<Amt Ccy="USD">40.00</Amt><CdtDbtInd>CRDT</CdtDbtInd>';
    const [first = ''] = amounts('60.00', '');
    expect(entriesOf(entry({ amount: '100.00', payments: [first, dollars] }))).toMatchObject([
      { amount: 10000n },
    ]);
  });

  it('stay one entry where they do not add up, as after charges, and keep all that was written', () => {
    expect(entriesOf(entry({ amount: '99.00', payments: amounts('60.00', '40.00') }))).toMatchObject([
      { amount: 9900n, name: 'Ines Aurich, Bo Lind', words: '2026-0041 2026-0042' },
    ]);
    const lessons = [told('Bo Lind', 'May'), told('Bo Lind', 'June')];
    expect(entriesOf(entry({ amount: '99.00', payments: lessons }))).toMatchObject([
      { name: 'Bo Lind', words: 'May June' },
    ]);
  });
});

describe('the balances of a statement', () => {
  const paid = entry({ amount: '20.00' });

  it.each([
    ['opening and closing', balance('OPBD', '10.00') + balance('CLBD', '30.00'), 0n],
    ['what it closed with before, and closing', balance('PRCD', '10.00') + balance('CLBD', '35.00'), 500n],
    [
      'two openings, of which the first counts',
      `${balance('OPBD', '10.00')}${balance('OPBD', '12.00')}${balance('CLBD', '30.00')}`,
      0n,
    ],
    ['closing alone', balance('CLBD', '30.00'), undefined],
    ['two currencies', balance('OPBD', '10.00', 'USD') + balance('CLBD', '30.00', 'USD'), undefined],
  ])('are told as %s', (_, balances, unexplained) => {
    const [statement] = granted(readCamt(message(balances + paid)));
    expect(statement?.balance?.unexplained).toBe(unexplained);
  });
});

describe('a file that is not read', () => {
  const whole = message(entry({ amount: '80.00' }));
  const entities = '<!DOCTYPE Document [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;&a;&a;&a;&a;&a;">]>';

  it.each([
    [
      'breaks off between two elements',
      whole.slice(0, whole.indexOf('</Ntry>')),
      'bank/breaks-off',
      'breaks off',
    ],
    ['breaks off inside a tag', whole.slice(0, whole.indexOf('Ntry>') + 2), 'bank/breaks-off', 'breaks off'],
    [
      'lets its own words grow',
      whole.replace('?>', `?>${entities}`),
      'bank/declares-its-own',
      'begins with a DOCTYPE',
    ],
    ['uses a word nobody declared', whole.replace('80.00', '&a;'), 'bank/broken-file', 'damaged in line 5'],
    ['is damaged', whole.replace('</Amt>', '</Amount>'), 'bank/broken-file', 'damaged in line 5'],
    [
      'is flooded with elements',
      whole.replace('<Sts>', `${'<a/>'.repeat(300_000)}<Sts>`),
      'bank/broken-file',
      'damaged in line 5',
    ],
    [
      'nests without end',
      whole.replace('<Stmt>', '<Stmt>'.repeat(60)),
      'bank/broken-file',
      'damaged in line 4',
    ],
    [
      'is a notice of payments',
      whole.replaceAll('camt.053', 'camt.054'),
      'bank/other-kind',
      'camt.054.001.08',
    ],
    ['is no message of a bank', '<html><body/></html>', 'bank/other-kind', 'Ask your bank for its statement'],
    ['is no XML', 'Date;Amount', 'bank/broken-file', 'damaged in line 1'],
    [
      'has no statement',
      whole.replace(/<Stmt>[\s\S]*<\/Stmt>/, ''),
      'bank/no-statement',
      'says nothing of any account',
    ],
  ])('%s', (_, text, code, sentence) => {
    expect(readCamt(text)).toMatchObject({ code, sentence: expect.stringContaining(sentence) });
  });

  it.each([
    ['no sum', whole.replace(/<Amt.*<\/Amt>/, ''), 'has no sum'],
    ['a sum that is none', whole.replace('80.00', 'eighty'), 'has a sum that is none in EUR: “eighty”'],
    ['a sum below nothing', whole.replace('80.00', '-80.00'), 'has a sum that is none in EUR: “-80.00”'],
    ['a third of a cent', whole.replace('80.00', '80.003'), 'has a sum that is none in EUR: “80.003”'],
    ['a currency of no country', whole.replace('"EUR"', '"EUX"'), 'in no currency that ISO 4217 lists'],
    [
      'no side',
      whole.replace(/<CdtDbtInd>.*<\/CdtDbtInd>/, ''),
      'does not say whether it came in or went out',
    ],
    ['no state', whole.replace(/<Sts>.*<\/Sts>/, ''), 'does not say whether it is booked'],
    ['no day', whole.replace(/<BookgDt>.*<\/BookgDt>/, ''), 'has no day, so'],
    [
      'a day that never was',
      whole.replace('<Dt>2026-11-25', '<Dt>2026-11-31'),
      'no day that exists: “2026-11-31”',
    ],
  ])('has an entry with %s, and says in which line', (_, text, what) => {
    const answer = readCamt(text);
    expect(answer).toMatchObject({ code: 'bank/unclear-entry', facts: { line: 5 } });
    expect(refused(answer) && answer.sentence).toContain(what);
  });

  it('was cut anywhere', () => {
    const text = granted(textOf(bytesOf('camt053.v8.invoice-paid.xml'))).trimEnd();
    fc.assert(
      fc.property(fc.nat(text.length - 1), (length) => {
        expect(refused(readCamt(text.slice(0, length)))).toBe(true);
      }),
    );
  });

  it('has a balance that is no sum', () => {
    expect(readCamt(message(balance('OPBD', 'much')))).toMatchObject({
      sentence:
        'The balance in line 5 has a sum that is none in EUR: “much”, so nothing of the file was read. Ask your bank for the file again.',
    });
  });
});
