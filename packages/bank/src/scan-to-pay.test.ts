import { granted } from '@colla/refusal';
import { describe, expect, it } from 'vitest';
import { readCreditorReference } from './creditor-reference.ts';
import { readIban } from './iban.ts';
import published from './published-values.json' with { type: 'json' };
import { type CreditTransfer, scanToPay } from './scan-to-pay.ts';

const { given, lines, source } = published.scanToPay;
const transfer: CreditTransfer = {
  name: given.name,
  iban: granted(readIban(given.iban)),
  cents: 34846n,
  reference: granted(readCreditorReference(given.structured)),
};

describe(`a transfer to scan (${source})`, () => {
  it('is written line by line', () => {
    expect(scanToPay(transfer)).toBe(lines.join('\n'));
  });

  it('is between one cent and 999 999 999.99', () => {
    expect(scanToPay({ ...transfer, cents: 99_999_999_999n })).toContain('\nEUR999999999.99\n');
    expect(scanToPay({ ...transfer, cents: 1n })).toContain('\nEUR0.01\n');
    for (const cents of [0n, 100_000_000_000n])
      expect(scanToPay({ ...transfer, cents })).toMatchObject({ code: 'bank/not-to-scan' });
  });

  it('names who is paid', () => {
    expect(scanToPay({ ...transfer, name: ' ' })).toMatchObject({ code: 'bank/not-to-scan' });
  });

  it('cuts a name after 70 characters, and keeps it on one line', () => {
    const name = `Kammermusikverein\nzu ${'Ostermünde '.repeat(9)}`;
    const [, , , , , written = ''] = granted(scanToPay({ ...transfer, name })).split('\n');
    expect(written).toBe('Kammermusikverein zu Ostermünde Ostermünde Ostermünde Ostermünde Oster');
  });

  it('is never longer than 331 bytes, whatever the letters', () => {
    const payload = granted(scanToPay({ ...transfer, name: '𝄞'.repeat(70), cents: 99_999_999_999n }));
    expect(new TextEncoder().encode(payload).length).toBeLessThanOrEqual(331);
    expect(payload).toContain('𝄞'.repeat(50));
  });
});
