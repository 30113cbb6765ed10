import { describe, expect, test } from 'vitest';
import { chance, highestScore, information, type TaskModel } from '@/lib/competency/task-model';
import { choice } from '../../support/task-models';

describe('what is known of one answer', () => {
  test('with a floor, as worked out on the reference page', () => {
    // Section 1.2 (run): a = 1, b = 0, c = 0.25, ability 0: P = 0.625, information 0.15; c = 0: 0.25.
    const guessed = choice(0, { floor: 0.25 });
    expect(chance(guessed, 1, 0)).toBeCloseTo(0.625, 12);
    expect(information(guessed, 0)).toBeCloseTo(0.15, 12);
    expect(information(choice(0), 0)).toBeCloseTo(0.25, 12);
  });

  test('a difficulty that is not known for certain shrinks the logit', () => {
    // Section 1.2 (run): spread 0.5, factor 0.954255.
    const right = chance(choice(0, { spread: 0.5 }), 1, 1);
    expect(Math.log(right / (1 - right))).toBeCloseTo(0.954255, 6);
  });

  const uncertain: [string, (difficulty: number, spread: number) => TaskModel][] = [
    ['right or wrong', (difficulty, spread) => choice(difficulty, { spread })],
    ['steep', (difficulty, spread) => choice(difficulty, { slope: 1.5, spread })],
    ['guessed', (difficulty, spread) => choice(difficulty, { floor: 0.25, spread })],
    ['of four points', (b, spread) => ({ kind: 'steps', steps: [b - 1.5, b - 0.5, b + 0.5, b + 1.5], spread })],
  ];
  const abilities = [-2, -1, 0, 0.5, 1.5, 3];

  test.each(uncertain)('the short cut agrees with the average over normal difficulties: %s', (_, modelOf) => {
    // Analytic: the integral over ±6 spreads in 240 steps. A logistic curve averaged so is off by up to 0.002, three
    // difficulties by 0.001.
    for (const theta of abilities)
      for (const score of scoresOf(modelOf(0, 0))) {
        const exact = averaged(0.5, (difficulty) => chance(modelOf(difficulty, 0), score, theta));
        expect(Math.abs(chance(modelOf(0, 0.5), score, theta) - exact)).toBeLessThan(0.003);
      }
  });

  test.each(uncertain)('information is that of the chances: %s', (_, modelOf) => {
    // Analytic: Σ (dP/dθ)² / P. Exact where it can be; nearly for several points of uncertain difficulty.
    for (const spread of [0, 0.5])
      for (const theta of abilities) {
        const model = modelOf(0, spread);
        const exact = scoresOf(model).reduce((sum, score) => {
          const slope = (chance(model, score, theta + 1e-4) - chance(model, score, theta - 1e-4)) / 2e-4;
          return sum + slope ** 2 / chance(model, score, theta);
        }, 0);
        const allowed = model.kind === 'steps' && spread > 0 ? 0.08 : 1e-6;
        expect(Math.abs(information(model, theta) / exact - 1)).toBeLessThan(allowed);
      }
  });
});

function scoresOf(model: TaskModel): number[] {
  return Array.from({ length: highestScore(model) + 1 }, (_, score) => score);
}

function averaged(spread: number, of: (difficulty: number) => number): number {
  let [sum, all] = [0, 0];
  for (let z = -6; z <= 6; z += 0.05) {
    const weight = Math.exp(-0.5 * z * z);
    sum += weight * of(z * spread);
    all += weight;
  }
  return sum / all;
}
