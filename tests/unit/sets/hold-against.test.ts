import { describe, expect, test } from 'vitest';
import type { Blueprint } from '@/lib/sets/blueprint';
import { type ExpectedTasks, holdAgainst } from '@/lib/sets/hold-against';

const order = ['suction', 'filtration', 'returns'];

function tasks(topics: string[], count: number, minutes = 10, difficulty = 0): ExpectedTasks {
  return { topics, count, minutes, difficulty };
}

function aBlueprint(changes: Partial<Blueprint> = {}): Blueprint {
  return {
    id: 'plan',
    place: 1,
    topics: [
      { topic: 'suction', tasks: [2, 3] },
      { topic: 'filtration', tasks: [1, 2] },
    ],
    minutes: [20, 60],
    difficulty: [-1, 1],
    source: { kind: 'assumed', because: 'A test' },
    text: { en: { name: 'Plan', about: 'Plan' } },
    ...changes,
  };
}

const gapsOf = (parts: ExpectedTasks[], changes?: Partial<Blueprint>) =>
  holdAgainst(parts, order, aBlueprint(changes)).gaps;

describe('what a set is made of', () => {
  test('counts tasks, minutes and mean difficulty by topic and in all', () => {
    const { rows, ...whole } = holdAgainst(
      [tasks(['filtration'], 2, 10, -1), tasks(['suction'], 1, 30, 0.5), tasks(['filtration'], 2, 1, 0)],
      order,
    );
    expect(rows).toEqual([
      { topic: 'suction', tasks: 1, minutes: 30, difficulty: 0.5, asked: undefined },
      { topic: 'filtration', tasks: 4, minutes: 22, difficulty: -0.5, asked: undefined },
    ]);
    expect(whole).toEqual({ tasks: 5, minutes: 52, difficulty: -0.3, gaps: [] });
  });

  test('a task that may be on several topics counts a part for each, and one on any stands apart', () => {
    const { rows, tasks: all } = holdAgainst([tasks(['suction', 'returns'], 3), tasks([], 2)], order);
    expect(rows.map(({ topic, tasks: count }) => [topic, count])).toEqual([
      ['suction', 1.5],
      ['returns', 1.5],
      [undefined, 2],
    ]);
    expect(all).toBe(5);
  });

  test('nothing at all has no difficulty', () => {
    expect(holdAgainst([], order)).toEqual({ rows: [], tasks: 0, minutes: 0, difficulty: undefined, gaps: [] });
  });
});

describe('held against a blueprint', () => {
  const right = [tasks(['suction'], 2), tasks(['filtration'], 1)];

  test('a set that is as it should be has no gaps, at the very ends of each range too', () => {
    expect(gapsOf(right)).toEqual([]);
    expect(
      gapsOf([tasks(['suction'], 3), tasks(['filtration'], 2)], { minutes: [50, 50], difficulty: [0, 0] }),
    ).toEqual([]);
    const thirds = [tasks(['suction', 'filtration', 'returns'], 1), tasks(['suction', 'filtration', 'returns'], 2)];
    const allThree = order.map((topic) => ({ topic, tasks: [1, 1] as [number, number] }));
    expect(gapsOf(thirds, { topics: allThree })).toEqual([]);
  });

  test('too few and too many on a topic are told, and a topic that is missing altogether', () => {
    expect(gapsOf([tasks(['suction'], 4)])).toEqual([
      { gap: 'too-many', topic: 'suction', tasks: 4, asked: [2, 3] },
      { gap: 'too-few', topic: 'filtration', tasks: 0, asked: [1, 2] },
    ]);
  });

  test('so is a topic that it does not ask for', () => {
    expect(gapsOf([...right, tasks(['returns'], 1)])).toEqual([{ gap: 'not-asked', topic: 'returns', tasks: 1 }]);
  });

  test.each([
    ['too-short', { minutes: [31, 60] as [number, number] }, { minutes: 30, asked: [31, 60] }],
    ['too-long', { minutes: [20, 29] as [number, number] }, { minutes: 30, asked: [20, 29] }],
    ['too-easy', { difficulty: [0.1, 1] as [number, number] }, { difficulty: 0, asked: [0.1, 1] }],
    ['too-hard', { difficulty: [-1, -0.1] as [number, number] }, { difficulty: 0, asked: [-1, -0.1] }],
  ])('one that is %s is told', (gap, changes, told) => {
    expect(gapsOf(right, changes)).toEqual([{ gap, ...told }]);
  });
});
