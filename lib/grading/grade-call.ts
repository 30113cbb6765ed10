import type { Case } from '../cases/case';
import type { Catalogue } from '../catalogue';
import { trueValue } from '../checks/quantity';
import type { RigState } from '../rig/rig-state';
import type { Answer, CallAct } from './acts';
import { trueVerdict } from './after-repair';
import type { Mark } from './mark';
import type { NoteCode } from './note-codes';
import type { Rubric } from './rubric';

export interface CallGrade {
  marks: readonly Mark[];
  /** Right for every cause there is, where there are two. */
  correct: { cause: boolean; area: boolean; repair: boolean; proof: boolean };
  /** At least one cause was looked for in its own area. */
  onTheWay: boolean;
  /** Repairs that mend none of what is wrong. */
  wrongRepairs: readonly string[];
}

type Correct = CallGrade['correct'];

type Weights = Rubric['call'];

const NOTHING_RIGHT: Correct = { cause: false, area: false, repair: false, proof: false };

/**
 * Grades cause, repair and the check that is to prove it; whether that would is computed on the repaired rig. With two
 * causes each counts half, and an answer too many counts like one too few.
 */
export function gradeCall(
  theCase: Case,
  catalogue: Catalogue,
  healthy: RigState,
  call: CallAct,
  weights: Weights,
): CallGrade {
  const { cause, also } = theCase.truth;
  const truths = also ? [cause, also.cause] : [cause];
  const answers: Answer[] = call.also ? [call, call.also] : [call];
  const judgeOne = (truth: string, answer: Answer) => judge(theCase, catalogue, healthy, truth, answer);
  const parts = matched(truths, answers, judgeOne, weights);
  const every = (what: keyof Correct) => parts.every((part) => part[what]);
  const correct = { cause: every('cause'), area: every('area'), repair: every('repair'), proof: every('proof') };
  const mending = truths.flatMap((truth) => catalogue.causes.get(truth)?.repairs.map(({ id }) => id) ?? []);
  return {
    marks: marksOn(correct, parts, weights),
    correct,
    onTheWay: parts.some(({ area }) => area),
    wrongRepairs: answers.map(({ repair }) => repair).filter((repair) => !mending.includes(repair)),
  };
}

/** Each truth with the answer that suits it better; what is left over on either side is wrong. */
function matched(
  truths: readonly string[],
  answers: readonly Answer[],
  judgeOne: (truth: string, answer: Answer) => Correct,
  weights: Weights,
): Correct[] {
  const size = Math.max(truths.length, answers.length);
  const pair = (shift: number) =>
    Array.from({ length: size }, (_, index) => {
      const [truth, answer] = [truths[index], answers[(index + shift) % size]];
      return truth !== undefined && answer !== undefined ? judgeOne(truth, answer) : NOTHING_RIGHT;
    });
  const total = (parts: Correct[]) => parts.reduce((sum, part) => sum + earnedBy(part, weights), 0);
  const [straight, crossed] = [pair(0), pair(1)];
  return total(crossed) > total(straight) ? crossed : straight;
}

function judge(
  theCase: Case,
  { causes, checks }: Catalogue,
  healthy: RigState,
  truthId: string,
  answer: Answer,
): Correct {
  const truth = causes.get(truthId);
  return {
    cause: answer.cause === truthId,
    area: causes.get(answer.cause)?.area === truth?.area,
    repair: truth?.repairs.some(({ id }) => id === answer.repair) ?? false,
    proof: proves(theCase, checks, healthy, answer),
  };
}

function earnedBy(part: Correct, weights: Weights): number {
  const { cause, repair, proof } = earnedIn(part, weights);
  return cause + repair + proof;
}

/** What each of the three answers earns; the right area with the wrong cause earns part of the cause's marks. */
function earnedIn(
  { cause, area, repair, proof }: Correct,
  weights: Weights,
): Record<'cause' | 'repair' | 'proof', number> {
  return {
    cause: cause ? weights.cause : area ? weights.areaOnly : 0,
    repair: repair ? weights.repair : 0,
    proof: proof ? weights.proof : 0,
  };
}

/**
 * A check proves the repair when it fails on the broken rig and passes on the repaired one. Where nothing is broken,
 * any check that passes shows that nothing needs repair.
 */
function proves(theCase: Case, checks: Catalogue['checks'], healthy: RigState, { proof }: Answer): boolean {
  const { rig, workOrder, truth } = theCase;
  // Codes that are gone show that somebody cleared them.
  const check = checks.get(proof.check);
  const quantities = check?.ports[rig.id] ? check.quantities.filter(({ measures }) => measures !== 'codes') : [];
  return quantities.some((quantity) => {
    const verdict = (at: RigState, codes: number) =>
      trueVerdict(rig, proof.check, proof.condition, quantity.id, trueValue(at, proof.condition, quantity, codes));
    const before = verdict(theCase, workOrder.codes.length);
    const broken = truth.severity > 0;
    return verdict(healthy, 0) === 'pass' && (broken ? before === 'fail' : before === 'pass');
  });
}

function marksOn({ cause, area, repair, proof }: Correct, parts: readonly Correct[], weights: Weights): Mark[] {
  const mark = (what: 'cause' | 'repair' | 'proof', code: NoteCode): Mark => ({
    code,
    values: { causes: parts.length },
    share: parts.reduce((sum, part) => sum + earnedIn(part, weights)[what], 0) / parts.length,
    most: weights[what],
  });
  const two: Mark = { code: 'two-causes', values: { causes: parts.length }, share: 0 };
  return [
    mark('cause', cause ? 'cause-right' : area ? 'area-right' : 'cause-wrong'),
    mark('repair', repair ? 'repair-right' : 'repair-wrong'),
    mark('proof', proof ? 'proof-right' : 'proof-wrong'),
    ...(parts.length > 1 ? [two] : []),
  ];
}
