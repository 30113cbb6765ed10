import { beforeAll, expect, test } from 'vitest';
import { beginPdf, figure, finishPdf, heading, list, type PdfFacts, paragraph } from '@/app/_server/pdf/document';
import { table } from '@/app/_server/pdf/table';
import { type ReadPdf, readPdf, withRole } from '../../support/read-pdf';

const facts: PdfFacts = {
  title: 'Report of Łucja Żuk',
  language: 'en',
  at: new Date(Date.UTC(2026, 10, 27)),
  foot: 'Page {page} of {pages}',
};

function written({ rows = 3, at = facts.at } = {}): Promise<Buffer> {
  const pdf = beginPdf({ ...facts, at });
  heading(pdf, 1, facts.title);
  paragraph(pdf, 'The maker’s procedure comes first.', 'caution');
  list(pdf, ['one', 'two']);
  const lines = Array.from({ length: rows }, (_, index) => [`Topic ${index}`, 'ready ≥ 0.90']);
  table(pdf, { caption: 'Topics', head: ['Topic', 'Decision'], rows: lines, shares: [2, 1] });
  figure(pdf, { alt: 'A square', width: 20, height: 20 }, (doc, x, y) => doc.rect(x, y, 20, 20).fill('#000'));
  return finishPdf(pdf, facts);
}

let short: ReadPdf;
let long: ReadPdf;
beforeAll(async () => {
  [short, long] = [await readPdf(await written()), await readPdf(await written({ rows: 90 }))];
});

test('a document says what it is called, in which language, and that it is tagged', async () => {
  expect(short).toMatchObject({ title: facts.title, language: 'en', isTagged: true });
  expect((await written()).toString('latin1')).toMatch(/\/DisplayDocTitle true/);
});

test('heads, lists, tables and pictures are told as what they are', () => {
  const texts = (role: string) => withRole(short.told, role).map(({ text }) => text.trim());
  expect(texts('H1')).toEqual([facts.title]);
  expect(texts('P')).toEqual(['The maker’s procedure comes first.']);
  expect(texts('LBody')).toEqual(['one', 'two']);
  expect(texts('Caption')).toEqual(['Topics']);
  expect(texts('TH')).toEqual(['Topic', 'Decision', 'Topic 0', 'Topic 1', 'Topic 2']);
  expect(texts('TD')).toEqual(['ready ≥ 0.90', 'ready ≥ 0.90', 'ready ≥ 0.90']);
  expect(withRole(short.told, 'Figure').map(({ alt }) => alt)).toEqual(['A square']);
});

test('a long table goes on under its heads, which are told once, on pages with numbers', () => {
  expect(long.pages).toBeGreaterThan(2);
  expect(withRole(long.told, 'TD')).toHaveLength(90);
  expect(long.text.match(/Decision/g)).toHaveLength(1);
  expect(long.untold.match(/Decision/g)).toHaveLength(long.pages - 1);
  for (let page = 1; page <= long.pages; page++) expect(long.untold).toContain(`Page ${page} of ${long.pages}`);
});

test('the same facts make the same bytes, another date others', async () => {
  const [one, other] = [await written(), await written()];
  expect(one.equals(other)).toBe(true);
  expect((await written({ at: new Date(0) })).equals(one)).toBe(false);
});
