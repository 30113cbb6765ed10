import { expect, test } from 'vitest';
import { questionKindIds } from '@/lib/questions/question';
import { kindsOn, questionFromSeed } from '@/lib/questions/question-from-seed';
import { drawQuestion, type QuestionsItem } from '@/lib/sets/draw-question';
import { catalogue } from '../../support/bench-rig';

const seeds = Array.from({ length: 60 }, (_, n) => `oak-${n}`);

function asking(topic: string, questionKind?: QuestionsItem['questionKind']): QuestionsItem {
  return { id: 'a', kind: 'questions', count: 3, topic, ...(questionKind && { questionKind }) };
}

test.each([...catalogue.topics.keys()])(
  'questions on %s are of every kind that there is on it, and can be made',
  (topic) => {
    const specs = seeds.map((seed) => drawQuestion(asking(topic), seed));
    expect(new Set(specs.map(({ kind }) => kind))).toEqual(new Set(kindsOn(topic)));
    for (const spec of specs.slice(0, 5)) expect(questionFromSeed(spec, catalogue).topics).toContain(topic);
  },
);

test('a kind that is named is kept to, and the same seed asks the same', () => {
  expect(drawQuestion(asking('filtration', 'judge'), 'alder')).toEqual({
    kind: 'judge',
    topic: 'filtration',
    seed: 'alder',
  });
  expect(drawQuestion(asking('filtration'), 'alder')).toEqual(drawQuestion(asking('filtration'), 'alder'));
});

test('a kind that content no longer has on a topic is asked on another', () => {
  const kind = questionKindIds.find((id) => !kindsOn('fuel-quality').includes(id));
  expect(drawQuestion(asking('fuel-quality', kind), 'alder')).toEqual({ kind, seed: 'alder' });
});

test('on a topic that nothing is asked on there is no question', () => {
  expect(() => drawQuestion(asking('knitting'), 'alder')).toThrow(RangeError);
});
