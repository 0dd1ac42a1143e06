// The text of a file as a bank made it, whatever letters it was written in.

import { type OrRefusal, Refusal } from '@colla/refusal';

/** In bytes: several years of a busy account. */
export const LARGEST_FILE = 10_000_000;

/**
 * Reads a file's bytes: UTF-8 or UTF-16 where they are that, else the letters an XML file says it is in, else
 * Windows-1252, of which Latin-1 is a part. Refuses an empty file, one above `LARGEST_FILE`, and what is no text.
 */
export function textOf(bytes: Uint8Array): OrRefusal<string> {
  if (bytes.length > LARGEST_FILE) return tooLarge(bytes.length);
  const text = asUtf16(bytes) ?? as('utf-8', bytes) ?? as(declaredIn(bytes), bytes) ?? asWindows1252(bytes);
  if (text.includes('\0')) {
    return new Refusal(
      'bank/not-text',
      'This is not a text file. Choose the file of entries that your bank offers as XML (camt.053) or CSV.',
    );
  }
  if (text.trim() === '') {
    return new Refusal('bank/empty-file', 'The file is empty. Download it from your bank again.');
  }
  return text;
}

function tooLarge(bytes: number): Refusal {
  return new Refusal(
    'bank/too-large',
    `The file is larger than ${LARGEST_FILE / 1_000_000} MB. Take a shorter time, a month or a year, and bring in one file after another.`,
    { bytes },
  );
}

/** By the mark with which such files begin; without one nothing tells them. */
function asUtf16(bytes: Uint8Array): string | undefined {
  const [first, second] = bytes;
  if (first === 0xff && second === 0xfe) return as('utf-16le', bytes);
  if (first === 0xfe && second === 0xff) return as('utf-16be', bytes);
  return undefined;
}

/** Of the Encoding standard, as every browser and Node have it; ECMAScript's own list of globals leaves it out. */
declare const TextDecoder: new (
  label: string,
  options: { readonly fatal: boolean },
) => { decode(bytes: Uint8Array): string };

/** The text without the mark at its beginning; nothing where the bytes are not of these letters, or nobody knows them. */
function as(letters: string, bytes: Uint8Array): string | undefined {
  if (/^(windows-1252|iso-8859-1|latin-?1|us-ascii)?$/i.test(letters)) return undefined;
  try {
    return new TextDecoder(letters, { fatal: true }).decode(bytes);
  } catch {
    return undefined;
  }
}

/** What the first line of an XML file says of its letters. */
function declaredIn(bytes: Uint8Array): string {
  const start = String.fromCharCode(...bytes.subarray(0, 200));
  return /^<\?xml[^>]*\sencoding\s*=\s*["']([\w.-]+)["']/.exec(start)?.[1] ?? '';
}

/** Done here, since Node 20 reads the bytes from 128 to 159 of Windows-1252 as control characters. */
function asWindows1252(bytes: Uint8Array): string {
  const parts: string[] = [];
  for (let at = 0; at < bytes.length; at += 8192) {
    const codes = Uint16Array.from(bytes.subarray(at, at + 8192), codeOf);
    parts.push(String.fromCharCode(...codes));
  }
  return parts.join('');
}

function codeOf(byte: number): number {
  return byte >= 0x80 && byte < 0xa0 ? FROM_128.charCodeAt(byte - 0x80) : byte;
}

/** Windows-1252 from 128 to 159, as the Encoding standard's index has it (from memory); five have no letter. */
const FROM_128 = '€\u0081‚ƒ„…†‡ˆ‰Š‹Œ\u008dŽ\u008f\u0090‘’“”•–—˜™š›œ\u009džŸ';
