import { create } from 'qrcode';

/** Modules of quiet ground around a code. @source ISO/IEC 18004, on the quiet zone. */
const QUIET = 4;

/** Draws a QR code as squares and not as a picture, so that it stays sharp at any size. All in points. */
export function drawCode(
  doc: PDFKit.PDFDocument,
  text: string,
  { left, top, size }: { left: number; top: number; size: number },
): void {
  const { modules } = create(text, { errorCorrectionLevel: 'M' });
  const unit = size / (modules.size + 2 * QUIET);
  for (let row = 0; row < modules.size; row++) {
    for (let column = 0; column < modules.size; column++) {
      if (modules.get(row, column)) doc.rect(left + (column + QUIET) * unit, top + (row + QUIET) * unit, unit, unit);
    }
  }
  doc.fill('#000000');
}
