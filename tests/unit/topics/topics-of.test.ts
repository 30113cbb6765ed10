import { expect, test } from 'vitest';
import { areas } from '@/lib/areas';
import { seedFromWord } from '@/lib/cases/case-code';
import { caseFromSeed } from '@/lib/cases/case-from-seed';
import { everyCaseParts, topicsInOrder } from '@/lib/topics/topic';
import { causesIn, practises, topicsOf } from '@/lib/topics/topics-of';
import { catalogue, causeOf } from '../../support/bench-rig';

const topics = topicsInOrder(catalogue);
const ids = (of: readonly { id: string }[]) => of.map(({ id }) => id);

test('thirteen topics stand in the order of the trade’s work, each in a place of its own', () => {
  expect(topics.map(({ place }) => place)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13]);
  expect(topics[0]?.id).toBe('safe-working-and-isolation');
  expect(topics.at(-1)?.id).toBe('reasoning-and-repair-proof');
});

test('every area and every check belongs to a topic', () => {
  expect(areas.filter((area) => !topics.some((topic) => topic.areas.includes(area)))).toEqual([]);
  expect(ids([...catalogue.checks.values()]).filter((id) => !topics.some(({ checks }) => checks.includes(id)))).toEqual(
    [],
  );
});

test('a topic names nothing twice', () => {
  for (const topic of topics)
    expect(new Set([...topic.areas, ...topic.checks]).size, topic.id).toBe(topic.areas.length + topic.checks.length);
});

test('a cause belongs to the topics that cover its area', () => {
  expect(ids(topicsOf(causeOf('lift-pump-weak'), catalogue))).toEqual(['priming-and-lift-pump']);
  for (const cause of catalogue.causes.values()) expect(topicsOf(cause, catalogue).length, cause.id).toBeGreaterThan(0);
});

test('a case with two causes belongs to the topics of both, and practises besides what every case does', () => {
  const theCase = caseFromSeed(
    {
      rig: 'tern-13',
      seed: seedFromWord('topics'),
      chosen: { cause: 'main-filter-plugged', severity: 800 },
      also: { cause: 'lift-pump-weak', severity: 800 },
    },
    catalogue,
  );
  expect(ids(causesIn(theCase, catalogue))).toEqual(['main-filter-plugged', 'lift-pump-weak']);
  expect(ids(topicsOf(theCase, catalogue))).toEqual(['priming-and-lift-pump', 'filtration']);
  expect(ids(topics.filter((topic) => practises(theCase, topic, catalogue)))).toEqual([
    'safe-working-and-isolation',
    'flow-path-and-components',
    'priming-and-lift-pump',
    'filtration',
    'instruments-and-uncertainty',
    'reasoning-and-repair-proof',
  ]);
});

test('each topic has a name of its own for exchanges, and standards that it corresponds to', () => {
  expect(new Set(topics.map(({ uuid }) => uuid)).size).toBe(topics.length);
  for (const { correspondsTo } of topics) {
    const named = correspondsTo.map(({ framework, code }) => `${framework} ${code}`);
    expect(new Set(named).size).toBe(named.length);
  }
});

test('whatever every case practises belongs to one topic', () => {
  const parts = topics.flatMap(({ everyCase }) => everyCase);
  expect([...parts].sort()).toEqual([...everyCaseParts].sort());
});
