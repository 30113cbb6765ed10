import { expect, test } from 'vitest';
import { nextPractice, type PracticeTask, type Standpoint } from '@/lib/competency/next-practice';
import { posteriorFrom, priorOf } from '@/lib/competency/posterior';
import { randomStream } from '@/lib/random';

const nowhere = new Set<string>();

test('of tasks alike in everything else, the one at the edge of ability comes', () => {
  const tasks = [-4, -2, 0, 1, 2, 3, 4, 5].map((difficulty) => question(`at ${difficulty}`, 'filtration', difficulty));
  const at = (mean: number) => draws(tasks, new Map([['filtration', standing(mean)]]));
  expect(at(1)).not.toContain('at -4');
  expect(at(1)).toContain('at 1');
  expect(at(-2)).toContain('at -2');
  expect(at(-2)).not.toContain('at 5');
});

test('what is untested or fades comes before what was shown, and the reason says so', () => {
  const tasks = ['shown', 'fading', 'untested'].flatMap((topic) =>
    Array.from({ length: 6 }, (_, at) => question(`${topic} ${at}`, topic, 0)),
  );
  const all = new Map([
    ['shown', standing(0)],
    ['fading', { ...standing(0), fades: true }],
    ['untested', { ...standing(0), responses: 0 }],
  ]);
  expect(next(tasks, all)).toMatchObject({ topic: 'untested', reason: 'untested' });
  all.delete('untested');
  expect(next(tasks, all)).toMatchObject({ topic: 'fading', reason: 'fading' });
  all.delete('fading');
  expect(next(tasks, all)).toMatchObject({ topic: 'shown', reason: 'edge' });
});

test('what is uncertain comes before what is known well', () => {
  const tasks = ['sure', 'unsure'].flatMap((topic) =>
    Array.from({ length: 6 }, (_, at) => question(`${topic} ${at}`, topic, 0)),
  );
  const all = new Map([
    ['sure', standing(0, 0.3)],
    ['unsure', standing(0, 0.9)],
  ]);
  expect(next(tasks, all)?.topic).toBe('unsure');
});

test('a family that was met lately comes only where there is nothing else', () => {
  const [judge, other] = [
    { ...question('judge', 'filtration', 0), family: 'judge' },
    question('other', 'filtration', 3),
  ];
  const all = new Map([['filtration', standing(0)]]);
  expect(next([judge, other], all, new Set(['judge']))?.task.id).toBe('other');
  expect(next([judge], all, new Set(['judge']))?.task.id).toBe('judge');
});

test('the same stream gives the same task again, and nothing comes of nothing', () => {
  const tasks = Array.from({ length: 9 }, (_, at) => question(`${at}`, 'filtration', 0));
  const all = new Map([['filtration', standing(0)]]);
  expect(next(tasks, all)).toEqual(next(tasks, all));
  expect(next([], all)).toBeUndefined();
  expect(next(tasks, new Map())).toBeUndefined();
});

function next(tasks: readonly PracticeTask[], all: ReadonlyMap<string, Standpoint>, lately = nowhere) {
  return nextPractice(tasks, all, lately, randomStream('any', 'next'));
}

function draws(tasks: readonly PracticeTask[], all: ReadonlyMap<string, Standpoint>) {
  return Array.from(
    { length: 60 },
    (_, at) => nextPractice(tasks, all, nowhere, randomStream(`${at}`, 'next'))?.task.id,
  );
}

function standing(mean: number, sd = 0.5): Standpoint {
  return { posterior: posteriorFrom(priorOf(mean, sd), new Float64Array(241)), responses: 5, fades: false };
}

function question(id: string, topic: string, difficulty: number): PracticeTask {
  const model = { kind: 'choice' as const, difficulty, floor: 0, spread: 0.5 };
  return { id, family: id, topics: [{ topic, model }], seconds: 60 };
}
