// A PDF read back as text.

import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

/** Every page's words in the order they were set, parted by single spaces. */
export async function readPdf(bytes: Uint8Array): Promise<string> {
  const document = await getDocument({ data: Uint8Array.from(bytes), verbosity: 0 }).promise;
  const pages: string[] = [];
  for (let number = 1; number <= document.numPages; number++) {
    const { items } = await (await document.getPage(number)).getTextContent();
    pages.push(items.map((item) => ('str' in item ? item.str : '')).join(' '));
  }
  return pages.join(' ').replace(/\s+/g, ' ');
}
