import { firstBooks, makeFirstBooks } from '@colla/store/trial';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { enterPlayed } from '../trial/cast.ts';
import { databases, openPractice, type Practice } from '../trial/practice.ts';

describe.each(databases)('an invoice as it was issued, %s', (_, begin) => {
  let practice: Practice;
  beforeAll(async () => {
    practice = await openPractice(begin);
  });
  afterAll(() => practice.close());

  test('stays the same to the byte, whatever becomes of whoever issued it', async () => {
    const { client } = practice.browser;
    const { id } = await enterPlayed(practice);
    const invoice = await client.issueInvoice({ params: { id }, body: { payer: 'payer' } });
    const issued = await pdfOf(practice, invoice.id);
    expect(issued.subarray(0, 5).toString()).toBe('%PDF-');
    await client.changeOrganisation({ body: { paper: 'Letter', locale: 'de-AT', name: 'Another name' } });
    expect(await pdfOf(practice, invoice.id)).toEqual(issued);
  });

  test('of before documents were kept is printed when it is first asked for, and stays so', async () => {
    const ofBefore = await openPractice(async () => {
      const trial = await begin();
      await trial.asOwner(makeFirstBooks);
      return trial;
    });
    try {
      const first = await pdfOf(ofBefore, firstBooks.invoice);
      await ofBefore.browser.client.changeOrganisation({ body: { paper: 'Letter' } });
      expect(await pdfOf(ofBefore, firstBooks.invoice)).toEqual(first);
    } finally {
      await ofBefore.close();
    }
  });

  async function pdfOf({ browser }: Practice, id: string): Promise<Buffer> {
    const response = await browser.fetch(`/api/invoices/${id}/pdf`);
    expect(response.status).toBe(200);
    return Buffer.from(await response.arrayBuffer());
  }
});
