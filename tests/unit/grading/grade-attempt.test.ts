import { expect, test } from 'vitest';
import type { StoredAct } from '@/lib/grading/acts';
import { parts } from '@/lib/grading/grade';
import { gradeAttempt } from '@/lib/grading/grade-attempt';
import { pointsOf as sumOfNotes } from '@/lib/grading/mark';
import { catalogue } from '../../support/bench-rig';
import { standardRubric } from '../../support/marking';
import { aCase, aWorkedAttempt, judged, rightCall, taken } from '../../support/worked-attempt';

const plugged = aCase({ cause: 'inlet-screen-plugged' });
const screen = { check: 'screen-drop', condition: 'full-load', instrument: 'differential-digital-0-1500-kpa' } as const;
const prime = { check: 'prime-pressure', condition: 'key-on', instrument: 'dial-0-30-psi' } as const;

const bus = { check: 'rail-pressure', condition: 'full-load', instrument: 'data-display' } as const;
const standard = standardRubric();

/** Prime pressure, the rail on the bus and screen drop read, judged and understood; the screen called, all put right. */
function goodWork(): StoredAct[] {
  const [first, second, third] = [taken(plugged, 1, prime), taken(plugged, 3, bus), taken(plugged, 5, screen)];
  const filtration = { suspects: ['filtration' as const] };
  return [
    first,
    judged(plugged, 2, first, { ...filtration, clears: ['priming', 'low-pressure-supply'] }),
    second,
    judged(plugged, 4, second, filtration),
    third,
    judged(plugged, 6, third, filtration),
    rightCall(plugged, 7, { restored: ['take-gauge-off', 'prime', 'look-for-leaks'] }),
  ];
}

function grade(acts: readonly StoredAct[], rubric = standard) {
  return gradeAttempt(plugged, catalogue, acts, rubric);
}

/** Graded once: every grading simulates all that could be wrong. */
const good = grade(goodWork());

function pointsOf(acts: readonly StoredAct[], part: (typeof parts)[number]) {
  return grade(acts).parts.find((line) => line.part === part)?.points;
}

test('good work earns full marks in every part', () => {
  const { total, capped, parts: lines } = good;
  expect(lines).toEqual(parts.map((part) => ({ part, points: standard.parts[part], outOf: standard.parts[part] })));
  expect({ total, capped }).toEqual({ total: 100, capped: false });
});

test('grading again gives the identical grade', () => {
  const acts = aWorkedAttempt(plugged);
  expect(JSON.stringify(grade(acts))).toBe(JSON.stringify(grade(structuredClone(acts))));
});

test('another rubric weighs the same work otherwise', () => {
  const rubric = standardRubric({ parts: { verdicts: 0, reasons: 0, call: 100, route: 0, practice: 0 } });
  expect(grade(goodWork(), rubric).total).toBe(100);
  expect(grade([rightCall(plugged, 1, { cause: 'gear-pump-worn' })], rubric).total).toBe(40);
});

test('a grade says by which rubric it was given', () => {
  expect(good.rubric).toEqual({ id: 'standard', version: standard.version });
});

test('one finding earns half of verdicts and reasons, and says why', () => {
  const acts = goodWork().filter(({ seq }) => seq !== 4 && seq !== 6);
  expect(pointsOf(acts, 'verdicts')).toBe(standard.parts.verdicts / 2);
  expect(pointsOf(acts, 'reasons')).toBe(standard.parts.reasons / 2);
  expect(grade(acts).notes).toContainEqual({
    part: 'verdicts',
    code: 'few-findings',
    values: { count: 1, expected: 2, outOf: 12.5 },
    points: 0,
  });
});

test('a finding that names no area keeps two thirds of its reason', () => {
  const acts = goodWork().map((act) => (act.kind === 'finding' ? { ...act, clears: [], suspects: [] } : act));
  expect(pointsOf(acts, 'reasons')).toBeCloseTo((2 / 3) * standard.parts.reasons, 1);
});

test('a lost gauge holds the total in the first band whatever else was done well', () => {
  const lost = taken(plugged, 7, { ...prime, condition: 'idle' });
  expect(lost.shown).toEqual([{ kind: 'destroyed', quantity: 'prime-pressure' }]);
  const graded = grade([...goodWork().slice(0, 6), lost, rightCall(plugged, 8)]);
  expect(graded).toMatchObject({ total: standard.safetyCap, capped: true, score: 1, safetyEvents: [{ seq: 7 }] });
  expect(graded.notes.map(({ code }) => code)).toContain('instrument-destroyed');
});

test('a safety event on work that earns less than the cap caps nothing', () => {
  const lost = taken(plugged, 1, { ...prime, condition: 'idle' });
  const graded = grade([lost, rightCall(plugged, 2, { cause: 'gear-pump-worn', repair: 'replace-gear-pump' })]);
  expect(graded.total).toBeLessThan(standard.safetyCap);
  expect(graded).toMatchObject({ capped: false, score: 0 });
});

test('belief is carried from finding to finding in the order of the acts', () => {
  const { findings, course } = good;
  const filtration = [course?.start, ...findings.map(({ areas }) => areas)].map((areas) => areas?.filtration ?? 0);
  expect(findings[1]?.suspects[0]?.before).toBe(filtration[1]);
  expect(findings[2]?.suspects[0]).toEqual({
    area: 'filtration',
    right: true,
    before: filtration[2],
    after: filtration[3],
  });
});

test('a grade tells the truth, the minutes, both courses and what the repair moves', () => {
  const graded = good;
  expect(graded.truth).toEqual({ cause: 'inlet-screen-plugged', severity: 0.8 });
  expect(graded.minutes).toBe(38);
  expect(graded.course?.steps.map(({ seq }) => seq)).toEqual([1, 3, 5]);
  expect(graded.course?.expert.map(({ areas: _, ...step }) => step)).toEqual(graded.expertRoute);
  expect(graded.expertRoute.at(-1)).toMatchObject({ check: 'screen-drop', condition: 'full-load' });
  expect(graded.afterRepair.length).toBeGreaterThan(0);
  expect(Number.isFinite(graded.difficulty)).toBe(true);
});

test('hints are counted and cost nothing by themselves', () => {
  const hint: StoredAct = { seq: 7, kind: 'hint', next: null };
  const [call] = goodWork().slice(-1);
  const hinted = grade([...goodWork().slice(0, 6), hint, { ...(call as StoredAct), seq: 8 }]);
  expect(hinted).toMatchObject({ hints: 1, total: 100 });
  expect(good.hints).toBe(0);
});

test('a call from before putting right was asked for loses nothing', () => {
  const asked = grade([...goodWork().slice(0, 6), rightCall(plugged, 7, { restored: [] })]);
  expect(pointsOf([...goodWork().slice(0, 6), rightCall(plugged, 7)], 'practice')).toBe(standard.parts.practice);
  expect(asked.notes.filter(({ code }) => code === 'left-undone')).toHaveLength(3);
});

test('the points of a part are the sum of its notes’ points', () => {
  for (const { parts: lines, notes } of [good, grade(aWorkedAttempt(plugged)), grade([rightCall(plugged, 1)])]) {
    for (const { part, points } of lines) expect(sumOfNotes(notes, part)).toBe(points);
  }
});

test('an attempt without a call cannot be graded', () => {
  expect(() => grade(goodWork().slice(0, 6))).toThrow(/without a call/);
});
