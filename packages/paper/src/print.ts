// Printing a layout: placed words and rules into a tagged PDF/A-3 (ISO 19005-3, level B), fonts embedded.

import { FACE_NAMES } from './face.ts';
import type { Fonts } from './fonts.ts';
import { type Layout, type Marks, PAPERS, type Part, type Placed, type Rule } from './page.ts';
import { INKS, type Ink } from './style.ts';

type Elements = Map<Part, PDFKit.PDFStructureElement>;

/** The PDF's bytes. The same layout gives the same bytes. */
export async function print(layout: Layout, { parsed }: Fonts): Promise<Uint8Array> {
  // Loaded when the first document is asked for: it takes longer than a start should.
  const { default: Document } = await import('pdfkit');
  const doc: PDFKit.PDFDocument = new Document(settings(layout));
  // pdfkit takes a parsed font where its types only know of files.
  for (const name of FACE_NAMES) doc.registerFont(name, parsed[name] as unknown as Uint8Array);
  const elements: Elements = new Map();
  const root = element(layout.root, doc, elements);
  doc.addStructure(root);
  for (const page of layout.pages) printPage(page, doc, elements);
  root.end();
  doc.end();
  return written(doc);
}

function settings({ title, language, madeOn, paper }: Layout): PDFKit.PDFDocumentOptions {
  const { width, height } = PAPERS[paper];
  return {
    size: [width, height],
    margin: 0,
    autoFirstPage: false,
    // No font until one is asked for: the built-in ones cannot be embedded.
    font: '',
    pdfVersion: '1.7',
    subset: 'PDF/A-3b',
    tagged: true,
    lang: language,
    displayTitle: true,
    info: {
      // pdfkit writes the title into XML as it stands.
      Title: title.replace(/[<>&]/g, ' '),
      Creator: 'Colla Parte',
      Producer: 'Colla Parte',
      CreationDate: new Date(Date.UTC(madeOn.year, madeOn.month - 1, madeOn.day)),
    },
  };
}

/** All that was written: pdfkit writes while it is told to, so that at the end the whole waits to be read. */
function written(doc: PDFKit.PDFDocument): Uint8Array {
  const bytes: unknown = doc.read();
  // A part that is left open keeps pdfkit from writing the end, and it says nothing of it.
  if (!Buffer.isBuffer(bytes) || !bytes.subarray(-8).includes('%%EOF')) {
    throw new Error('a document was left without its end');
  }
  return new Uint8Array(bytes);
}

/** The part and those within it as elements, in reading order. All are ended with the root. */
function element(part: Part, doc: PDFKit.PDFDocument, elements: Elements): PDFKit.PDFStructureElement {
  // pdfkit knows `scope` where its types do not.
  const options: PDFKit.Mixins.StructureElementOptions & Pick<Part, 'scope'> = part.scope
    ? { scope: part.scope }
    : {};
  const made = doc.struct(part.role, options);
  elements.set(part, made);
  for (const child of part.parts) made.add(element(child, doc, elements));
  return made;
}

function printPage({ words, rules }: Marks, doc: PDFKit.PDFDocument, elements: Elements): void {
  doc.addPage();
  doc.markContent('Artifact', { type: 'Layout' });
  for (const rule of rules) draw(rule, doc);
  doc.endMarkedContent();
  let ink: Ink | undefined;
  for (const run of runsOf(words)) {
    mark(run[0]?.part, doc, elements);
    for (const word of run) {
      if (word.ink !== ink) doc.fillColor(INKS[word.ink]);
      ink = word.ink;
      write(word, doc);
    }
    doc.endMarkedContent();
  }
}

/** Words of one part that follow one another are marked once. */
function runsOf(words: readonly Placed[]): Placed[][] {
  const runs: Placed[][] = [];
  for (const word of words) {
    const run = runs.at(-1);
    if (run && run[0]?.part === word.part) run.push(word);
    else runs.push([word]);
  }
  return runs;
}

function mark(part: Part | undefined, doc: PDFKit.PDFDocument, elements: Elements): void {
  const within = part && elements.get(part);
  if (within) within.add(doc.markStructureContent(part.role));
  else doc.markContent('Artifact', { type: 'Pagination' });
}

function write({ text, x, y, face, size }: Placed, doc: PDFKit.PDFDocument): void {
  doc.font(face, size).text(text, x, y, { lineBreak: false, baseline: 'alphabetic' });
}

function draw({ x, y, width, weight, ink }: Rule, doc: PDFKit.PDFDocument): void {
  doc
    .lineWidth(weight)
    .moveTo(x, y)
    .lineTo(x + width, y)
    .stroke(INKS[ink]);
}
