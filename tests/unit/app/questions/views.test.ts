import { describe, expect, test } from 'vitest';
import { markedView } from '@/app/_server/questions/marked-view';
import { viewOf } from '@/app/_server/questions/question-view';
import { keyNumber } from '@/app/_ui/questions/number-words';
import messages from '@/content/messages/en.json' with { type: 'json' };
import type { Answer, AnswerForm, Key } from '@/lib/questions/answer';
import { kinds } from '@/lib/questions/kinds';
import type { Line } from '@/lib/questions/line';
import { markAnswer } from '@/lib/questions/mark';
import type { QuestionBody } from '@/lib/questions/question';
import { kindOf, questionFromSeed } from '@/lib/questions/question-from-seed';
import { catalogue } from '../../../support/bench-rig';
import { rightAnswer } from '../../../support/sound-questions';

const SEEDS = 3;
const context = { content: undefined, catalogue, units: 'kpa-c' } as const;

function says(markdown: string): Line {
  return { markdown };
}

function items(...ids: string[]) {
  return ids.map((id) => ({ id, line: says(id) }));
}

function body(answer: AnswerForm, key: Key, more: Partial<QuestionBody> = {}): QuestionBody {
  const rest = { topics: ['filtration'], difficulty: 0, features: {}, guessFloor: 0, steps: 4, seconds: 30 };
  return { stem: [says('stem')], answer, key, explanation: [says('because of THE-KEY')], ...rest, ...more };
}

describe.each([...kinds.keys()])('questions of kind %s', (kind) => {
  const { content } = kindOf(kind, catalogue);
  const seen = { content, catalogue, units: 'psi-f' } as const;

  test('are shown and, once answered, marked', () => {
    for (let seed = 0; seed < SEEDS; seed++) {
      const question = questionFromSeed({ kind, seed: `view-${seed}` }, catalogue);
      const view = viewOf(question, seen);
      expect(view.answer.form).toBe(question.answer.form);
      const answer = rightAnswer(question.answer, question.key);
      const marked = markedView(question, answer, markAnswer(question, answer), seen);
      expect(marked.outcome).toEqual({ is: 'right' });
      expect(marked.explanation.length).toBeGreaterThan(0);
    }
  });
});

test.each(['spot-hazard', 'which-tool', 'put-in-order'] as const)(
  '%s has its cautions with the answer alone',
  (kind) => {
    const seen = { content: kindOf(kind, catalogue).content, catalogue, units: 'psi-f' } as const;
    const topic = 'safe-working-and-isolation';
    for (let seed = 0; seed < 40; seed++) {
      const question = questionFromSeed({ kind, seed: `cautions-${seed}`, topic }, catalogue);
      const open = viewOf(question, seen);
      expect(open.cautions).toEqual([]);
      for (const sentence of Object.values(messages.cautions)) expect(JSON.stringify(open)).not.toContain(sentence);
      const answer = rightAnswer(question.answer, question.key);
      const marked = markedView(question, answer, markAnswer(question, answer), seen);
      expect(marked.view.cautions.length).toBeGreaterThan(0);
      for (const id of marked.view.cautions) expect(messages.cautions).toHaveProperty(id);
    }
  },
);

test('a view holds nothing of the key, though the whole question was handed in', () => {
  const answer: AnswerForm = { form: 'numbers', parts: [{ id: 'drop', line: says('Drop'), units: ['kPa'] }] };
  const key: Key = {
    form: 'numbers',
    parts: { drop: { value: 123.25, tolerance: 0.75, slips: [{ value: 9.5, line: says('A-SLIP') }] } },
  };
  const text = JSON.stringify(viewOf(body(answer, key), context));
  for (const secret of ['123.25', '0.75', 'A-SLIP', 'THE-KEY', 'guessFloor', 'difficulty', 'steps'])
    expect(text).not.toContain(secret);
});

const choice: AnswerForm = { form: 'choice', options: items('a', 'b', 'c') };
const key: Key = { form: 'choice', right: ['a'], because: { b: says('not b'), c: says('not c') } };

test.each<[Answer | null, string]>([
  [{ form: 'choice', option: 'a' }, 'right'],
  [{ form: 'choice', option: 'b' }, 'wrong'],
  [null, 'unanswered'],
])('an answer %j stands %s', (answer, is) => {
  const question = body(choice, key);
  const mark = answer ? markAnswer(question, answer) : { credit: 0, score: 0, notes: [] };
  const marked = markedView(question, answer, mark, context);
  expect(marked.outcome).toEqual({ is });
  expect(marked.answer).toMatchObject({
    options: [
      { id: 'a', chosen: is === 'right', isRight: true },
      { id: 'b', chosen: is === 'wrong', isRight: false, because: { markdown: 'not b' } },
      { id: 'c', chosen: false, isRight: false, because: { markdown: 'not c' } },
    ],
  });
});

