import { describe, expect, test } from 'vitest';
import { familyOf, lookAlikesOf } from '@/app/_server/alike-causes';
import type { History, StoredOpenAct } from '@/app/_server/history';
import { repairPressures } from '@/app/_server/repair-pressures';
import { routeViews } from '@/app/_server/route-views';
import { skippedChecks } from '@/app/_server/skipped-checks';
import { formatHookUp, tryCheck } from '@/app/_server/try-check';
import { areas } from '@/lib/areas';
import { gradeAttempt } from '@/lib/grading/grade-attempt';
import { anAttempt } from '../../support/attempt-rows';
import { catalogue, causeOf } from '../../support/bench-rig';
import { aCase, rightCall, taken } from '../../support/worked-attempt';

const theCase = aCase();
const reading = taken(theCase, 1, { check: 'rail-pressure', condition: 'idle', instrument: 'data-display' });
const acts: StoredOpenAct[] = [reading];
const grade = gradeAttempt(theCase, catalogue, [reading, rightCall(theCase, 2)]);
const attempt = anAttempt({
  caseCode: theCase.code,
  generatorVersion: theCase.generatorVersion,
  contentHash: theCase.contentHash,
});
const history = {
  attempt: { ...attempt, createdAt: new Date(0) },
  acts,
  keys: new Map(),
  call: undefined,
  turn: undefined,
  intake: undefined,
} as History;

describe('a check tried after the call', () => {
  const prime = { check: 'prime-pressure', condition: 'key-on', instrument: 'dial-0-30-psi' };

  test('shows what it would have shown then, judges it, and moves belief towards what was wrong', () => {
    const trial = tryCheck(theCase, history, [], formatHookUp(prime));
    if ('error' in trial) throw new Error(trial.error);
    expect(trial.reading.items.map(({ shown }) => shown)).toEqual(
      taken(theCase, 1, { ...prime, condition: 'key-on' }).shown,
    );
    // A weak lift pump primes too low: the direction table's row, from hydraulic reasoning.
    expect(trial.verdicts).toMatchObject([{ limit: 'prime-pressure-key-on', verdict: 'fail' }]);
    expect(trial.after.priming).toBeGreaterThan(trial.before.priming);
    expect(sum(trial.before)).toBeCloseTo(1, 9);
    expect(sum(trial.after)).toBeCloseTo(1, 9);
  });

  test('starts from what was believed at the moment it was skipped', () => {
    const [skipped] = [{ step: { ...prime, condition: 'key-on' as const, minutes: 12 }, insteadOf: 1 }];
    const trial = tryCheck(theCase, history, skipped ? [skipped] : [], formatHookUp(prime));
    if ('error' in trial) throw new Error(trial.error);
    for (const area of areas) expect(trial.before[area]).toBeCloseTo(grade.course?.start[area] ?? -1, 9);
  });

  test.each([
    'prime-pressure',
    'no-such-check@key-on@dial-0-30-psi',
    'prime-pressure@no-such-condition@dial-0-30-psi',
    'prime-pressure@key-on@no-such-instrument',
    'prime-pressure@key-on@thermometer',
    'prime-pressure@__proto__@dial-0-30-psi',
  ])('is refused as %s', (text) => {
    expect(tryCheck(theCase, history, [], text)).toEqual({ error: 'no-such-check' });
  });

  test('is possible for everything that the debrief offers', () => {
    if (!grade.course) throw new Error('The grade has no course');
    const skipped = skippedChecks(grade.course);
    expect(skipped).not.toEqual([]);
    for (const { step } of skipped)
      expect(tryCheck(theCase, history, skipped, formatHookUp(step))).not.toHaveProperty('error');
  });
});

describe('pressures before and after the repair', () => {
  test('are those of the broken and of the sound rig, at every place that has a port, once', () => {
    const { ports, condition } = repairPressures(theCase, grade.afterRepair, 'key-on');
    expect(condition).toBe('key-on');
    const nodes = theCase.rig.ports.flatMap(({ node }) => node ?? []);
    expect(ports).toHaveLength(new Set(nodes).size);
    // The lift pump alone fills the circuit at key-on: a weak one leaves the main filter's inlet lower.
    const inlet = ports.find(({ port }) => port === 'F1');
    expect(inlet?.moved).toBe(true);
    expect(inlet?.before).toBeLessThan(inlet?.after ?? 0);
  });

  test.each([undefined, 'no-such-condition', ['idle'], 'snap-acceleration'])('fall back from %s', (asked) => {
    const { condition } = repairPressures(theCase, grade.afterRepair, asked);
    const turned = grade.afterRepair.find(({ verdictBefore, verdictAfter }) => verdictBefore !== verdictAfter);
    expect(condition).toBe(turned?.condition);
  });
});

describe('cases like this one', () => {
  test('of the same family lie in its area or part, those that look like it elsewhere, and neither is it', () => {
    const family = familyOf(theCase.truth, theCase.rig, catalogue);
    const lookAlikes = lookAlikesOf(theCase, catalogue);
    expect(family.length).toBeGreaterThan(0);
    expect(lookAlikes.length).toBeGreaterThan(0);
    expect(family).not.toContain('lift-pump-weak');
    for (const cause of family.map(causeOf))
      expect(cause.area === 'priming' || cause.element === 'lift-pump').toBe(true);
    for (const cause of lookAlikes.map(causeOf)) {
      expect(cause.area).not.toBe('priming');
      expect(cause.element).not.toBe('lift-pump');
      expect(cause.element).not.toBeNull();
    }
  });
});

describe('the two routes', () => {
  const readings = [
    {
      seq: 1,
      check: { id: 'rail-pressure', name: 'Rail pressure, sensed', severalQuantities: false, cautions: [] },
      condition: 'idle' as const,
      instrument: { id: 'data-display', name: 'Data display' },
      minutes: 6,
      items: [],
      lines: [],
    },
  ];

  test('carry the credit of each step, and what would have told more', () => {
    const { yours, expert } = routeViews({ readings }, grade);
    expect(yours[0]?.credit).toBe(grade.course?.steps[0]?.credit);
    expect(expert.map(({ minutes }) => minutes)).toEqual(grade.course?.expert.map(({ minutes }) => minutes));
  });

  test('of an older grade say nothing of worth', () => {
    const { course: _, score: __, ...older } = grade;
    const { yours, expert } = routeViews({ readings }, older);
    expect(yours[0]).toMatchObject({ credit: undefined, better: undefined });
    expect(expert).toHaveLength(grade.expertRoute.length);
  });
});

function sum(shares: Readonly<Record<string, number>>): number {
  return Object.values(shares).reduce((total, share) => total + share, 0);
}
