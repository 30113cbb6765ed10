import { describe, expect, test } from 'vitest';
import { certify } from '@/lib/diagnosis/certificate';
import { questionFromSeed } from '@/lib/questions/question-from-seed';
import { drawCase } from '@/lib/sets/draw-case';
import { drawQuestion } from '@/lib/sets/draw-question';
import { expectedCases, expectedQuestions } from '@/lib/sets/expected-tasks';
import { type ExpectedTasks, holdAgainst } from '@/lib/sets/hold-against';
import { readySetsInOrder } from '@/lib/sets/ready-set';
import type { SetItem } from '@/lib/sets/set-body';
import { tasksOf } from '@/lib/sets/tasks';
import { topicsInOrder } from '@/lib/topics/topic';
import { practises } from '@/lib/topics/topics-of';
import { catalogue } from '../../support/bench-rig';

const ready = readySetsInOrder(catalogue.readySets);
const order = topicsInOrder(catalogue).map(({ id }) => id);

test('there are five to start from, each marked as invented', () => {
  expect(ready.map(({ id }) => id)).toEqual([
    'first-week',
    'low-pressure-side',
    'high-pressure-side',
    'electrical-and-codes',
    'mixed-sign-off',
  ]);
  for (const { source } of ready) expect(source).toMatchObject({ kind: 'assumed', because: /invented/i });
});

describe.each(ready)('the ready set $id', ({ body }) => {
  test('is what its blueprint asks for', () => {
    const blueprint = catalogue.blueprints.get(body.blueprint ?? '');
    expect(blueprint).toBeDefined();
    const holding = holdAgainst(body.items.flatMap(expected), order, blueprint);
    expect(holding.gaps).toEqual([]);
    expect(holding.tasks).toBe(tasksOf(body).length);
  });

  test('can be drawn whole, each task as it is asked for', () => {
    for (const { item, place } of tasksOf(body)) draw(item, `ready ${place}`);
  }, 60_000);
});

function expected(item: SetItem): ExpectedTasks | [] {
  if (item.kind === 'cases') return expectedCases(item);
  return item.kind === 'questions' ? (expectedQuestions(item) ?? []) : [];
}

function draw(item: SetItem, seed: string): void {
  if (item.kind === 'questions') {
    const question = questionFromSeed(drawQuestion(item, seed), catalogue);
    expect(question.topics).toContain(item.topic);
    expect(item.questionKind ?? question.spec.kind).toBe(question.spec.kind);
    return;
  }
  if (item.kind !== 'cases') throw new Error(`Content has no ${item.kind}`);
  const drawn = drawCase(item, seed, catalogue, undefined, certify);
  if ('unmet' in drawn) throw new Error(`${item.id}: ${drawn.unmet}`);
  const { topics, difficulty, rigs, faults } = item.wishes;
  const theCase = drawn.case;
  expect(drawn.certificate.settled).toBe(true);
  if (rigs) expect(rigs).toContain(theCase.rig.id);
  if (topics) {
    const wished = [...catalogue.topics.values()].filter(({ id }) => topics.includes(id));
    expect(wished.some((topic) => practises(theCase, topic, catalogue))).toBe(true);
  }
  if (difficulty) expect(drawn.certificate.difficulty).toBeGreaterThanOrEqual(difficulty[0]);
  if (difficulty) expect(drawn.certificate.difficulty).toBeLessThanOrEqual(difficulty[1]);
  if (faults === 'single') expect(theCase.truth.also).toBeUndefined();
}
