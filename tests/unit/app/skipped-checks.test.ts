import { describe, expect, test } from 'vitest';
import { skippedChecks } from '@/app/_server/skipped-checks';
import { formatHookUp, parseHookUp } from '@/app/_server/try-check';
import { type Area, areas } from '@/lib/areas';
import type { RouteStep } from '@/lib/diagnosis/next-check';
import type { Course, StepGrade } from '@/lib/grading/grade';

const nothing = Object.fromEntries(areas.map((area) => [area, 0])) as Record<Area, number>;

function step(check: string): RouteStep {
  return { check, condition: 'idle', instrument: 'eyes', minutes: 10 };
}

/** A reading that told `told` a minute where `best` would have told `most`. */
function taken(seq: number, check: string, told: number, best: string | null, most = 0): StepGrade {
  return {
    ...step(check),
    seq,
    gain: 10 * told,
    perMinute: told,
    best: best === null ? null : { ...step(best), perMinute: most },
    credit: 0.5,
    areas: nothing,
  };
}

function course(steps: readonly StepGrade[], expert: readonly string[] = []): Course {
  return { start: nothing, steps, expert: expert.map((check) => ({ ...step(check), areas: nothing })) };
}

describe('checks to try after the call', () => {
  test('those come first against which the choice was worth least', () => {
    const skipped = skippedChecks(course([taken(1, 'a', 0.03, 'x', 0.04), taken(2, 'b', 0.01, 'y', 0.05)]));
    expect(skipped).toEqual([
      { step: step('y'), insteadOf: 2 },
      { step: step('x'), insteadOf: 1 },
    ]);
  });

  test('what was made after all was not skipped', () => {
    expect(skippedChecks(course([taken(1, 'a', 0.01, 'b', 0.05), taken(2, 'b', 0.05, 'b', 0.05)]))).toEqual([]);
  });

  test('a check passed over twice stands once, at its costlier moment', () => {
    const skipped = skippedChecks(course([taken(1, 'a', 0.03, 'x', 0.04), taken(2, 'b', 0.01, 'x', 0.04)]));
    expect(skipped).toEqual([{ step: step('x'), insteadOf: 2 }]);
  });

  test('there are never more than three', () => {
    const steps = ['v', 'w', 'x', 'y', 'z'].map((best, index) => taken(index + 1, `made-${best}`, 0.01, best, 0.02));
    expect(skippedChecks(course(steps))).toHaveLength(3);
  });

  test('where nothing was read, the expert’s first check is offered', () => {
    expect(skippedChecks(course([], ['p', 'q']))).toEqual([{ step: step('p'), insteadOf: null }]);
  });
});

test('a hook-up comes out of the address as it went in, and nothing else does', () => {
  const hookUp = { check: 'prime-pressure', condition: 'key-on', instrument: 'dial-0-30-psi' };
  expect(parseHookUp(formatHookUp(hookUp))).toEqual(hookUp);
  for (const text of ['', '@', 'a@b', 'a@@c', 'a@b@c@d', '@b@c']) expect(parseHookUp(text)).toBeUndefined();
});
