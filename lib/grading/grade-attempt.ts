import type { Case } from '../cases/case';
import type { Catalogue } from '../catalogue';
import { beliefFromWorkOrder } from '../diagnosis/belief';
import { expertRoute } from '../diagnosis/expert-route';
import { type Particle, simulateParticles } from '../diagnosis/particles';
import { type RigState, rigState } from '../rig/rig-state';
import type { CallAct, ReadingAct, StoredAct } from './acts';
import { readingsMovedByRepair } from './after-repair';
import {
  defaultRubric,
  type FindingGrade,
  type Grade,
  type Note,
  parts,
  type Rubric,
  SAFETY_CAP,
  type Score,
} from './grade';
import { gradeCall } from './grade-call';
import { beliefAfter, gradeFinding, judgedFinding } from './grade-finding';
import { gradePractice, safetyEvents } from './grade-practice';
import { gradeRoute } from './grade-route';

/** Fewer findings than this do not earn full marks for verdicts and reasons: one lucky reading is no diagnosis. */
const FINDINGS_EXPECTED = 2;

/**
 * Grades a whole attempt from its acts alone: the same acts give the same grade, whenever it is asked for.
 *
 * @throws RangeError when the acts hold no call.
 */
export function gradeAttempt(
  theCase: Case,
  catalogue: Catalogue,
  acts: readonly StoredAct[],
  rubric: Rubric = defaultRubric,
): Grade {
  const call = acts.find((act): act is CallAct & { seq: number } => act.kind === 'call');
  if (!call) throw new RangeError('An attempt without a call cannot be graded');
  const particles = simulateParticles(theCase.rig, theCase.setting, catalogue);
  const findings = gradeFindings(theCase, catalogue, particles, acts);
  const readings = acts.filter((act): act is ReadingAct & { seq: number } => act.kind === 'reading');
  const healthy = healthyState(theCase, catalogue);
  const called = gradeCall(theCase, catalogue, healthy, call);
  const expert = expertRoute(
    theCase.rig,
    catalogue.checks,
    particles,
    beliefFromWorkOrder(particles, theCase.workOrder),
    theCase,
    theCase.workOrder.codes.length,
    catalogue.causes.get(theCase.truth.cause)?.provenBy ?? [],
  );
  const events = safetyEvents(readings);
  const route = gradeRoute(readings, catalogue, expert, called);
  const practice = gradePractice(readings, catalogue, called);
  const scores = [scoreVerdicts(findings), scoreReasons(findings), called, route, practice];
  const graded = parts.map((part, index) => ({
    part,
    points: Math.round(rubric[part] * (scores[index]?.share ?? 0) * 10) / 10,
    outOf: rubric[part],
  }));
  const sum = graded.reduce((total, { points }) => total + points, 0);
  return {
    total: Math.round(events.length > 0 ? Math.min(sum, SAFETY_CAP) : sum),
    capped: events.length > 0 && sum > SAFETY_CAP,
    parts: graded,
    truth: theCase.truth,
    callCorrect: called.correct,
    minutes: route.minutes,
    expertRoute: expert,
    findings,
    notes: scores.flatMap(({ notes }) => notes),
    safetyEvents: events,
    afterRepair: readingsMovedByRepair(theCase, catalogue, healthy),
  };
}

function gradeFindings(
  theCase: Case,
  catalogue: Catalogue,
  particles: readonly Particle[],
  acts: readonly StoredAct[],
): FindingGrade[] {
  let belief = beliefFromWorkOrder(particles, theCase.workOrder);
  const grades: FindingGrade[] = [];
  for (const act of acts) {
    if (act.kind !== 'finding') continue;
    const reading = acts.find((other) => other.kind === 'reading' && other.seq === act.reading);
    const judged = judgedFinding(act.seq, act, reading as ReadingAct | undefined, catalogue);
    if (!judged) continue;
    const after = beliefAfter(judged, belief, particles);
    grades.push(gradeFinding(judged, theCase, particles, belief, after));
    belief = after;
  }
  return grades;
}

function healthyState({ rig, setting }: Case, { fuels }: Catalogue): RigState {
  const fuel = fuels.get(setting.fuel);
  if (!fuel) throw new RangeError(`Content has no fuel ${setting.fuel}`);
  return rigState(rig, setting, fuel);
}

function scoreVerdicts(findings: readonly FindingGrade[]): Score {
  const right = findings.filter(({ verdictRight }) => verdictRight).length;
  return { share: share(right, findings.length), notes: coverage(findings, 'verdicts', right) };
}

function scoreReasons(findings: readonly FindingGrade[]): Score {
  const earned = findings.reduce((sum, finding) => sum + reasonShare(finding), 0);
  return { share: share(earned, findings.length), notes: coverage(findings, 'reasons', Math.round(earned * 10) / 10) };
}

/** Limit, comparison and implication weigh alike. */
function reasonShare({ limitRight, comparisonRight, clears, suspects }: FindingGrade): number {
  const named = [...clears, ...suspects];
  const implication = named.length > 0 ? named.filter(({ right }) => right).length / named.length : 0;
  return (Number(limitRight) + Number(comparisonRight) + implication) / 3;
}

function share(earned: number, count: number): number {
  return earned / Math.max(count, FINDINGS_EXPECTED);
}

function coverage(findings: readonly FindingGrade[], part: 'verdicts' | 'reasons', earned: number): Note[] {
  const code = findings.length < FINDINGS_EXPECTED ? 'few-findings' : `${part}-earned`;
  return [{ part, code, values: { earned, count: findings.length, expected: FINDINGS_EXPECTED } }];
}
