import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readItem } from '@/lib/interop/qti/read-item';
import { readXml } from '@/lib/interop/qti/read-xml';
import { writeItem } from '@/lib/interop/qti/write-item';
import { readQuestionsCsv } from '@/lib/interop/questions-csv/read-questions-csv';
import { writeQuestionsCsv } from '@/lib/interop/questions-csv/write-questions-csv';
import type { WrittenBody, WrittenQuestion } from '@/lib/questions/written/written-question';

/** Signs that files of all kinds stumble over, and any others. */
const text = (most: number) =>
  fc
    .array(
      fc.oneof(
        fc.constantFrom(
          '=',
          '+',
          '-',
          '@',
          '&',
          '<',
          '>',
          ']]>',
          '"',
          ';',
          ',',
          '|',
          '\n',
          '\t',
          "'",
          'é',
          '\u{1F527}',
        ),
        fc.string({ maxLength: 4 }),
      ),
      { minLength: 1, maxLength: most },
    )
    .map((parts) => parts.join('').trim())
    .filter((joined) => joined !== '' && !joined.includes('\u0000') && !joined.includes('\r'));
/** Words that Markdown leaves as they are. */
const plain = fc.stringMatching(/^[a-z][a-z0-9 ,.=%°é/]{0,20}[a-z]$/).filter((word) => !/\s{2}|\d\./.test(word));

const ids = ['one', 'two', '3rd', 'd-4'];
const optionsOf = (words: fc.Arbitrary<string>) =>
  fc
    .uniqueArray(words, { minLength: 2, maxLength: 4 })
    .chain((texts) =>
      fc.tuple(
        ...texts.map((one, index) =>
          fc.record({
            id: fc.constant(ids[index] ?? ''),
            text: fc.constant(one),
            because: fc.option(words, { nil: undefined }),
          }),
        ),
      ),
    )
    .map((options) =>
      options.map(({ because, ...option }) => (because === undefined ? option : { ...option, because })),
    );

function bodies(words: fc.Arbitrary<string>): fc.Arbitrary<WrittenBody> {
  const choice = fc
    .tuple(fc.boolean(), optionsOf(words))
    .map(([shuffle, options]) => ({ form: 'choice' as const, shuffle, options, right: options[0]?.id ?? '' }));
  const several = fc
    .tuple(fc.boolean(), optionsOf(words))
    .map(([shuffle, options]) => ({
      form: 'several' as const,
      shuffle,
      options,
      right: options.slice(0, 2).map(({ id }) => id),
    }));
  const order = optionsOf(words).map((items) => ({ form: 'order' as const, items }));
  return fc.oneof(choice, several, order) as fc.Arbitrary<WrittenBody>;
}

const questionsOf = (words: fc.Arbitrary<string>): fc.Arbitrary<WrittenQuestion> =>
  fc.record({
    title: words,
    stem: words,
    topics: fc.constantFrom(['filtration'], ['filtration', 'fuel-quality']),
    difficulty: fc.integer({ min: -40, max: 40 }).map((tenths) => tenths / 10 + 0),
    seconds: fc.integer({ min: 10, max: 3600 }),
    explanation: words,
    body: bodies(words),
  }) as fc.Arbitrary<WrittenQuestion>;

const runs = { numRuns: 300, seed: 20_261_126 };

test('questions written as CSV come back as they were, whatever signs they hold', () => {
  fc.assert(
    fc.property(fc.array(questionsOf(text(12)), { minLength: 1, maxLength: 4 }), (questions) => {
      const { csv, left } = writeQuestionsCsv(questions.map((question, index) => ({ id: String(index), question })));
      expect(left).toEqual([]);
      const { rows } = readQuestionsCsv(csv);
      expect(rows.map((row) => ('question' in row ? row.question : row))).toEqual(questions);
    }),
    runs,
  );
});

test('what an item says of options and key is read back from the item alone', () => {
  fc.assert(
    fc.property(questionsOf(plain), (question) => {
      const item = writeItem('q-1', question);
      const root = readXml(new TextEncoder().encode(item?.xml ?? ''), 'one.xml');
      if ('refused' in root) throw new Error(root.refused);
      const read = readItem(root, () => undefined, 'filtration');
      if ('refused' in read) throw new Error(`${read.refused} ${read.what}`);
      const { title, stem, explanation, body } = read.question;
      expect({ title, stem, explanation, body }).toEqual({
        title: question.title,
        stem: question.stem,
        explanation: question.explanation,
        body: question.body,
      });
    }),
    runs,
  );
});
