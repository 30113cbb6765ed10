import { expect, test } from 'vitest';
import { gradeRestoring, restoringNeeded } from '@/lib/grading/grade-restoring';
import { aCall, aReading } from '../../support/attempt-rows';
import { catalogue } from '../../support/bench-rig';
import { standardRubric } from '../../support/marking';

const { costs } = standardRubric().practice;
const prime = aReading({ check: 'prime-pressure' });
const leak = aReading({ check: 'relief-valve-leak' });
const bus = aReading({ check: 'rail-pressure' });
const enough = ['take-gauge-off', 'close-fitting', 'prime', 'look-for-leaks', 'dispose-fuel'];

function graded(restored: readonly string[] | undefined, readings = [prime, leak, prime]) {
  const call = restored ? { ...aCall, restored } : aCall;
  return gradeRestoring(readings, call, catalogue, costs).map(({ code, values }) => `${code} ${values.step}`);
}

test('each reading leaves its own things to be put right, once', () => {
  expect(restoringNeeded([prime], catalogue)).toEqual(['take-gauge-off', 'prime', 'look-for-leaks']);
  expect(new Set(restoringNeeded([prime, leak, prime], catalogue))).toEqual(new Set(enough));
  expect(restoringNeeded([bus], catalogue)).toEqual([]);
});

test('all of it put right loses nothing, and something harmless more neither', () => {
  expect(graded(enough)).toEqual([]);
  expect(graded([...enough, 'close-cap'])).toEqual([]);
});

test('each thing left undone is named and costs', () => {
  expect(graded(enough.slice(1))).toEqual(['left-undone take-gauge-off']);
  const [mark] = gradeRestoring([prime], { ...aCall, restored: ['prime', 'look-for-leaks'] }, catalogue, costs);
  expect(mark?.share).toBe(-costs['left-undone']);
});

test('what does harm counts against, even on top of all that is needed', () => {
  expect(graded([...enough, 'bleed-high-pressure'])).toEqual(['wrong-restoring bleed-high-pressure']);
  expect(graded(['reuse-seals'], [bus])).toEqual(['wrong-restoring reuse-seals']);
});

test('nothing put right loses all that was needed', () => {
  expect(graded([])).toHaveLength(enough.length);
  expect(graded([], [bus])).toEqual([]);
});

test('a call from before this was asked loses nothing', () => {
  expect(graded(undefined)).toEqual([]);
});

test('something that opens a line or fits a gauge leaves something to be put right', () => {
  const opening = [...catalogue.checks.values()].filter(
    ({ opens, cautions }) => opens || cautions.includes('catch-spill'),
  );
  const idle = opening.filter(({ restore }) => restore.length === 0).map(({ id }) => id);
  // Watching solid fuel go past at the port that is there for it leaves nothing behind.
  expect(idle).toEqual(['priming-time']);
});

test('some steps on the list are tempting and do harm', () => {
  const steps = [...catalogue.restoring.values()];
  expect(steps.filter(({ wrong }) => wrong).length).toBeGreaterThanOrEqual(2);
  const needed = new Set([...catalogue.checks.values()].flatMap(({ restore }) => restore));
  for (const { id, wrong } of steps) expect(needed.has(id)).toBe(!wrong);
});
