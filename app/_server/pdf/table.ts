import {
  column,
  decorate,
  element,
  inks,
  inStyle,
  makeRoom,
  type Pdf,
  type Structure,
  type TextStyle,
} from './document';

/** Points. */
const GAP = 8;
const PADDING = 3.5;

export interface PdfTable {
  /** Says what the table shows. */
  caption: string;
  head: readonly string[];
  /** The first of each row is its head. */
  rows: readonly (readonly string[])[];
  /** How the columns share the width. */
  shares: readonly number[];
}

/** A table with its heads told as such; on a new page it goes on under the same heads. */
export function table(pdf: Pdf, { caption, head, rows, shares }: PdfTable): void {
  const { doc, root } = pdf;
  const { left, width } = column(doc);
  const columns = columnsOf(doc, shares);
  const headRow: Row = { texts: head, columns, style: 'strong' };
  const whole = addedTo(root, doc.struct('Table'));
  makeRoom(doc, 60);
  whole.add(element(doc, 'Caption', () => void inStyle(doc, 'small').text(caption, left, doc.y, { width })));
  const top = addedTo(whole, doc.struct('THead'));
  drawRow(doc, headRow, (cells) =>
    top.add(
      element(
        doc,
        'TR',
        cells.map((cell) => headCell(doc, 'Column', cell)),
      ),
    ),
  );
  top.end();
  const body = addedTo(whole, doc.struct('TBody'));
  for (const texts of rows) {
    const row: Row = { texts, columns, style: 'text' };
    if (makeRoom(doc, heightOf(doc, row))) drawRow(doc, headRow, (cells) => decorate(doc, () => drawAll(cells)));
    drawRow(doc, row, ([first = nothing, ...others]) =>
      body.add(element(doc, 'TR', [headCell(doc, 'Row', first), ...others.map((cell) => element(doc, 'TD', cell))])),
    );
  }
  body.end();
  whole.end();
  doc.y += 8;
}

interface Row {
  texts: readonly string[];
  columns: readonly { x: number; width: number }[];
  style: TextStyle;
}

type Doc = Pdf['doc'];
type Draw = () => void;

const nothing: Draw = () => undefined;

function addedTo(parent: Structure, child: Structure): Structure {
  parent.add(child);
  return child;
}

function headCell(doc: Doc, scope: 'Column' | 'Row', draw: Draw): Structure {
  return element(doc, 'TH', draw, { scope });
}

function drawAll(cells: readonly Draw[]): void {
  for (const draw of cells) draw();
}

function columnsOf(doc: Doc, shares: readonly number[]): Row['columns'] {
  const { left, width } = column(doc);
  const unit = (width - GAP * (shares.length - 1)) / shares.reduce((sum, share) => sum + share, 0);
  return shares.map((share, index) => {
    const before = shares.slice(0, index).reduce((sum, one) => sum + one, 0);
    return { x: left + before * unit + index * GAP, width: share * unit };
  });
}

function heightOf(doc: Doc, { texts, columns, style }: Row): number {
  inStyle(doc, style);
  const heights = texts.map((text, index) => doc.heightOfString(text, { width: columns[index]?.width ?? 0 }));
  return Math.max(...heights) + 2 * PADDING;
}

/** Hands over what draws the cells, and rules the row off below. */
function drawRow(doc: Doc, row: Row, place: (cells: readonly Draw[]) => void): void {
  const [top, height] = [doc.y, heightOf(doc, row)];
  place(
    row.texts.map((text, index) => () => {
      const { x = 0, width = 0 } = row.columns[index] ?? {};
      inStyle(doc, row.style).text(text, x, top + PADDING, { width });
    }),
  );
  const { left, width } = column(doc);
  const below = top + height;
  decorate(
    doc,
    () =>
      void doc
        .moveTo(left, below)
        .lineTo(left + width, below)
        .lineWidth(0.5)
        .stroke(inks.line),
  );
  doc.y = below;
}
