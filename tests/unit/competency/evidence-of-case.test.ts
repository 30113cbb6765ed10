import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { evidenceOfCase } from '@/lib/competency/evidence-of-case';
import type { GradedCase } from '@/lib/competency/pieces-of-case';
import type { Part } from '@/lib/grading/grade';
import { catalogue } from '../../support/bench-rig';
import { aFindingGrade, aGradedCase, aResponse, partWeights } from '../../support/graded-case';

const bands: [number, number, number, number] = [25, 40, 60, 80];
const rule = { difficulty: { logits: 0.5, spread: 0.5 }, bands };
const of = (graded: GradedCase, response = aResponse) => evidenceOfCase(graded, rule, response, catalogue);
const on = (topic: string, graded: GradedCase) => of(graded).find((one) => one.topic === topic);
const topics = (graded: GradedCase) => of(graded).map(({ topic }) => topic);

const everyCase = ['safe-working-and-isolation', 'instruments-and-uncertainty', 'reasoning-and-repair-proof'];

describe('what a case tests', () => {
  test('the topic of its cause, and what every case practises', () => {
    expect(topics(aGradedCase()).sort()).toEqual([...everyCase, 'priming-and-lift-pump'].sort());
  });

  test('whatever was measured, though nothing is wrong there', () => {
    const findings = [aFindingGrade(), aFindingGrade({ seq: 4, check: 'main-filter-drop', expectedVerdict: 'pass' })];
    expect(on('filtration', aGradedCase({ findings }))).toMatchObject({
      score: 4,
      detail: { because: 'measured', findings: [4], share: 1 },
    });
  });

  test('a topic that a wrong call leads into', () => {
    const graded = aGradedCase({ right: false, earned: { ...partWeights, call: 0 } });
    expect(on('filtration', graded)).toMatchObject({ score: 0, detail: { because: 'wrong-call', findings: [] } });
  });

  test('what the expert measured and a wrong call passed over, and not what a right call passed over', () => {
    const passing = { route: ['air-in-fuel', 'prime-hold'], earned: { ...partWeights, call: 0 } };
    expect(on('suction-tank-and-air', aGradedCase({ ...passing, right: false }))).toMatchObject({
      score: 0,
      detail: { because: 'passed-over' },
    });
    expect(on('suction-tank-and-air', aGradedCase(passing))).toBeUndefined();
  });

  test('neither safe work nor instruments where nothing was touched', () => {
    const idle = aGradedCase({ findings: [], right: false, earned: {} });
    expect(topics(idle)).not.toContain('safe-working-and-isolation');
    expect(topics(idle)).not.toContain('instruments-and-uncertainty');
    expect(on('reasoning-and-repair-proof', idle)).toMatchObject({ score: 0 });
  });

  test('no instrument where only codes were read', () => {
    const codes = aFindingGrade({ check: 'trouble-codes', shown: null, uncertainty: null, dialRight: null });
    expect(topics(aGradedCase({ findings: [codes] }))).not.toContain('instruments-and-uncertainty');
  });
});

describe('how a topic is scored', () => {
  test('findings weigh what verdicts and reasons do, the call what calls do', () => {
    // Verdict right, reason not, call right: (25 + 0 + 30) / 80 = 0.6875, the third band.
    const graded = aGradedCase({ findings: [aFindingGrade({ reasonShare: 0 })] });
    expect(on('priming-and-lift-pump', graded)).toMatchObject({ score: 3, detail: { share: 55 / 80 } });
  });

  test('a lucky call without a reading of its own topic earns the call alone', () => {
    // 30 of 80 = 0.375, the first band.
    const graded = aGradedCase({ findings: [] });
    expect(on('priming-and-lift-pump', graded)).toMatchObject({ score: 1, detail: { share: 30 / 80 } });
  });

  test('where the expert needs no reading of the topic, those that led to the call stand in', () => {
    const findings = [aFindingGrade({ check: 'main-filter-drop', reasonShare: 0.5 })];
    const graded = aGradedCase({ findings, route: ['main-filter-drop'] });
    expect(on('priming-and-lift-pump', graded)?.detail.share).toBeCloseTo((25 + 12.5 + 30) / 80, 12);
  });

  test('a good part condemned costs the call, not what was measured well', () => {
    const findings = [aFindingGrade(), aFindingGrade({ seq: 4, check: 'main-filter-drop' })];
    const graded = aGradedCase({ findings, right: false, earned: { ...partWeights, call: 0 } });
    expect(on('filtration', graded)).toMatchObject({ score: 3, detail: { share: 50 / 80, because: 'wrong-call' } });
  });

  test('of two causes each counts by whether it was named', () => {
    const truth = { cause: 'lift-pump-weak', severity: 0.7, also: { cause: 'main-filter-plugged', severity: 0.7 } };
    const findings = [aFindingGrade(), aFindingGrade({ seq: 4, check: 'main-filter-drop' })];
    const graded = aGradedCase({ truth, findings, right: false, call: { cause: 'lift-pump-weak' } });
    expect(on('priming-and-lift-pump', graded)?.score).toBe(4);
    expect(on('filtration', graded)?.detail.share).toBeCloseTo(50 / 80, 12);
  });

  test('reasoning is route, reasons and proof', () => {
    // Reasons 0 of 25, route 10 of 10, proof 6 of 6.
    const graded = aGradedCase({ earned: { ...partWeights, reasons: 0 } });
    expect(on('reasoning-and-repair-proof', graded)?.detail.share).toBeCloseTo(16 / 41, 12);
  });

  test('instruments are dials, comparisons and what was chosen', () => {
    const notes = [{ part: 'practice' as const, code: 'off-scale', values: { seq: 1 }, points: -2 }];
    const findings = [
      aFindingGrade({ dialShare: 0.5 }),
      aFindingGrade({ seq: 4, expectedVerdict: 'cannot-tell', verdictShare: 0.7, dialShare: 1 }),
    ];
    // Readings (0.75 + 0.9) / 2; one of two instruments wrong.
    const share = on('instruments-and-uncertainty', aGradedCase({ findings, notes }))?.detail.share;
    expect(share).toBeCloseTo((0.825 + 0.5) / 2, 12);
  });

  test('steps stand around the difficulty', () => {
    expect(on('priming-and-lift-pump', aGradedCase())?.model).toEqual({
      kind: 'steps',
      steps: [-1, 0, 1, 2],
      spread: 0.5,
    });
  });
});

