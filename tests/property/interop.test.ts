import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readItem } from '@/lib/interop/qti/read-item';
import { readPackage } from '@/lib/interop/qti/read-package';
import { readXml } from '@/lib/interop/qti/read-xml';
import { writeItem } from '@/lib/interop/qti/write-item';
import { readQuestionsCsv } from '@/lib/interop/questions-csv/read-questions-csv';
import { cannotBeRow, questionsCsvHead, questionsCsvLines } from '@/lib/interop/questions-csv/write-questions-csv';
import { guarded, unguarded } from '@/lib/interop/spreadsheet-text';
import { evaluateFormula, parseFormula } from '@/lib/questions/written/formula';
import type { WrittenBody, WrittenQuestion } from '@/lib/questions/written/written-question';
import { anyFormula, anyText, anyWrittenQuestion } from '../support/any-written-question';
import { packed } from '../support/packages';
import { aWrittenQuestion } from '../support/written-questions';

const runs = { numRuns: 300, seed: 20_261_126 };
const topics = new Set(['filtration', 'fuel-quality']);

/** As a picture is taken: under another id. */
async function takePicture(bytes: Uint8Array) {
  const [width = 0, height = 0] = new Uint16Array(bytes.buffer, bytes.byteOffset, 2);
  return { id: 'f'.repeat(20), width, height };
}

/** Its size, for `takePicture` to find again. */
function picturesOf(question: WrittenQuestion) {
  const { picture, body } = question;
  const all = [picture, body.form === 'spot' ? body.picture : undefined].filter((one) => one !== undefined);
  return async (id: string) => {
    const found = all.find((one) => one.id === id);
    return found && new Uint8Array(new Uint16Array([found.width, found.height]).buffer);
  };
}

function withNewPictures(question: WrittenQuestion): WrittenQuestion {
  const { picture, body } = question;
  const id = 'f'.repeat(20);
  return {
    ...question,
    ...(picture && { picture: { ...picture, id } }),
    body: body.form === 'spot' ? { ...body, picture: { ...body.picture, id } } : body,
  };
}

test('a question comes back out of a package as it went in, whatever form and signs it has', async () => {
  await fc.assert(
    fc.asyncProperty(anyWrittenQuestion, async (question) => {
      const bytes = await packed([question], picturesOf(question));
      const back = await readPackage(bytes, { topic: 'filtration', topics, takePicture });
      if ('refused' in back) throw new Error(`${back.refused} ${back.file} ${back.what}`);
      expect(back.items).toMatchObject([{ warnings: [] }]);
      expect(back.items.map((item) => ('question' in item ? item.question : item))).toEqual([
        withNewPictures(question),
      ]);
    }),
    runs,
  );
});

test('questions come back out of a CSV file as they went in, but for what has a picture', () => {
  fc.assert(
    fc.property(fc.array(anyWrittenQuestion, { minLength: 1, maxLength: 4 }), (questions) => {
      const kept = questions.filter((question) => !cannotBeRow(question));
      fc.pre(kept.length > 0);
      const read = readQuestionsCsv(questionsCsvHead() + questionsCsvLines(questions));
      expect('rows' in read && read.rows.map((row) => ('question' in row ? row.question : row))).toEqual(kept);
    }),
    runs,
  );
});

test('the line of a row in a CSV file is the one on which it begins', () => {
  fc.assert(
    fc.property(fc.array(anyWrittenQuestion, { minLength: 1, maxLength: 4 }), (questions) => {
      fc.pre(questions.some((question) => !cannotBeRow(question)));
      const csv = questionsCsvHead() + questionsCsvLines(questions);
      const read = readQuestionsCsv(csv);
      const lines = csv.split(/\r\n|\r|\n/);
      if (!('rows' in read)) throw new Error(read.problem);
      for (const { line } of read.rows) expect(lines[line - 1]?.startsWith('"')).toBe(true);
    }),
    { ...runs, numRuns: 100 },
  );
});

test('a guard is taken off again wherever it was put, and what a spreadsheet would compute has one', () => {
  fc.assert(
    fc.property(anyText(), (text) => {
      expect(unguarded(guarded(text))).toBe(text);
      expect(guarded(text)).not.toMatch(/^[\s]*[=+\-@＝＋－＠]/);
    }),
    runs,
  );
});

/** Words that Markdown leaves as they are. */
const plain = fc.stringMatching(/^[a-z][a-z0-9 ,.%°é/]{0,20}[a-z]$/).filter((word) => !/\s{2}|\d\./.test(word));

const option = (id: string) => fc.record({ id: fc.constant(id), text: plain, because: plain });
const options = fc
  .tuple(option('one'), option('two'), option('3rd'))
  .filter((all) => new Set(all.map(({ text }) => text)).size === 3);
const bodies: fc.Arbitrary<WrittenBody> = fc.oneof(
  fc
    .tuple(fc.boolean(), options)
    .map(([shuffle, all]) => ({ form: 'choice' as const, shuffle, options: all, right: '3rd' })),
  fc
    .tuple(fc.boolean(), options)
    .map(([shuffle, all]) => ({ form: 'several' as const, shuffle, options: all, right: ['one', '3rd'] })),
  options.map((all) => ({ form: 'order' as const, items: all.map(({ id, text }) => ({ id, text })) })),
  fc
    .record({
      most: fc.integer({ min: 50, max: 4000 }),
      model: plain,
      guidance: plain,
      steps: fc.integer({ min: 1, max: 10 }),
    })
    .map((body) => ({ form: 'words' as const, ...body })),
);

function readAlone(question: WrittenQuestion) {
  const root = readXml(new TextEncoder().encode(writeItem('q-1', question)), 'one.xml');
  if ('refused' in root) throw new Error(root.refused);
  const read = readItem(root, () => undefined, { topic: 'filtration', metadata: { topics: [] } });
  if ('refused' in read) throw new Error(`${read.refused} ${read.what}`);
  return read;
}

test('what an item says in the standard’s own words is read back without our own file', () => {
  fc.assert(
    fc.property(plain, plain, plain, bodies, (title, stem, explanation, body) => {
      const { question, warnings } = readAlone({ ...aWrittenQuestion(), title, stem, explanation, body });
      expect(question).toMatchObject({ title, stem, explanation, body });
      expect(warnings.filter((warning) => !warning.endsWith('-assumed'))).toEqual([]);
    }),
    runs,
  );
});

const names = ['before', 'after'];

test('a formula means the same once it has been an expression of the standard', () => {
  fc.assert(
    fc.property(
      anyFormula(names),
      fc.double({ min: -50, max: 50, noNaN: true }),
      fc.double({ min: 0.1, max: 9, noNaN: true }),
      (formula, before, after) => {
        const parsed = parseFormula(formula, names);
        fc.pre('formula' in parsed);
        const question = aWrittenQuestion('numbers', { body: { formula } });
        const { body } = readAlone(question).question;
        if (body.form !== 'numbers' || !('formula' in parsed)) throw new Error('no numbers');
        expect(body.variables).toEqual(question.body.form === 'numbers' && question.body.variables);
        const again = parseFormula(body.formula, names);
        if (!('formula' in again)) throw new Error(`${body.formula}: ${again.fault}`);
        const [value, other] = [parsed, again].map((one) => evaluateFormula(one.formula, { before, after }));
        if (value === undefined || other === undefined) expect(other).toBe(value);
        else expect(Math.abs(value - other)).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(value)));
      },
    ),
    runs,
  );
});
