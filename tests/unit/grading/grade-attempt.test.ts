import { expect, test } from 'vitest';
import type { StoredAct } from '@/lib/grading/acts';
import { defaultRubric, parts, SAFETY_CAP } from '@/lib/grading/grade';
import { gradeAttempt } from '@/lib/grading/grade-attempt';
import { catalogue } from '../../support/bench-rig';
import { aCase, aWorkedAttempt, judged, rightCall, taken } from '../../support/worked-attempt';

const plugged = aCase({ cause: 'inlet-screen-plugged' });
const screen = { check: 'screen-drop', condition: 'full-load', instrument: 'differential-digital-0-1500-kpa' } as const;
const prime = { check: 'prime-pressure', condition: 'key-on', instrument: 'dial-0-30-psi' } as const;

/** Prime pressure and screen drop read, judged and understood; the screen called. */
function goodWork(): StoredAct[] {
  const [first, second] = [taken(plugged, 1, prime), taken(plugged, 3, screen)];
  return [
    first,
    judged(plugged, 2, first, { clears: ['priming'] }),
    second,
    judged(plugged, 4, second, { suspects: ['filtration'] }),
    rightCall(plugged, 5),
  ];
}

function grade(acts: readonly StoredAct[], rubric = defaultRubric) {
  return gradeAttempt(plugged, catalogue, acts, rubric);
}

function pointsOf(acts: readonly StoredAct[], part: (typeof parts)[number]) {
  return grade(acts).parts.find((line) => line.part === part)?.points;
}

test('good work earns full marks in every part', () => {
  const { total, capped, parts: lines } = grade(goodWork());
  expect(lines).toEqual(parts.map((part) => ({ part, points: defaultRubric[part], outOf: defaultRubric[part] })));
  expect({ total, capped }).toEqual({ total: 100, capped: false });
});

test('the weights of the parts sum to a hundred', () => {
  expect(Object.values(defaultRubric).reduce((sum, weight) => sum + weight, 0)).toBe(100);
});

test('grading again gives the identical grade', () => {
  const acts = aWorkedAttempt(plugged);
  expect(JSON.stringify(grade(acts))).toBe(JSON.stringify(grade(structuredClone(acts))));
});

test('another rubric weighs the same work otherwise', () => {
  const rubric = { verdicts: 0, reasons: 0, call: 100, route: 0, practice: 0 };
  expect(grade(goodWork(), rubric).total).toBe(100);
  expect(grade([rightCall(plugged, 1, { cause: 'gear-pump-worn' })], rubric).total).toBe(40);
});

test('one finding earns half of verdicts and reasons, and says why', () => {
  const acts = goodWork().filter(({ seq }) => seq !== 2);
  expect(pointsOf(acts, 'verdicts')).toBe(defaultRubric.verdicts / 2);
  expect(grade(acts).notes).toContainEqual({
    part: 'verdicts',
    code: 'few-findings',
    values: { earned: 1, count: 1, expected: 2 },
  });
});

test('a finding that names no area keeps two thirds of its reason', () => {
  const [first, , second, , call] = goodWork();
  if (first?.kind !== 'reading' || second?.kind !== 'reading' || call?.kind !== 'call') throw new Error('other acts');
  const acts = [first, judged(plugged, 2, first), second, judged(plugged, 4, second), call];
  expect(pointsOf(acts, 'reasons')).toBeCloseTo((2 / 3) * defaultRubric.reasons, 1);
});

test('a lost gauge holds the total down whatever else was done well', () => {
  const lost = taken(plugged, 6, { ...prime, condition: 'idle' });
  expect(lost.shown).toEqual([{ kind: 'destroyed', quantity: 'prime-pressure' }]);
  const graded = grade([...goodWork().slice(0, 4), lost, rightCall(plugged, 7)]);
  expect(graded).toMatchObject({ total: SAFETY_CAP, capped: true, safetyEvents: [{ seq: 6 }] });
  expect(graded.notes.map(({ code }) => code)).toContain('instrument-destroyed');
});

test('a safety event on work that earns less than the cap caps nothing', () => {
  const lost = taken(plugged, 1, { ...prime, condition: 'idle' });
  const graded = grade([lost, rightCall(plugged, 2, { cause: 'gear-pump-worn', repair: 'replace-gear-pump' })]);
  expect(graded.total).toBeLessThan(SAFETY_CAP);
  expect(graded.capped).toBe(false);
});

test('belief is carried from finding to finding in the order of the acts', () => {
  const clears = { clears: ['metering-control' as const] };
  const [alone, reading, drop] = [taken(plugged, 1, prime), taken(plugged, 3, prime), taken(plugged, 1, screen)];
  const before = grade([alone, judged(plugged, 2, alone, clears), rightCall(plugged, 3)]);
  const after = grade([
    drop,
    judged(plugged, 2, drop),
    reading,
    judged(plugged, 4, reading, clears),
    rightCall(plugged, 5),
  ]);
  // A prime pressure says nothing of the metering valve; once the screen's drop is known, nothing speaks for the valve.
  expect(before.findings[0]?.clears).toEqual([{ area: 'metering-control', right: false }]);
  expect(after.findings[1]?.clears).toEqual([{ area: 'metering-control', right: true }]);
});

test('a grade tells the truth, the minutes, the expert’s route and what the repair moves', () => {
  const graded = grade(goodWork());
  expect(graded.truth).toEqual({ cause: 'inlet-screen-plugged', severity: 0.8 });
  expect(graded.minutes).toBe(32);
  expect(graded.expertRoute.at(-1)).toMatchObject({ check: 'screen-drop', condition: 'full-load' });
  expect(graded.afterRepair.length).toBeGreaterThan(0);
});

test('an attempt without a call cannot be graded', () => {
  expect(() => grade(goodWork().slice(0, 4))).toThrow(/without a call/);
});
