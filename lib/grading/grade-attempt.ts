import type { Case } from '../cases/case';
import type { Catalogue } from '../catalogue';
import { beliefAtStart } from '../diagnosis/belief';
import { type Certificate, certify } from '../diagnosis/certificate';
import { type Particles, particlesOf } from '../diagnosis/particles';
import { byArea } from '../diagnosis/shares';
import { type RigState, rigState } from '../rig/rig-state';
import type { StoredAct } from './acts';
import { readingsMovedByRepair } from './after-repair';
import { type Grade, parts } from './grade';
import { type CallGrade, gradeCall } from './grade-call';
import { minutesOf } from './grade-route';
import { notesOf, pointsOf } from './mark';
import { actsOf, type Marking } from './marking';
import { type Rubric, STANDARD_RUBRIC } from './rubric';
import { totalOf } from './total';
import { judgeWork, marksOf, type Work } from './work';

/** What grading needs to know of a case, whatever was done on it. */
export interface KnownOfCase {
  particles: Particles;
  certificate: Certificate;
}

export function knownOf(theCase: Case, catalogue: Catalogue): KnownOfCase {
  const particles = particlesOf(theCase, catalogue);
  return { particles, certificate: certify(theCase, catalogue, particles) };
}

/**
 * Grades a whole attempt from its acts alone: the same acts under the same rubric give the same grade, whenever it is asked
 * for.
 *
 * @param known  Of the same case, where that was worked out already.
 * @throws RangeError when the acts hold no call.
 */
export function gradeAttempt(
  theCase: Case,
  catalogue: Catalogue,
  acts: readonly StoredAct[],
  rubric: Rubric = standardRubric(catalogue),
  known: KnownOfCase = knownOf(theCase, catalogue),
): Grade {
  const [call] = actsOf(acts, 'call');
  if (!call) throw new RangeError('An attempt without a call cannot be graded');
  const { particles, certificate } = known;
  const marking = { theCase, catalogue, rubric, particles };
  const healthy = healthyState(theCase, catalogue);
  const called = gradeCall(theCase, catalogue, healthy, call, rubric.call);
  const work = judgeWork(marking, acts);
  return {
    ...pointsFor(marking, work, called, certificate),
    ...told(work, certificate, particles),
    rubric: { id: rubric.id, version: rubric.version },
    hints: actsOf(acts, 'hint').length,
    truth: theCase.truth,
    callCorrect: called.correct,
    afterRepair: readingsMovedByRepair(theCase, catalogue, healthy),
  };
}

type Points = Pick<Grade, 'total' | 'capped' | 'score' | 'parts' | 'notes'>;

function pointsFor(marking: Marking, work: Work, called: CallGrade, { route }: Certificate): Points {
  const { rubric } = marking;
  const marks = marksOf(work, called, route, marking);
  const notes = parts.flatMap((part) => notesOf(part, marks[part], rubric.parts[part]));
  const graded = parts.map((part) => ({ part, points: pointsOf(notes, part), outOf: rubric.parts[part] }));
  return { ...totalOf(graded, work.events, rubric), parts: graded, notes };
}

type Told = Pick<Grade, 'minutes' | 'findings' | 'safetyEvents' | 'difficulty' | 'expertRoute' | 'course'>;

/** What was done and what the expert would have done, side by side. */
function told({ findings, steps, events }: Work, { route, difficulty }: Certificate, particles: Particles): Told {
  return {
    minutes: minutesOf(steps),
    findings: findings.map(({ grade }) => grade),
    safetyEvents: events,
    difficulty,
    expertRoute: route.steps.map(({ areas: _, ...step }) => step),
    course: {
      start: byArea(particles, beliefAtStart(particles)),
      steps: steps.map(({ grade }) => grade),
      expert: route.steps,
    },
  };
}

/** By what is marked. @param weights  What the parts are worth, where it is not what the rubric says. @throws RangeError without one. */
export function standardRubric({ rubrics }: Catalogue, weights?: Rubric['parts']): Rubric {
  const rubric = rubrics.get(STANDARD_RUBRIC);
  if (!rubric) throw new RangeError(`Content has no rubric ${STANDARD_RUBRIC}`);
  return weights ? { ...rubric, parts: weights } : rubric;
}

function healthyState({ rig, setting }: Case, { fuels }: Catalogue): RigState {
  const fuel = fuels.get(setting.fuel);
  if (!fuel) throw new RangeError(`Content has no fuel ${setting.fuel}`);
  return rigState(rig, setting, fuel);
}
