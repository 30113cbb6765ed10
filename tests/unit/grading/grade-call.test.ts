import { describe, expect, test } from 'vitest';
import type { Case } from '@/lib/cases/case';
import { seedFromWord } from '@/lib/cases/case-code';
import { caseFromSeed } from '@/lib/cases/case-from-seed';
import type { Answer, CallAct } from '@/lib/grading/acts';
import { gradeCall } from '@/lib/grading/grade-call';
import { shareOf } from '@/lib/grading/mark';
import { catalogue, causeOf, stateOf } from '../../support/bench-rig';
import { standardRubric } from '../../support/marking';
import { aCase, aNoticedCase, rightCall } from '../../support/worked-attempt';

const plugged = aCase({ cause: 'inlet-screen-plugged' });

/** A call's grade, with the share that it earns. */
function judged(theCase: Case, call: CallAct, weights = standardRubric().call) {
  const grade = gradeCall(theCase, catalogue, stateOf(theCase.rig, theCase.setting), call, weights);
  return { ...grade, share: shareOf(grade.marks) };
}

function graded(changes: Partial<CallAct> = {}, theCase = plugged) {
  return judged(theCase, rightCall(theCase, 9, changes));
}

function codes(changes: Partial<CallAct>, theCase = plugged): string[] {
  return graded(changes, theCase).marks.map(({ code }) => code);
}

test.each([...catalogue.causes.keys()])('cause, repair and proof of %s earn everything', (cause) => {
  const grade = graded({}, aNoticedCase(cause));
  expect(grade.share).toBeCloseTo(1, 12);
  expect(grade.correct).toEqual({ cause: true, area: true, repair: true, proof: true });
  expect(grade.marks.map(({ code }) => code)).toEqual(['cause-right', 'repair-right', 'proof-right']);
});

test('the right area with the wrong cause earns part of the cause’s marks', () => {
  const call = { cause: 'main-filter-plugged', repair: 'replace-main-filter' };
  expect(codes(call)).toEqual(['area-right', 'repair-wrong', 'proof-right']);
  const [area, wrong] = [graded(call).share, graded({ ...call, cause: 'injector-leakage-high' }).share];
  expect(area).toBeGreaterThan(wrong);
  expect(area).toBeLessThan(graded({ ...call, cause: 'inlet-screen-plugged' }).share);
});

test('what cause, area, repair and proof weigh is the rubric’s to say', () => {
  const weights = { cause: 0.2, areaOnly: 0.1, repair: 0.3, proof: 0.5 };
  const shares = (changes: Partial<CallAct>) =>
    judged(plugged, rightCall(plugged, 9, changes), weights).marks.map(({ share, most }) => [share, most]);
  expect(shares({ cause: 'main-filter-plugged' })).toEqual([
    [0.1, 0.2],
    [0.3, 0.3],
    [0.5, 0.5],
  ]);
});

test('the wrong area earns nothing for the cause', () => {
  expect(codes({ cause: 'rail-sensor-reads-high' })).toEqual(['cause-wrong', 'repair-right', 'proof-right']);
});

test('a repair that the cause does not need is wrong', () => {
  expect(codes({ repair: 'replace-gear-pump' })).toEqual(['cause-right', 'repair-wrong', 'proof-right']);
});

test('a check that the fault does not move proves nothing', () => {
  expect(codes({ proof: { check: 'prime-pressure', condition: 'key-on' } })).toContain('proof-wrong');
});

test('codes that are gone prove no repair', () => {
  expect(plugged.workOrder.codes.length).toBeGreaterThan(0);
  expect(codes({ proof: { check: 'trouble-codes', condition: 'key-on' } })).toContain('proof-wrong');
});

test('a check that nobody judges proves nothing', () => {
  expect(codes({ proof: { check: 'rail-pressure', condition: 'key-on' } })).toContain('proof-wrong');
});

