import type { GradedCase } from '@/lib/competency/pieces-of-case';
import type { Response } from '@/lib/competency/response';
import type { FindingGrade, Grade, Part } from '@/lib/grading/grade';
import type { Change } from '@/lib/regrading/change';
import { effectiveCase, type Given } from '@/lib/reviewing/effective';

/** Hand-made grades whose evidence can be worked out on paper. */

export const partWeights: Readonly<Record<Part, number>> = {
  verdicts: 25,
  reasons: 25,
  call: 30,
  route: 10,
  practice: 10,
};

export function aFindingGrade(changes: Partial<FindingGrade> = {}): FindingGrade {
  return {
    seq: 2,
    check: 'prime-hold',
    condition: 'key-on',
    quantity: 'pressure',
    expectedVerdict: 'fail',
    verdictRight: true,
    shown: 40_000,
    uncertainty: 500,
    limit: 'prime',
    limitRight: true,
    comparisonRight: true,
    dialRight: true,
    dialShare: 1,
    verdictShare: 1,
    reasonShare: 1,
    clears: [],
    suspects: [],
    ...changes,
  };
}

type Earned = Partial<Record<Part, number>>;

interface Done extends Partial<Pick<Grade, 'findings' | 'safetyEvents' | 'truth' | 'notes'>> {
  /** Points of each part; all of them where none are named. */
  earned?: Earned;
  right?: boolean;
  /** Checks of the expert's route. */
  route?: readonly string[];
  /** Checks that were read, from seq 1 in twos: a reading, then its finding. */
  read?: readonly string[];
  call?: GradedCase['call'];
  given?: readonly Given[];
  changes?: readonly Change[];
}

/** A case whose cause is a weak lift pump, called right. */
export function aGradedCase(done: Done = {}): GradedCase {
  const { earned = partWeights, right = true, findings = [aFindingGrade()], route = ['prime-hold'] } = done;
  const { read = findings.map(({ check }) => check), given = [], changes = [] } = done;
  const graded = (Object.keys(partWeights) as Part[]).map((part) => ({
    part,
    points: earned[part] ?? 0,
    outOf: partWeights[part],
  }));
  const grade: Grade = {
    total: graded.reduce((sum, { points }) => sum + points, 0),
    capped: false,
    parts: graded,
    truth: done.truth ?? { cause: 'lift-pump-weak', severity: 0.7 },
    callCorrect: { cause: right, area: right, repair: right, proof: right },
    minutes: 10,
    expertRoute: route.map((check) => ({ check, condition: 'key-on', instrument: 'dial', minutes: 5 })),
    findings,
    notes: done.notes ?? [],
    safetyEvents: done.safetyEvents ?? [],
    afterRepair: [],
  };
  return {
    grade,
    effective: effectiveCase(grade, changes, 39, given),
    readings: read.map((check, index) => ({ seq: 2 * index + 1, check })),
    call: done.call ?? { cause: right ? 'lift-pump-weak' : 'main-filter-plugged' },
  };
}

export const aResponse: Response = {
  work: 'attempt a',
  counts: true,
  hints: 0,
  exposure: 'case TRN-AAAA-AA',
  purpose: 'practice',
  at: 1_760_000_000_000,
  versions: { content: 'abc', generator: 2, rubric: 'standard 1' },
};
