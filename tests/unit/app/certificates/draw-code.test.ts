import jsQR from 'jsqr';
import PDFDocument from 'pdfkit';
import { expect, test } from 'vitest';
import { drawCode } from '@/app/_server/certificates/draw-code';

const SIZE = 400;
const ADDRESS = 'https://certificates.gullrock.example/verify/3f9c2d7a10b84e65f7aa';

/** What is drawn, as a telephone sees it: black where the page has a square. */
async function seen(text: string): Promise<Uint8ClampedArray> {
  const doc = new PDFDocument({ size: [SIZE, SIZE], margin: 0, compress: false });
  const chunks: Buffer[] = [];
  doc.on('data', (chunk: Buffer) => chunks.push(chunk));
  const ended = new Promise((resolve) => doc.on('end', resolve));
  drawCode(doc, text, { left: 0, top: 0, size: SIZE });
  doc.end();
  await ended;
  const squares = [
    ...Buffer.concat(chunks)
      .toString('latin1')
      .matchAll(/([\d.]+) ([\d.]+) ([\d.]+) ([\d.]+) re/g),
  ];
  const pixels = new Uint8ClampedArray(SIZE * SIZE * 4).fill(255);
  for (const [left = 0, top = 0, width = 0, height = 0] of squares.map((square) => square.slice(1).map(Number))) {
    for (let y = Math.round(top); y < Math.round(top + height); y++)
      for (let x = Math.round(left); x < Math.round(left + width); x++)
        pixels.fill(0, (y * SIZE + x) * 4, (y * SIZE + x) * 4 + 3);
  }
  return pixels;
}

test('the code on the paper is read back as the address', async () => {
  expect(jsQR(await seen(ADDRESS), SIZE, SIZE)?.data).toBe(ADDRESS);
});