test('proof is computed: any check that fails before the repair and passes after it will do', () => {
  const { points, rig } = plugged;
  const railShare = points['full-load'].values.railShare ?? 1;
  const limit = rig.limits.find(({ id }) => id === 'sensed-rail-pressure-full-load');
  // At this severity the rail falls under its limit at full load, so the rail pressure proves the screen as well.
  expect(railShare * 180).toBeLessThan(limit?.min ?? 0);
  expect(codes({ proof: { check: 'rail-pressure', condition: 'full-load' } })).toContain('proof-right');
});

test('a check that the repaired rig fails as well proves nothing', () => {
  const { rig } = plugged;
  const limits = rig.limits.map((line) => (line.check === 'screen-drop' ? { ...line, max: 0.001 } : line));
  expect(codes({}, { ...plugged, rig: { ...rig, limits } })).toContain('proof-wrong');
});

test('where nothing is broken any check that passes shows it', () => {
  const sound = aCase({ cause: 'no-fuel-fault' });
  expect(codes({ proof: { check: 'prime-pressure', condition: 'key-on' } }, sound)).toContain('proof-right');
});

test('a check that this rig does not have proves nothing', () => {
  expect(codes({ proof: { check: 'supply-pump-pressure', condition: 'idle' } })).toContain('proof-wrong');
});

test('a check that content does not have proves nothing', () => {
  expect(codes({ proof: { check: 'compression', condition: 'idle' } })).toContain('proof-wrong');
});

describe('two causes', () => {
  const both = caseFromSeed(
    {
      rig: 'tern-13',
      seed: seedFromWord('alder-17'),
      chosen: { cause: 'main-filter-plugged', severity: 900 },
      also: { cause: 'relief-valve-leaking', severity: 300 },
    },
    catalogue,
  );
  const filter = answerTo('main-filter-plugged');
  const valve = answerTo('relief-valve-leaking');
  const pump: Answer = { ...answerTo('gear-pump-worn'), proof: { check: 'prime-pressure', condition: 'key-on' } };

  function answerTo(cause: string): Answer {
    const { repairs, provenBy } = causeOf(cause);
    const [repair, proof] = [repairs[0], provenBy[0]];
    if (!repair || !proof) throw new Error(`No repair or proof for ${cause}`);
    return { cause, repair: repair.id, proof };
  }

  const called = (first: Answer, also?: Answer, theCase = both) => {
    const call: CallAct = { kind: 'call', ...first, ...(also && { also }) };
    return judged(theCase, call);
  };

  test('both named earn everything, in either order', () => {
    for (const grade of [called(filter, valve), called(valve, filter)]) {
      expect(grade.share).toBeCloseTo(1, 12);
      expect(grade.correct).toEqual({ cause: true, area: true, repair: true, proof: true });
      expect(grade.marks.map(({ code }) => code)).toContain('two-causes');
    }
  });

  test('one of the two earns half, whichever it is, and is not the right cause', () => {
    for (const grade of [called(filter), called(valve)]) {
      expect(grade.share).toBeCloseTo(0.5, 12);
      expect(grade.correct.cause).toBe(false);
    }
  });

  test('one right beside a wrong one earns no more than the half, in either order', () => {
    for (const grade of [called(filter, pump), called(pump, filter)]) {
      expect(grade.share).toBeCloseTo(0.5, 12);
      expect(grade.correct).toEqual({ cause: false, area: false, repair: false, proof: false });
    }
  });

  test('the same cause twice counts once', () => {
    expect(called(filter, filter).correct.cause).toBe(false);
    expect(called(filter, filter).share).toBeLessThan(0.8);
  });

  test('one too many on a case with one cause costs as much as one too few', () => {
    const grade = called(rightCall(plugged, 1), pump, plugged);
    expect(grade.share).toBeCloseTo(0.5, 12);
    expect(grade.correct.cause).toBe(false);
  });

  test('neither earns nothing', () => {
    expect(called(pump).share).toBe(0);
  });
});
