import type { Case } from '../cases/case';
import type { Catalogue } from '../catalogue';
import { trueValue } from '../checks/quantity';
import type { OperatingPoints } from '../rig/operating-point';
import type { CallAct } from './acts';
import { trueVerdict } from './after-repair';
import type { Note, Score } from './grade';

export interface CallGrade extends Score {
  correct: { cause: boolean; area: boolean; repair: boolean; proof: boolean };
}

/** Shares of the call's marks. The right area with the wrong cause earns part of the cause's. */
const CAUSE = 0.6;
const AREA_ONLY = 0.25;
const REPAIR = 0.2;
const PROOF = 0.2;

/** Grades cause, repair and the check that is to prove it; whether that would is computed on the repaired rig. */
export function gradeCall(
  theCase: Case,
  { causes, checks }: Catalogue,
  healthy: OperatingPoints,
  call: CallAct,
): CallGrade {
  const truth = causes.get(theCase.truth.cause);
  const cause = call.cause === theCase.truth.cause;
  const area = causes.get(call.cause)?.area === truth?.area;
  const repair = truth?.repairs.some(({ id }) => id === call.repair) ?? false;
  const proof = proves(theCase, checks, healthy, call);
  const correct = { cause, area, repair, proof };
  return {
    share: (cause ? CAUSE : area ? AREA_ONLY : 0) + (repair ? REPAIR : 0) + (proof ? PROOF : 0),
    notes: notesOn(correct),
    correct,
  };
}

/**
 * A check proves the repair when it fails on the broken rig and passes on the repaired one. Where nothing is broken,
 * any check that passes shows that nothing needs repair.
 */
function proves(
  { rig, points, workOrder, truth }: Case,
  checks: Catalogue['checks'],
  healthy: OperatingPoints,
  { proof }: CallAct,
): boolean {
  // Codes that are gone show that somebody cleared them.
  const quantities = checks.get(proof.check)?.quantities.filter(({ measures }) => measures !== 'codes') ?? [];
  return quantities.some((quantity) => {
    const verdict = (at: OperatingPoints, codes: number) =>
      trueVerdict(rig, proof.check, proof.condition, quantity.id, trueValue(at[proof.condition], quantity, codes));
    const before = verdict(points, workOrder.codes.length);
    const broken = truth.severity > 0;
    return verdict(healthy, 0) === 'pass' && (broken ? before === 'fail' : before === 'pass');
  });
}

function notesOn({ cause, area, repair, proof }: CallGrade['correct']): Note[] {
  const codes = [
    cause ? 'cause-right' : area ? 'area-right' : 'cause-wrong',
    repair ? 'repair-right' : 'repair-wrong',
    proof ? 'proof-right' : 'proof-wrong',
  ];
  return codes.map((code) => ({ part: 'call', code, values: {} }));
}
