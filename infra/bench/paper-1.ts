// An invoice laid out and printed as a tagged PDF/A, held against pdfkit alone writing the same words at the same
// places, with the same parsed fonts.
import { Temporal } from '@colla/calendar';
import { exampleSeason } from '@colla/example';
import { type Invoice, issue } from '@colla/invoicing';
import { fonts, type InvoiceReader, invoiceLayout, invoicePdf, type Layout } from '@colla/paper';
import PDFDocument from 'pdfkit';
import { alternately, type Row, timed } from '../measure.ts';

const reader: InvoiceReader = { paper: 'A4', locale: 'en-GB' };
const invoices = exampleInvoices();
const { faces, parsed } = await fonts();
const layouts = invoices.map((invoice) => invoiceLayout(invoice, reader, faces));

const ours = timed(async () => {
  for (const invoice of invoices) await invoicePdf(invoice, reader);
});
const reference = timed(async () => {
  for (const layout of layouts) await bare(layout);
});

const row: Row = {
  id: 'paper-1',
  ours: `${invoices.length} invoices laid out, tagged PDF/A-3b`,
  reference: 'bare pdfkit with the same fonts and words',
  goal: { atMost: 2 },
  rounds: 15,
  prepare: async () => {
    for (let warm = 0; warm < 20; warm += 1) {
      await ours();
      await reference();
    }
  },
  run: alternately(ours, reference),
};

export default row;

function exampleInvoices(): Invoice[] {
  let given = 0;
  const newId = () => `id-${++given}`;
  const now = Temporal.ZonedDateTime.from('2026-11-25T10:00[Europe/Lisbon]');
  return exampleSeason({ newId, now }).invoices.map(({ id, draft, series }, index) =>
    issue(draft, { id, series, ordinal: index + 1 }),
  );
}

async function bare({ pages }: Layout): Promise<Uint8Array> {
  const doc: PDFKit.PDFDocument = new PDFDocument({ size: 'A4', margin: 62, font: '', autoFirstPage: false });
  for (const [name, font] of Object.entries(parsed)) doc.registerFont(name, font as unknown as Uint8Array);
  const chunks: Uint8Array[] = [];
  doc.on('data', (chunk: Uint8Array) => chunks.push(chunk));
  const ended = new Promise((resolve) => doc.on('end', resolve));
  for (const { words } of pages) {
    doc.addPage();
    for (const { face, size, text, x, y } of words)
      doc.font(face, size).text(text, x, y, { lineBreak: false });
  }
  doc.end();
  await ended;
  return Buffer.concat(chunks);
}
