import { describe, expect, test } from 'vitest';
import type { TaskModel } from '@/lib/competency/task-model';
import type { PanelTask } from '@/lib/readiness/panel';
import { finishedJudges, type PanelRating, panelResult, spreadOf } from '@/lib/readiness/panel-result';
import { panelTasks } from '@/lib/readiness/panel-tasks';
import { aScheme } from '../../support/competency-rows';

// Own example, arithmetic only, computed beside: /shared/reference/competency.md, 2.5.
const RATINGS = [
  [0.7, 0.6, 0.8, 0.55, 0.9],
  [0.65, 0.55, 0.85, 0.6, 0.85],
  [0.75, 0.7, 0.75, 0.5, 0.95],
  [0.6, 0.6, 0.8, 0.45, 0.9],
];
const DIFFICULTIES = [-0.8, -0.3, -1.4, 0.2, -2.0];

const tasks: PanelTask[] = DIFFICULTIES.map((difficulty, index) => ({
  poolTaskId: `task ${index}`,
  kind: 'question',
  topic: 'filtration',
  model: { kind: 'choice', difficulty, floor: 0, spread: 0 },
  outOf: 1,
}));

function said(round: number, rows = RATINGS): PanelRating[] {
  return rows.flatMap((row, judge) =>
    row.map((expected, task) => ({ judgeId: `judge ${judge}`, round, task: task + 1, expected })),
  );
}

describe('a panel', () => {
  test('comes to the line of the example, with its standard errors', () => {
    const result = panelResult(tasks, said(2));
    expect(result?.points).toBeCloseTo(3.5125, 10);
    expect(result?.between).toBeCloseTo(0.125, 3);
    expect(result?.standardError).toBeCloseTo(0.0625, 3);
    const cut = result?.cut;
    expect(cut && 'ability' in cut ? cut.ability : undefined).toBeCloseTo(0.120635, 5);
    // The error in points over the slope Σ P(1 − P) of the curve at the line, worked out by hand.
    const slope = DIFFICULTIES.reduce((sum, b) => {
      const p = 1 / (1 + Math.exp(-(0.120635 - b)));
      return sum + p * (1 - p);
    }, 0);
    expect(cut && 'ability' in cut ? cut.standardError : undefined).toBeCloseTo(0.06455 / slope, 2);
  });

  test('counts only judges who rated everything in the second round, two at least', () => {
    const ratings = [...said(1), ...said(2).filter(({ judgeId, task }) => judgeId !== 'judge 3' || task < 5)];
    expect(finishedJudges(ratings, 2, 5)).toHaveLength(3);
    expect(panelResult(tasks, ratings)?.judges).toBe(3);
    expect(panelResult(tasks, said(2, RATINGS.slice(0, 1)))).toBeUndefined();
    expect(panelResult(tasks, said(1))).toBeUndefined();
  });

  test('shows how far the judges were apart, and not who said what', () => {
    const spread = spreadOf(said(1), { round: 1, task: 1 });
    expect(spread).toEqual({ least: 0.6, mean: expect.closeTo(0.675, 10), most: 0.75, judges: 4 });
  });

  test('has no line where the judges expect more than anybody earns', () => {
    const all = RATINGS.map((row) => row.map(() => 1));
    expect(panelResult(tasks, said(2, all))?.cut).toEqual({ why: 'above-scale' });
  });
});

describe('the tasks of a panel', () => {
  const model: TaskModel = { kind: 'choice', difficulty: 0, floor: 0.25, spread: 0.5 };
  const steps: TaskModel = { kind: 'steps', steps: [-1.5, -0.5, 0.5, 1.5], spread: 0.5 };
  const blueprint = [
    { topic: 'filtration', share: 0.75, atLeast: 1 },
    { topic: 'fuel-quality', share: 0.25, atLeast: 1 },
  ];
  const candidates = Array.from({ length: 20 }, (_, at) => ({
    id: `pool ${at}`,
    kind: at % 3 === 0 ? ('case' as const) : ('question' as const),
    topics: [{ topic: at % 2 ? 'filtration' : 'fuel-quality', model: at % 3 === 0 ? steps : model }],
  }));

  test('keep the shares of the blueprint, mix cases with questions, and name nothing twice', () => {
    const chosen = panelTasks(aScheme({ blueprint }), candidates, 8);
    expect(chosen.map(({ topic }) => topic)).toEqual([...Array(6).fill('filtration'), 'fuel-quality', 'fuel-quality']);
    expect(new Set(chosen.map(({ poolTaskId }) => poolTaskId)).size).toBe(8);
    expect(chosen.filter(({ kind }) => kind === 'case').map(({ outOf }) => outOf)).toEqual([4, 4, 4, 4]);
  });

  test('are fewer where the pool holds no more', () => {
    expect(panelTasks(aScheme({ blueprint }), candidates.slice(0, 3), 8)).toHaveLength(3);
  });
});
