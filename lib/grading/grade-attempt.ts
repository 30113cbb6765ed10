import type { Case } from '../cases/case';
import type { Catalogue } from '../catalogue';
import { beliefAtStart } from '../diagnosis/belief';
import { type Certificate, certify } from '../diagnosis/certificate';
import { particlesOf } from '../diagnosis/particles';
import { byArea } from '../diagnosis/shares';
import { type RigState, rigState } from '../rig/rig-state';
import type { StoredAct } from './acts';
import { readingsMovedByRepair } from './after-repair';
import { type Grade, type Part, parts } from './grade';
import { type CallGrade, gradeCall } from './grade-call';
import { gradeFindings, reasonMarks, verdictMarks } from './grade-findings';
import { gradePractice } from './grade-practice';
import { gradeRestoring } from './grade-restoring';
import { gradeRoute } from './grade-route';
import { judgeSteps } from './judge-steps';
import { type Mark, notesOf, pointsOf } from './mark';
import { actsOf, type Marking } from './marking';
import { type Rubric, STANDARD_RUBRIC } from './rubric';
import { safetyEvents } from './safety-events';
import { totalOf } from './total';

/**
 * Grades a whole attempt from its acts alone: the same acts under the same rubric give the same grade, whenever it is asked
 * for.
 *
 * @throws RangeError when the acts hold no call.
 */
export function gradeAttempt(
  theCase: Case,
  catalogue: Catalogue,
  acts: readonly StoredAct[],
  rubric: Rubric = standardRubric(catalogue),
): Grade {
  const [call] = actsOf(acts, 'call');
  if (!call) throw new RangeError('An attempt without a call cannot be graded');
  const marking: Marking = { theCase, catalogue, rubric, particles: particlesOf(theCase, catalogue) };
  const certificate = certify(theCase, catalogue, marking.particles);
  const healthy = healthyState(theCase, catalogue);
  const called = gradeCall(theCase, catalogue, healthy, call, rubric.call);
  const { marks, ...worked } = gradeWork(marking, acts, called, certificate);
  const notes = parts.flatMap((part) => notesOf(part, marks[part], rubric.parts[part]));
  const graded = parts.map((part) => ({ part, points: pointsOf(notes, part), outOf: rubric.parts[part] }));
  return {
    ...totalOf(graded, worked.safetyEvents, rubric),
    rubric: { id: rubric.id, version: rubric.version },
    hints: actsOf(acts, 'hint').length,
    difficulty: certificate.difficulty,
    parts: graded,
    truth: theCase.truth,
    callCorrect: called.correct,
    expertRoute: certificate.route.steps.map(({ areas: _, ...step }) => step),
    notes,
    afterRepair: readingsMovedByRepair(theCase, catalogue, healthy),
    ...worked,
  };
}

type Worked = Pick<Grade, 'minutes' | 'findings' | 'safetyEvents' | 'course'>;

/** Everything up to the call, and what it earns. */
function gradeWork(
  marking: Marking,
  acts: readonly StoredAct[],
  called: CallGrade,
  { route: expert }: Certificate,
): Worked & { marks: Record<Part, readonly Mark[]> } {
  const { theCase, catalogue, particles, rubric } = marking;
  const readings = actsOf(acts, 'reading');
  const findings = gradeFindings(marking, acts);
  const steps = judgeSteps(marking, readings);
  const events = safetyEvents(readings, theCase, catalogue);
  const route = gradeRoute(steps, catalogue, expert.minutes, called, rubric.route);
  const restoring = actsOf(acts, 'call').flatMap((call) =>
    gradeRestoring(readings, call, catalogue, rubric.practice.costs),
  );
  const practice = gradePractice({ readings, steps, events, called, restoring }, catalogue, rubric.practice);
  return {
    minutes: route.minutes,
    findings: findings.map(({ grade }) => grade),
    safetyEvents: events,
    course: {
      start: byArea(particles, beliefAtStart(particles)),
      steps: steps.map(({ grade }) => grade),
      expert: expert.steps,
    },
    marks: {
      verdicts: verdictMarks(findings, rubric),
      reasons: reasonMarks(findings, rubric),
      call: called.marks,
      route: route.marks,
      practice,
    },
  };
}

function standardRubric({ rubrics }: Catalogue): Rubric {
  const rubric = rubrics.get(STANDARD_RUBRIC);
  if (!rubric) throw new RangeError(`Content has no rubric ${STANDARD_RUBRIC}`);
  return rubric;
}

function healthyState({ rig, setting }: Case, { fuels }: Catalogue): RigState {
  const fuel = fuels.get(setting.fuel);
  if (!fuel) throw new RangeError(`Content has no fuel ${setting.fuel}`);
  return rigState(rig, setting, fuel);
}
