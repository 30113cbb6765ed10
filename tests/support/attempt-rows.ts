import type { NewAct } from '@/db/queries/acts';
import type { Attempt } from '@/db/queries/attempts';
import type { NewCall } from '@/db/queries/calls';
import type { CallAct, FindingAct, ReadingAct } from '@/lib/grading/acts';
import type { Grade } from '@/lib/grading/grade';

const noon = new Date(Date.UTC(2026, 0, 1, 12));

export function anAttempt(changes: Partial<Attempt> = {}): Attempt {
  return {
    id: 'attempt-a',
    learnerId: 'ada',
    organizationId: null,
    key: 'start-a',
    caseCode: 'AAA-AAAA-AA',
    generatorVersion: 1,
    contentHash: 'abc',
    demo: false,
    difficulty: null,
    features: null,
    coached: false,
    createdAt: noon,
    ...changes,
  };
}

export function aReading(changes: Partial<ReadingAct> = {}): ReadingAct {
  return {
    kind: 'reading',
    check: 'prime-pressure',
    condition: 'key-on',
    instrument: 'dial',
    shown: [{ kind: 'value', quantity: 'pressure', value: 6.5, unit: 'psi' }],
    ...changes,
  };
}

export function aFinding(changes: Partial<FindingAct> = {}): FindingAct {
  return {
    kind: 'finding',
    reading: 1,
    quantity: 'pressure',
    entered: { value: 6.5, unit: 'psi' },
    verdict: 'fail',
    comparison: 'below',
    limit: 'prime',
    clears: [],
    suspects: ['priming'],
    words: '',
    ...changes,
  };
}

export function anAct(changes: Partial<NewAct> = {}): NewAct {
  return { attemptId: 'attempt-a', seq: 1, key: 'act-1', body: aReading(), createdAt: noon, ...changes };
}

export const aCall: CallAct = {
  kind: 'call',
  cause: 'lift-pump-weak',
  repair: 'replace-lift-pump',
  proof: { check: 'prime-pressure', condition: 'key-on' },
};

export const aGrade: Grade = {
  total: 71,
  capped: false,
  parts: [],
  truth: { cause: 'lift-pump-weak', severity: 0.7 },
  callCorrect: { cause: true, area: true, repair: true, proof: true },
  minutes: 12,
  expertRoute: [],
  findings: [],
  notes: [],
  safetyEvents: [],
  afterRepair: [],
};

export function aNewCall(changes: Partial<NewCall> = {}): NewCall {
  return { attemptId: 'attempt-a', seq: 1, key: 'call-1', body: aCall, grade: aGrade, calledAt: noon, ...changes };
}
