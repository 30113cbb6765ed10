import { describe, expect, test } from 'vitest';
import { EXPECTED_MINUTES, expectedMinutes, type TaskTrace, whereaboutsOf } from '@/lib/assignments/whereabouts';

const START = Date.UTC(2026, 2, 2, 8);
const at = (minutes: number) => START + minutes * 60_000;
const expected = { case: 10, question: 2 };

function aTrace(place: number, changes: Partial<TaskTrace> = {}): TaskTrace {
  return { place, kind: 'case', openedAt: null, lastAt: null, done: false, ...changes };
}
const where = (tasks: readonly TaskTrace[], minutes: number) =>
  whereaboutsOf(tasks, { startedAt: START, now: at(minutes), expected });

describe('where somebody is', () => {
  test('at the first task once they have begun', () => {
    const current = { place: 1, kind: 'case', minutes: 4, stuck: false };
    expect(where([aTrace(1), aTrace(2)], 4)).toEqual({ done: 0, current, quiet: 4 });
  });

  test('at what they touched last', () => {
    const tasks = [aTrace(1, { openedAt: at(1), lastAt: at(3) }), aTrace(2, { openedAt: at(4), lastAt: at(6) })];
    expect(where(tasks, 9)).toEqual({
      done: 0,
      current: { place: 2, kind: 'case', minutes: 5, stuck: false },
      quiet: 3,
    });
  });

  test('at the next task once one is done, from when it was', () => {
    const tasks = [aTrace(1, { openedAt: at(1), lastAt: at(8), done: true }), aTrace(2, { kind: 'question' })];
    const current = { place: 2, kind: 'question', minutes: 2, stuck: false };
    expect(where(tasks, 10)).toEqual({ done: 1, current, quiet: 2 });
  });

  test('back at what they left out once the last is done', () => {
    const tasks = [aTrace(1), aTrace(2, { openedAt: at(1), lastAt: at(5), done: true })];
    expect(where(tasks, 6).current?.place).toBe(1);
  });

  test('nowhere once all is done', () => {
    const tasks = [aTrace(1, { openedAt: at(1), lastAt: at(5), done: true })];
    expect(where(tasks, 6)).toEqual({ done: 1, current: undefined, quiet: 1 });
  });
});

describe('stuck', () => {
  test('beyond half as long again as expected, and not before', () => {
    const tasks = [aTrace(1, { openedAt: at(0), lastAt: at(14) })];
    expect(where(tasks, 15).current?.stuck).toBe(false);
    expect(where(tasks, 16).current?.stuck).toBe(true);
  });

  test('not by what was spent on another task', () => {
    const tasks = [aTrace(1, { openedAt: at(0), lastAt: at(30) }), aTrace(2, { openedAt: at(31), lastAt: at(33) })];
    expect(where(tasks, 34).current).toMatchObject({ place: 2, stuck: false });
  });
});

describe('what is expected', () => {
  test('without a limit, what is assumed', () => {
    expect(expectedMinutes([aTrace(1)], null)).toEqual(EXPECTED_MINUTES);
  });

  test('with one, shares that sum to it', () => {
    const tasks = [aTrace(1), aTrace(2), aTrace(3, { kind: 'question' })];
    const shares = expectedMinutes(tasks, 66);
    expect(shares.case * 2 + shares.question).toBeCloseTo(66, 9);
    expect(shares.case / shares.question).toBeCloseTo(5, 9);
  });

  test('of nothing, no division by nothing', () => {
    expect(expectedMinutes([], 60)).toEqual(EXPECTED_MINUTES);
  });
});
