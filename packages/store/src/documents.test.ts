// Documents: kept as they were issued, to the byte.

import { randomBytes } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { at, newBooks, newId } from '../trial/cast.ts';
import { databases, type Trial } from '../trial/databases.ts';
import type { IssuedDocument } from './books.ts';

describe.each(databases)('$name', (database) => {
  let trial: Trial;
  let organisation: string;
  beforeAll(async () => {
    trial = await database.begin();
    organisation = (await newBooks(trial.store)).home.id;
  });
  afterAll(() => trial.end());

  const document = (changes: Partial<IssuedDocument> = {}): IssuedDocument => ({
    ...{ kind: 'invoice', of: newId(), series: '2026', ordinal: 1, number: '2026-0001' },
    bytes: new TextEncoder().encode('%PDF-1.7 “page”'),
    issuedAt: at('2026-03-20', '09:30').toInstant(),
    ...changes,
  });
  const keep = (issued: IssuedDocument) =>
    trial.store.within(organisation, (books) => books.keepDocument(issued));
  const load = (of: string) => trial.store.reading(organisation, (books) => books.document(of));

  test('a document comes back byte for byte, with its hash', async () => {
    const issued = document();
    await keep(issued);
    // By `printf '%%PDF-1.7 “page”' | sha256sum`.
    const sha256 = '3e3679739cf24cd6751fa38dac1cfd82e8e61f4a2c2db8c4d058cd6e5659dcc0';
    expect(await load(issued.of)).toStrictEqual({ ...issued, sha256 });
    expect(await load(newId())).toBeUndefined();
  });

  test('bytes of every value and a document of half a megabyte come back', async () => {
    const every = document({ bytes: Uint8Array.from({ length: 256 }, (_, byte) => byte), ordinal: 2 });
    const large = document({ bytes: new Uint8Array(randomBytes(500_000)), ordinal: 3 });
    await keep(every);
    await keep(large);
    expect((await load(every.of))?.bytes).toEqual(every.bytes);
    expect((await load(large.of))?.bytes).toEqual(large.bytes);
  });

  test('what was issued first stays: a second document of a record changes nothing', async () => {
    const issued = document({ ordinal: 4 });
    await keep(issued);
    await keep({ ...issued, bytes: new TextEncoder().encode('another') });
    expect((await load(issued.of))?.bytes).toEqual(issued.bytes);
  });

  test('the database itself refuses a hash that is not of the bytes, a change, and taking it out', async () => {
    await trial.asOwner(async (owner) => {
      await owner.run(`select set_config('colla.organisation', '${organisation}', false)`);
      const wrong = `insert into documents (of, kind, series, ordinal, number, bytes, sha256, issued_at) values
        ('${newId()}', 'invoice', '2026', 9, '2026-0009', 'x', 'no hash', now())`;
      await expect(owner.run(wrong)).rejects.toThrow(/documents_sha256/);
      await expect(owner.run("update documents set number = 'other'")).rejects.toThrow(/never altered/);
      await expect(owner.run('delete from documents')).rejects.toThrow(/never altered/);
    });
  });
});
