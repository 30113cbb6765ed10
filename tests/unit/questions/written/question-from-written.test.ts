import { describe, expect, test } from 'vitest';
import { fitsForm } from '@/lib/questions/answer';
import { markAnswer } from '@/lib/questions/mark';
import { questionFromWritten } from '@/lib/questions/written/question-from-written';
import { unknownIn } from '@/lib/questions/written/unknown-in';
import { writtenForms } from '@/lib/questions/written/written-forms';
import { writtenQuestionSchema } from '@/lib/questions/written/written-question';
import { catalogue } from '../../../support/bench-rig';
import { aWrittenQuestion } from '../../../support/written-questions';

const seeds = Array.from({ length: 200 }, (_, n) => `seed ${n}`);

function made(written: ReturnType<typeof aWrittenQuestion>, seed = 'seed') {
  return questionFromWritten(written, seed, catalogue);
}

test.each(writtenForms)('a written %s is valid, and the same for the same seed', (form) => {
  const written = aWrittenQuestion(form);
  expect(writtenQuestionSchema.parse(written)).toEqual(written);
  expect(unknownIn(written, catalogue)).toEqual([]);
  expect(made(written)).toEqual(made(written));
  expect(made(written)).toMatchObject({ topics: ['filtration'], difficulty: 0.5, seconds: 60, features: {} });
});

describe('one of several options', () => {
  test('stands at every place, and the key and what speaks against others go with it', () => {
    const places = new Set<string>();
    for (const seed of seeds) {
      const { answer, key } = made(aWrittenQuestion(), seed);
      if (answer.form !== 'choice' || key.form !== 'choice') throw new Error(answer.form);
      expect(answer.options.map(({ id }) => id)).toEqual(['a', 'b', 'c']);
      const right = answer.options.find(({ id }) => key.right.includes(id));
      expect(right?.line).toEqual({ markdown: 'A dial gauge, 0–30 psi' });
      const large = answer.options.find(({ line }) => 'markdown' in line && line.markdown.includes('0–300'));
      expect(Object.keys(key.because ?? {})).toEqual([large?.id]);
      places.add(String(right?.id));
    }
    expect(places.size).toBe(3);
  });

  test('stands where it was written where nothing is shuffled', () => {
    const written = aWrittenQuestion('choice', { body: { shuffle: false } });
    for (const seed of seeds) expect(made(written, seed).key).toMatchObject({ right: ['a'] });
  });

  test('is guessed one time in three', () => {
    expect(made(aWrittenQuestion()).guessFloor).toBeCloseTo(1 / 3, 12);
  });
});

test('several right ones are marked one by one', () => {
  const question = made(aWrittenQuestion('several'));
  if (question.key.form !== 'several') throw new Error(question.key.form);
  const { right } = question.key;
  expect(right).toHaveLength(2);
  expect(markAnswer(question, { form: 'several', options: [...right] }).score).toBe(2);
  expect(markAnswer(question, { form: 'several', options: right.slice(0, 1) }).score).toBe(1);
});

test('what is to be put in order never lies in order, and the right order earns all', () => {
  for (const seed of seeds) {
    const question = made(aWrittenQuestion('order'), seed);
    if (question.key.form !== 'order' || question.answer.form !== 'order') throw new Error(question.key.form);
    const shown = question.answer.items.map(({ id }) => id);
    expect(shown).toEqual(['a', 'b', 'c']);
    expect(question.key.order).not.toEqual(shown);
    expect(markAnswer(question, { form: 'order', order: [...question.key.order] }).credit).toBe(1);
  }
});

describe('numbers', () => {
  test('are drawn on their grid, stand in the words, and make the key', () => {
    const drawn = new Set<string>();
    for (const seed of seeds) {
      const question = made(aWrittenQuestion('numbers'), seed);
      const [stem] = question.stem;
      const [, before, after] =
        /^Before (\d+) kPa, after (\d+) kPa/.exec(stem && 'markdown' in stem ? stem.markdown : '') ?? [];
      expect(Number(before) % 10).toBe(0);
      expect(Number(before)).toBeGreaterThanOrEqual(400);
      expect(Number(before)).toBeLessThanOrEqual(500);
      const drop = Number(before) - Number(after);
      expect(question.explanation).toEqual([{ markdown: `${before} − ${after} = ${drop} kPa.` }]);
      const answer = { form: 'numbers' as const, parts: { a: { value: drop, unit: 'kPa' as const } } };
      expect(fitsForm(question.answer, answer)).toBe(true);
      expect(markAnswer(question, answer).credit).toBe(1);
      drawn.add(`${before} ${after}`);
    }
    expect(drawn.size).toBeGreaterThan(100);
  });

  test('say nothing of the key beforehand', () => {
    const written = aWrittenQuestion('numbers', { stem: '{before} {after} {answer}' });
    expect(made(written).stem[0]).toMatchObject({ markdown: expect.stringMatching(/\{answer\}$/) });
    expect(writtenQuestionSchema.safeParse(written).success).toBe(false);
  });

  test('reach both ends of their range, without the dust of binary fractions', () => {
    const written = aWrittenQuestion('numbers', {
      stem: '{x}',
      explanation: '{answer}',
      body: { variables: [{ name: 'x', from: 0.1, to: 0.5, step: 0.1 }], formula: 'x', decimals: 1 },
    });
    const stems = new Set(seeds.map((seed) => JSON.stringify(made(written, seed).stem)));
    expect([...stems].sort()).toEqual(['0.1', '0.2', '0.3', '0.4', '0.5'].map((x) => `[{"markdown":"${x}"}]`));
  });

  test('are right as they are shown and as they were before rounding', () => {
    const written = aWrittenQuestion('numbers', {
      stem: 'A third of {x}?',
      explanation: '{answer}',
      body: {
        variables: [{ name: 'x', from: 2, to: 2, step: 1 }],
        formula: 'x / 3',
        decimals: 1,
        tolerance: { kind: 'percent', amount: 0.1 },
      },
    });
    const question = made(written);
    const credit = (value: number) =>
      markAnswer(question, { form: 'numbers', parts: { a: { value, unit: 'kPa' } } }).credit;
    expect([0.7, 2 / 3, 0.6, 0.76].map(credit)).toEqual([1, 1, 0, 0]);
  });
});

test('a part is pointed at among all that are drawn', () => {
  const { answer, key, guessFloor } = made(aWrittenQuestion('point'));
  if (answer.form !== 'point' || key.form !== 'point') throw new Error(answer.form);
  const right = answer.targets.filter(({ id }) => key.right.includes(id));
  expect(right).toMatchObject([{ what: 'element', of: 'gear-pump' }]);
  expect(guessFloor).toBeCloseTo(1 / answer.targets.length, 12);
  expect(answer.targets.length).toBeGreaterThan(10);
});

test('an area of a picture keeps its place and its key, whatever its id', () => {
  for (const seed of seeds) {
    const { answer, key } = made(aWrittenQuestion('spot'), seed);
    if (answer.form !== 'spot' || key.form !== 'spot') throw new Error(answer.form);
    const right = answer.shapes.filter(({ id }) => key.right.includes(id));
    expect(right).toMatchObject([{ line: { markdown: 'The fitting in the middle' }, left: 0.4, right: 0.6 }]);
    expect(answer.shapes.map(({ id }) => id)).toEqual(['a', 'b']);
  }
});

test('free text waits for a person, and cannot be guessed', () => {
  const question = made(aWrittenQuestion('words'));
  expect(question).toMatchObject({ steps: 3, guessFloor: 0 });
  expect(markAnswer(question, { form: 'words', text: 'Air.' }).credit).toBeNull();
});