test('some of the marks are said as so many of so many, and free text waits for a person', () => {
  const question = body({ form: 'order', items: items('a', 'b', 'c') }, { form: 'order', order: ['a', 'b', 'c'] });
  const answer: Answer = { form: 'order', order: ['b', 'a', 'c'] };
  const marked = markedView(question, answer, markAnswer(question, answer), context);
  expect(marked.outcome).toEqual({ is: 'partly', score: 2, steps: 4 });
  expect(marked.answer).toMatchObject({ given: [{ id: 'b', place: 2 }, { place: 1 }, { place: 3 }] });
  const text = body({ form: 'words', most: 50 }, { form: 'words', model: 'so', guidance: 'FOR-THE-MARKER' });
  const waiting = markedView(text, { form: 'words', text: 'x' }, { credit: null, score: null, notes: [] }, context);
  expect(waiting.outcome).toEqual({ is: 'waiting' });
  expect(JSON.stringify(waiting)).not.toContain('FOR-THE-MARKER');
});

test('an area of a picture keeps its edges when it is marked', () => {
  const area = { left: 0.1, top: 0.2, right: 0.3, bottom: 0.4 };
  const shapes = [{ id: 'x', line: says('a screw'), ...area }];
  const form: AnswerForm = { form: 'spot', picture: '0', width: 9, height: 9, alt: 'a head', shapes };
  const question = body(form, { form: 'spot', right: ['x'] });
  const answer: Answer = { form: 'spot', shape: 'x' };
  const marked = markedView(question, answer, markAnswer(question, answer), context);
  expect(marked.answer).toMatchObject({ shapes: [{ ...area, chosen: true, isRight: true }] });
});

test('a reading stands with its limit and verdict, unless it was asked before there were any', () => {
  const spec = { kind: 'what-is-left', seed: 'judged' } as const;
  const question = questionFromSeed(spec, catalogue);
  const seen = { content: kindOf('what-is-left', catalogue).content, catalogue, units: 'psi-f' } as const;
  const { figure } = viewOf(question, seen);
  if (figure?.figure !== 'readings' || question.figure?.figure !== 'readings') throw new Error('No readings');
  const { readings } = question.figure;
  expect(figure.readings.map(({ judged }) => judged && [judged.line.id, judged.verdict])).toEqual(
    readings.map(({ judged }) => [judged?.limit, judged?.verdict]),
  );
  const early = readings.map(({ judged, ...reading }) => reading);
  const before = viewOf({ ...question, figure: { figure: 'readings', readings: early } }, seen).figure;
  expect(before?.figure === 'readings' && before.readings.map(({ judged }) => judged)).toEqual(
    readings.map(() => undefined),
  );
});

test('a drawing to be pointed at has no names, unless the question shows one that has', () => {
  const targets = [{ id: 't1', what: 'port' as const, of: 'F1', line: says('a port') }];
  const answer: AnswerForm = { form: 'point', rig: 'tern-13', targets };
  const right: Key = { form: 'point', right: ['t1'] };
  const ports = catalogue.rigs.get('tern-13')?.ports.map(({ id }) => id);
  expect(viewOf(body(answer, right), context).answer).toMatchObject({ on: { names: false, ports } });
  const figure = { figure: 'drawing', rig: 'tern-13', marked: [], names: true, ports: false } as const;
  expect(viewOf(body(answer, right, { figure }), context).answer).toMatchObject({ on: { names: true, ports } });
});

test.each([
  [34.5, 0.5, 'kPa', '34.5 kPa', '0.5 kPa'],
  [34.5, 0.25, 'kPa', '34.5 kPa', '0.25 kPa'],
  [34.4987, 1.7249, 'kPa', '34.5 kPa', '1.7 kPa'],
  [1234.56, 5, 'mL/min', '1,235 mL/min', '5 mL/min'],
  [0.98734, 0.0005, '1', '0.9873', '0.0005'],
  [7, 0.1, undefined, '7', '0.1'],
  [-0.5, 0.1, '°C', '-0.5 °C', '0.1 °C'],
] as const)('a key of %d give or take %d %s is printed %s and %s', (value, tolerance, unit, printed, spread) => {
  const plain = (text: string) => text.replaceAll('\u00a0', ' ');
  const shown = keyNumber({ value, tolerance }, unit);
  expect([plain(shown.value), plain(shown.tolerance)]).toEqual([printed, spread]);
});
