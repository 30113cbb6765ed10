import { join } from 'node:path';
import PDFDocument from 'pdfkit';

/** The interface's own letters, as files that a PDF can hold. They have Latin letters with all their marks, and Greek ones. */
const FONTS = join(process.cwd(), 'node_modules/@expo-google-fonts/atkinson-hyperlegible-next');
const faces = {
  text: join(FONTS, '400Regular/AtkinsonHyperlegibleNext_400Regular.ttf'),
  strong: join(FONTS, '700Bold/AtkinsonHyperlegibleNext_700Bold.ttf'),
} as const;
export type Face = keyof typeof faces;

/** Points. */
const MARGIN = 54;
const FOOT = 30;

export const inks = { ink: '#1d2733', second: '#55606c', line: '#9aa1a8', hazard: '#a83a08' } as const;

const styles = {
  text: { face: 'text', size: 10.5, ink: inks.ink, after: 6 },
  strong: { face: 'strong', size: 10.5, ink: inks.ink, after: 6 },
  small: { face: 'text', size: 9, ink: inks.second, after: 5 },
  caution: { face: 'strong', size: 10.5, ink: inks.hazard, after: 6 },
} as const satisfies Record<string, { face: Face; size: number; ink: string; after: number }>;
export type TextStyle = keyof typeof styles;

const headings = { 1: { size: 19, before: 0 }, 2: { size: 13, before: 10 }, 3: { size: 11, before: 6 } } as const;

export interface PdfFacts {
  title: string;
  /** Of the words, such as `en`. */
  language: string;
  /** What the file says of when it was made: the same facts make the same bytes. */
  at: Date;
  /** Stands at the foot of every page. `{page}` and `{pages}` are filled in. */
  foot: string;
}

export type Structure = PDFKit.PDFStructureElement;

/** A document that is being written, with what it consists of told to those who do not see it. */
export interface Pdf {
  doc: PDFKit.PDFDocument;
  /** All of it; what is drawn by hand is added to it. */
  root: Structure;
}

/** Begins a tagged PDF on A4, first page open. */
export function beginPdf({ title, language, at }: PdfFacts): Pdf {
  const doc = new PDFDocument({
    size: 'A4',
    margin: MARGIN,
    pdfVersion: '1.7',
    subset: 'PDF/UA' as never,
    tagged: true,
    lang: language,
    displayTitle: true,
    bufferPages: true,
    info: { Title: title, CreationDate: at, ModDate: at, Producer: 'Faultwright', Creator: 'Faultwright' },
  });
  for (const [face, file] of Object.entries(faces)) doc.registerFont(face, file);
  const root = doc.struct('Document');
  doc.addStructure(root);
  return { doc, root };
}

export function heading({ doc, root }: Pdf, level: 1 | 2 | 3, text: string): void {
  const { size, before } = headings[level];
  // Not alone at the foot of a page.
  makeRoom(doc, before + 2 * size + 45);
  doc.y += doc.y > MARGIN ? before : 0;
  const draw = () => void doc.font('strong').fontSize(size).fillColor(inks.ink).text(text, MARGIN, doc.y);
  root.add(element(doc, `H${level}`, draw));
  doc.y += 4;
}

export function paragraph({ doc, root }: Pdf, text: string, style: TextStyle = 'text'): void {
  const { after } = styles[style];
  makeRoom(doc, 2 * styles[style].size);
  root.add(element(doc, 'P', () => void inStyle(doc, style).text(text, MARGIN, doc.y, { lineGap: 1.5 })));
  doc.y += after;
}

export function list({ doc, root }: Pdf, items: readonly string[], style: TextStyle = 'text'): void {
  const list = doc.struct('L');
  root.add(list);
  for (const item of items) {
    makeRoom(doc, 2 * styles[style].size);
    const top = doc.y;
    const label = () => void inStyle(doc, style).text('–', MARGIN, top, { lineBreak: false });
    const body = () => void inStyle(doc, style).text(item, MARGIN + 12, top, { lineGap: 1.5 });
    list.add(element(doc, 'LI', [element(doc, 'Lbl', label), element(doc, 'LBody', body)]));
    doc.y += 2;
  }
  list.end();
  doc.y += styles[style].after - 2;
}

/** A closed part of the structure: with what draws it, or with parts of its own. */
export function element(
  doc: PDFKit.PDFDocument,
  tag: string,
  content: (() => void) | readonly Structure[],
  options: { alt?: string; bbox?: readonly number[]; scope?: 'Row' | 'Column' } = {},
): Structure {
  // The types at hand are older than the library.
  return doc.struct(tag as never, options as never, content as never);
}

/** Something drawn, and what is said of it to those who do not see it. */
export function figure(
  { doc, root }: Pdf,
  { alt, width, height }: { alt: string; width: number; height: number },
  draw: (doc: PDFKit.PDFDocument, x: number, y: number) => void,
): void {
  makeRoom(doc, height);
  const [x, y] = [MARGIN, doc.y];
  root.add(element(doc, 'Figure', () => draw(doc, x, y), { alt, bbox: [x, y, x + width, y + height] }));
  doc.y = y + height + 8;
}

/** Writes the feet and closes the document. */
export async function finishPdf({ doc, root }: Pdf, { foot }: PdfFacts): Promise<Buffer> {
  root.end();
  const { start, count } = doc.bufferedPageRange();
  for (let page = start; page < start + count; page++) {
    doc.switchToPage(page);
    writeFoot(doc, foot.replace('{page}', String(page + 1)).replace('{pages}', String(count)));
  }
  const chunks: Buffer[] = [];
  doc.on('data', (chunk: Buffer) => chunks.push(chunk));
  return new Promise((resolve, reject) => {
    doc.on('end', () => resolve(Buffer.concat(chunks)));
    doc.on('error', reject);
    doc.end();
  });
}

export function inStyle(doc: PDFKit.PDFDocument, style: TextStyle): PDFKit.PDFDocument {
  const { face, size, ink } = styles[style];
  return doc.font(face).fontSize(size).fillColor(ink);
}

/** The left edge, and how wide what is written may be. */
export function column(doc: PDFKit.PDFDocument): { left: number; width: number } {
  return { left: MARGIN, width: doc.page.width - 2 * MARGIN };
}

/** Goes to a new page where so much does not fit on this one. @returns whether it did. */
export function makeRoom(doc: PDFKit.PDFDocument, height: number): boolean {
  if (doc.y + height <= doc.page.height - MARGIN) return false;
  doc.addPage();
  return true;
}

/** Decoration, which nobody need be told of. */
export function decorate(doc: PDFKit.PDFDocument, draw: () => void): void {
  doc.markContent('Artifact', { type: 'Layout' });
  draw();
  doc.endMarkedContent();
}

function writeFoot(doc: PDFKit.PDFDocument, text: string): void {
  const { margins, height } = doc.page;
  const { bottom } = margins;
  // Below the margin, where a line would otherwise open another page.
  margins.bottom = 0;
  doc.markContent('Artifact', { type: 'Pagination', attached: ['Bottom'] });
  inStyle(doc, 'small').text(text, MARGIN, height - FOOT - 9, { lineBreak: false });
  doc.endMarkedContent();
  margins.bottom = bottom;
}