describe('something dangerous', () => {
  const safetyEvents = [{ seq: 1, code: 'high-pressure-jet' as const }];

  test('holds down the topics concerned, and is told of on all', () => {
    const findings = [aFindingGrade({ check: 'high-pressure-fitting' }), aFindingGrade({ seq: 4 })];
    const graded = aGradedCase({ findings, safetyEvents });
    expect(on('safe-working-and-isolation', graded)?.score).toBe(1);
    expect(on('high-pressure-and-leakage', graded)?.score).toBe(1);
    expect(on('priming-and-lift-pump', graded)?.score).toBe(4);
    expect(of(graded).every((one) => one.safetyEvents === 1)).toBe(true);
  });

  test('no longer holds down once somebody gave practice its points, and is told of all the same', () => {
    const graded = aGradedCase({ safetyEvents, given: [{ part: 'practice', points: 10 }] });
    expect(on('safe-working-and-isolation', graded)).toMatchObject({ score: 4, safetyEvents: 1 });
  });
});

describe('what people changed', () => {
  test('points of a part count for each finding', () => {
    const given = [{ part: 'verdicts' as const, points: 0 }];
    expect(on('priming-and-lift-pump', aGradedCase({ given }))?.detail.share).toBeCloseTo(55 / 80, 12);
  });

  test('other weights weigh otherwise', () => {
    const weights = { verdicts: 50, reasons: 0, call: 50, route: 0, practice: 0 };
    const graded = aGradedCase({
      findings: [aFindingGrade({ reasonShare: 0, verdictShare: 0.5 })],
      changes: [{ kind: 'weights', weights }],
    });
    expect(on('priming-and-lift-pump', graded)?.detail.share).toBeCloseTo(0.75, 12);
    expect(on('safe-working-and-isolation', graded)?.score).toBe(4);
  });

  test('what is withdrawn counts no more', () => {
    expect(of(aGradedCase(), { ...aResponse, counts: false }).map(({ counts }) => counts)).not.toContain(true);
  });
});

test('a grade from before shares were kept is read by what was right', () => {
  const { dialShare: _, verdictShare: __, reasonShare: ___, ...old } = aFindingGrade({ limitRight: false });
  expect(on('priming-and-lift-pump', aGradedCase({ findings: [old] }))?.detail.share).toBeCloseTo(
    (25 + 12.5 + 30) / 80,
    12,
  );
});

describe('whatever the grade', () => {
  const checks = [...catalogue.checks.keys()];
  const share = fc.double({ min: 0, max: 1, noNaN: true });
  const finding = fc.record({
    check: fc.constantFrom(...checks),
    verdictShare: share,
    reasonShare: share,
    dialShare: share,
  });
  const graded = fc.record({
    findings: fc.array(finding, { maxLength: 6 }),
    route: fc.array(fc.constantFrom(...checks), { maxLength: 5 }),
    right: fc.boolean(),
    earned: fc.record(
      Object.fromEntries(
        (Object.keys(partWeights) as Part[]).map((part) => [part, share.map((one) => one * partWeights[part])]),
      ),
    ),
    cause: fc.constantFrom(...catalogue.causes.keys()),
    unsafe: fc.boolean(),
  });
  const built = ({ findings, cause, unsafe, ...rest }: typeof graded extends fc.Arbitrary<infer T> ? T : never) =>
    aGradedCase({
      ...rest,
      findings: findings.map((one, index) => aFindingGrade({ ...one, seq: 2 * index + 2 })),
      call: { cause },
      safetyEvents: unsafe && findings.length > 0 ? [{ seq: 1, code: 'cranked-low-range' }] : [],
    });

  test('one response a topic, scored within 0…4, its share within 0…1', () => {
    fc.assert(
      fc.property(graded, (one) => {
        const evidence = of(built(one));
        expect(new Set(evidence.map(({ topic }) => topic)).size).toBe(evidence.length);
        for (const { score, detail } of evidence) {
          expect([0, 1, 2, 3, 4]).toContain(score);
          expect(detail.share).toBeGreaterThanOrEqual(0);
          expect(detail.share).toBeLessThanOrEqual(1);
        }
      }),
    );
  });

  test('the order of the findings does not matter', () => {
    fc.assert(
      fc.property(graded, (one) => {
        const forth = built(one);
        const back = { ...forth, grade: { ...forth.grade, findings: [...forth.grade.findings].reverse() } };
        const plain = (evidence: ReturnType<typeof of>) =>
          evidence.map(({ topic, score, detail }) => ({ topic, score, findings: detail.findings }));
        expect(plain(of(back))).toEqual(plain(of(forth)));
      }),
    );
  });

  test('safe work never scores above 1 once something dangerous was done', () => {
    fc.assert(
      fc.property(graded, (one) => {
        const forth = built({ ...one, unsafe: true });
        const safe = on('safe-working-and-isolation', forth);
        if (safe && forth.grade.safetyEvents.length > 0) expect(safe.score).toBeLessThanOrEqual(1);
      }),
    );
  });
});
