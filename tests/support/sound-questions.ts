import { expect } from 'vitest';
import { type Said, sayer } from '@/app/_server/questions/say';
import { type Answer, type AnswerForm, fitsForm, type Key } from '@/lib/questions/answer';
import type { Line } from '@/lib/questions/line';
import { markAnswer } from '@/lib/questions/mark';
import type { GeneratedQuestion, QuestionKindId } from '@/lib/questions/question';
import { kindOf, questionFromSeed } from '@/lib/questions/question-from-seed';
import { catalogue } from './bench-rig';
import { formsOfKinds } from './forms-of-kinds';

/** Seeds that every kind is drawn with. */
export const SEEDS = 5000;
/** Every so many is also put into words and drawn twice. */
const CLOSER = 25;

/**
 * Draws a kind over many seeds and expects of every question what holds for all kinds: a key that its form can give, worth
 * all marks; no other option worth anything; distractors that read otherwise than the key and lie beyond its tolerance.
 *
 * @param also  What holds for this kind, worked out another way than the generator does.
 */
export function expectSoundQuestions(
  kind: QuestionKindId,
  also: (question: GeneratedQuestion, seed: number) => void,
  seeds = SEEDS,
): void {
  const { kind: made, content } = kindOf(kind, catalogue);
  const said = sayer(content, catalogue);
  const forms = new Set<AnswerForm['form']>();
  for (let seed = 0; seed < seeds; seed++) {
    // Every other seed has a topic, each of them in turn.
    const topic = made.topics[(seed / 2) % made.topics.length];
    const spec = { kind, seed: `sound-${seed}`, ...(seed % 2 === 0 && topic !== undefined && { topic }) };
    const question = questionFromSeed(spec, catalogue);
    forms.add(question.answer.form);
    try {
      expectSoundKey(question);
      if (spec.topic) expect(question.topics).toContain(spec.topic);
      for (const id of question.topics) expect(catalogue.topics.has(id), id).toBe(true);
      expect(question.guessFloor).toBeGreaterThanOrEqual(0);
      expect(question.guessFloor).toBeLessThan(0.6);
      expect(question.explanation.length).toBeGreaterThan(0);
      if (seed % CLOSER === 0) {
        expect(JSON.stringify(questionFromSeed(spec, catalogue))).toBe(JSON.stringify(question));
        expectWords(question, said);
      }
      also(question, seed);
    } catch (error) {
      throw new Error(`${kind}, seed ${spec.seed}, topic ${spec.topic ?? 'any'}: ${(error as Error).message}`, {
        cause: error,
      });
    }
  }
  expect([...forms].sort()).toEqual([...formsOfKinds[kind]].sort());
}

/** The answer that a key asks for. */
export function rightAnswer(form: AnswerForm, key: Key): Answer {
  switch (key.form) {
    case 'choice':
      return { form: 'choice', option: key.right[0] ?? '' };
    case 'several':
      return { form: 'several', options: [...key.right] };
    case 'order':
      return { form: 'order', order: [...key.order] };
    case 'point':
      return { form: 'point', target: key.right[0] ?? '' };
    case 'grid':
      return { form: 'grid', cells: { ...key.cells } };
    case 'stretch':
      return { form: 'stretch', stretch: key.right[0] ?? '' };
    case 'spot':
      return { form: 'spot', shape: key.right[0] ?? '' };
    case 'words':
      return { form: 'words', text: key.model };
    case 'numbers': {
      const parts = form.form === 'numbers' ? form.parts : [];
      const given = parts.map(({ id, units }) => {
        const value = key.parts[id]?.value ?? Number.NaN;
        return [id, units[0] === undefined ? { value } : { value, unit: units[0] }];
      });
      return { form: 'numbers', parts: Object.fromEntries(given) };
    }
  }
}

function expectSoundKey(question: GeneratedQuestion): void {
  const { answer: form, key } = question;
  expect(key.form).toBe(form.form);
  const right = rightAnswer(form, key);
  expect(fitsForm(form, right)).toBe(true);
  expect(markAnswer(question, right)).toMatchObject({ credit: 1, score: question.steps });
  if (form.form === 'choice' && key.form === 'choice') {
    expect(form.options.length).toBeGreaterThan(key.right.length);
    for (const { id } of form.options)
      if (!key.right.includes(id)) expect(markAnswer(question, { form: 'choice', option: id }).credit).toBe(0);
  }
  if (key.form === 'several') {
    const everything = form.form === 'several' ? form.options.map(({ id }) => id) : [];
    expect(everything.length).toBeGreaterThan(key.right.length);
    expect(markAnswer(question, { form: 'several', options: everything }).credit).toBeLessThan(1);
  }
  if (key.form === 'numbers')
    for (const { value, tolerance, slips } of Object.values(key.parts)) {
      expect(tolerance).toBeGreaterThan(0);
      for (const slip of slips) expect(Math.abs(slip.value - value)).toBeGreaterThan(2 * tolerance);
    }
}

function expectWords(question: GeneratedQuestion, say: (line: Line) => Said): void {
  const text = (line: Line) => {
    const said = say(line);
    const words = 'text' in said ? said.text : said.markdown;
    expect(words.trim()).not.toBe('');
    // What the words library makes of a missing value or message.
    expect(words).not.toMatch(/undefined|NaN|\{|\}/);
    return words;
  };
  for (const line of [...question.stem, ...question.explanation]) text(line);
  const { answer: form, key } = question;
  if ('options' in form)
    expectDifferent(form.options.map((option) => text(option.line) + JSON.stringify(option.figure)));
  if (form.form === 'order') expectDifferent(form.items.map(({ line }) => text(line)));
  if (form.form === 'grid') expectDifferent([...form.rows, ...form.columns].map(({ line }) => text(line)));
  if (form.form === 'numbers') form.parts.map(({ line }) => text(line));
  if (form.form === 'point') form.targets.map(({ line }) => text(line));
  if ('because' in key) Object.values(key.because ?? {}).map(text);
  if (key.form === 'numbers') Object.values(key.parts).map(({ slips }) => slips.map(({ line }) => text(line)));
}

function expectDifferent(words: readonly string[]): void {
  expect(new Set(words).size, words.join(' | ')).toBe(words.length);
}
