import { describe, expect, test } from 'vitest';
import { type Earlier, mayApply } from '@/lib/readiness/may-apply';
import { conflictsOf, possibleVerdict } from '@/lib/readiness/may-decide';

const DAY = 86_400_000;
const rules = { retake: { waitDays: [14, 30, 90], perYear: 3 } };

function refused(day: number): Earlier {
  return { state: 'refused', appliedAt: (day - 1) * DAY, decidedAt: day * DAY };
}

describe('somebody may apply', () => {
  test('at once the first time, and not while an application is open', () => {
    expect(mayApply(rules, [], 0)).toEqual({ code: 'yes' });
    expect(mayApply(rules, [{ state: 'open', appliedAt: 0, decidedAt: null }], DAY)).toEqual({ code: 'open' });
  });

  test('after the wait that goes with as many refusals, to the day', () => {
    expect(mayApply(rules, [refused(10)], 24 * DAY - 1)).toEqual({ code: 'wait', from: 24 * DAY });
    expect(mayApply(rules, [refused(10)], 24 * DAY)).toEqual({ code: 'yes' });
    expect(mayApply(rules, [refused(10), refused(40)], 60 * DAY)).toEqual({ code: 'wait', from: 70 * DAY });
  });

  test('after the last wait for every refusal beyond the list', () => {
    const often = [refused(400), refused(800), refused(1200), refused(1600)];
    expect(mayApply(rules, often, 1650 * DAY)).toEqual({ code: 'wait', from: 1690 * DAY });
  });

  test('so often in 365 days, counted from when they applied', () => {
    const three = [refused(10), refused(40), refused(100)];
    expect(mayApply(rules, three, 300 * DAY)).toEqual({ code: 'per-year', from: (9 + 365) * DAY });
    expect(mayApply(rules, three, (9 + 365) * DAY)).toEqual({ code: 'yes' });
  });

  test('without what they withdrew, and without waiting for refusals before the last grant', () => {
    expect(mayApply(rules, [{ state: 'withdrawn', appliedAt: 9 * DAY, decidedAt: 9 * DAY }], 10 * DAY).code).toBe(
      'yes',
    );
    const granted: Earlier = { state: 'granted', appliedAt: 11 * DAY, decidedAt: 12 * DAY };
    expect(mayApply(rules, [granted, refused(10)], 13 * DAY).code).toBe('yes');
  });
});

describe('somebody may decide', () => {
  test('who is not the candidate and had no part in it', () => {
    expect(conflictsOf({ personId: 'ada', candidateId: 'ben' }, [])).toEqual([]);
    expect(conflictsOf({ personId: 'ada', candidateId: 'ada' }, ['marked'])).toEqual(['own', 'marked']);
  });

  test('what the evidence says, and nothing where it says too little', () => {
    expect((['ready', 'not-yet', 'not-enough-evidence'] as const).map(possibleVerdict)).toEqual([
      'granted',
      'refused',
      undefined,
    ]);
  });
});
