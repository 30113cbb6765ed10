import { describe, expect, test } from 'vitest';
import { daysUntilDue, type Memory, type Remembered, recall, remember } from '@/lib/review/memory';

/**
 * FSRS-6 with its default weights. First ratings and retrievability at a stability of one day: the tests of ts-fsrs
 * (MIT, state of 25 June 2026). The run of six ratings: computed with ts-fsrs 5.4.2, no fuzz, `enable_short_term` off.
 */
const first: readonly [Remembered, number, number][] = [
  ['again', 0.212, 6.4133],
  ['hard', 1.2931, 5.11217071],
  ['good', 2.3065, 2.11810397],
  ['easy', 8.2956, 1],
];

for (const [remembered, stability, difficulty] of first)
  test(`a first “${remembered}” leaves the published stability and difficulty`, () => {
    const memory = remember(undefined, 0, remembered);
    expect(memory.stability).toBeCloseTo(stability, 8);
    expect(memory.difficulty).toBeCloseTo(difficulty, 8);
  });

test('what was learnt fades along the published curve', () => {
  const published = [1, 0.9, 0.84588465, 0.8093881];
  for (const [days, chance] of published.entries())
    expect(recall({ stability: 1, difficulty: 5 }, days)).toBeCloseTo(chance, 7);
  const later = [
    [5, 0.94034429],
    [30, 0.8093881],
    [100, 0.69282664],
    [365, 0.57355868],
  ] as const;
  for (const [days, chance] of later) expect(recall({ stability: 10, difficulty: 5 }, days)).toBeCloseTo(chance, 7);
});

describe('six ratings one after the other', () => {
  /** Days since the last, rating; stability, difficulty, days until the next; chance of recall just before. */
  const run: readonly [number, Remembered, number, number, number, number?][] = [
    [0, 'good', 2.3065, 2.11810397, 2],
    [3, 'good', 13.82690327, 2.11121424, 14, 0.88094796],
    [10, 'good', 47.45203355, 2.1043314, 47, 0.92068408],
    [30, 'again', 2.82910446, 7.38997579, 3, 0.92832785],
    [2, 'good', 6.40559547, 7.37781418, 6, 0.92201794],
    [5, 'easy', 20.72781954, 6.48683024, 21, 0.91610102],
  ];

  test('leave the stabilities, difficulties, intervals and chances of the reference run', () => {
    let memory: Memory | undefined;
    for (const [gap, remembered, stability, difficulty, interval, chance] of run) {
      if (memory && chance !== undefined) expect(recall(memory, gap)).toBeCloseTo(chance, 7);
      memory = remember(memory, gap, remembered);
      expect(memory.stability).toBeCloseTo(stability, 7);
      expect(memory.difficulty).toBeCloseTo(difficulty, 7);
      expect(daysUntilDue(memory, gap)).toBe(interval);
    }
  });
});

test('a mark moves a difficulty of 5 as published', () => {
  // The tests of ts-fsrs, next_difficulty(5, …) (seen).
  const published = { again: 8.34176237, hard: 6.66599536, good: 4.99022837, easy: 3.31446137 };
  for (const [remembered, difficulty] of Object.entries(published))
    expect(remember({ stability: 10, difficulty: 5 }, 3, remembered as Remembered).difficulty).toBeCloseTo(
      difficulty,
      7,
    );
});

test('forgotten, then good five times: as published for whole days', () => {
  // The tests of ts-fsrs, ratings 1 3 3 3 3 3 with short-term steps off (seen): a value that was first worked out in single precision (from memory),
  // so to seven figures.
  let memory: Memory | undefined;
  for (const [at, gap] of [0, 0, 1, 3, 8, 21].entries()) memory = remember(memory, gap, at === 0 ? 'again' : 'good');
  expect(memory?.stability).toBeCloseTo(53.335106, 4);
  expect(memory?.difficulty).toBeCloseTo(6.3574867, 6);
});

test('what was easy at first is remembered when it is due as published', () => {
  // The tests of ts-fsrs, get_retrievability on the day that it is due (seen).
  const memory = remember(undefined, 0, 'easy');
  expect(recall(memory, daysUntilDue(memory, 0))).toBeCloseTo(0.9024733, 7);
});
