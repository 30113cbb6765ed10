import { findLimit, limitBounds } from '@/lib/checks/limit';
import { compare, type Verdict, verdictOf } from '@/lib/checks/verdict';
import type { Belief } from '@/lib/diagnosis/belief';
import { byRepair, repairDecision } from '@/lib/diagnosis/shares';
import type { Cause } from '@/lib/faults/cause';
import type { Answer, CallAct, FindingAct } from '@/lib/grading/acts';
import { restoringNeeded } from '@/lib/grading/grade-restoring';
import { conditionsReachable } from '@/lib/symptoms/complaint';
import type { Job } from './job';
import type { Notebook } from './notebook';

/** Calls the repair most believed and what most likely calls for it, proves it, and puts everything right. */
export function soundCall(job: Job, notebook: Notebook, belief: Belief): CallAct {
  const causes = mostBelieved(job, belief);
  const [answer, also] = causes.map((cause) => answerFor(job, notebook, belief, cause));
  if (!answer) throw new RangeError('Nothing is believed');
  const restored = restoringNeeded(notebook.readings, job.catalogue);
  return { kind: 'call', ...answer, ...(also && { also }), restored };
}

/** The cause or the two that carry most belief under the repair decision that does. */
function mostBelieved({ particles }: Job, belief: Belief): readonly Cause[] {
  const [decision] = [...byRepair(particles, belief)].sort(([, a], [, b]) => b - a)[0] ?? [''];
  const sums = new Map<string, { causes: readonly Cause[]; sum: number }>();
  particles.causes.forEach((causes, index) => {
    if (repairDecision(causes) !== decision) return;
    const key = causes.map(({ id }) => id).join(' ');
    sums.set(key, { causes, sum: (sums.get(key)?.sum ?? 0) + (belief[index] ?? 0) });
  });
  return [...sums.values()].sort((a, b) => b.sum - a.sum)[0]?.causes ?? [];
}

function answerFor(job: Job, notebook: Notebook, belief: Belief, cause: Cause): Answer {
  return { cause: cause.id, repair: cause.repairs[0]?.id ?? '', proof: proofFor(job, notebook, belief, cause) };
}

type Proof = Answer['proof'];

/**
 * A check that was read and failed, or passed where nothing is thought to be wrong; among those that content names for the
 * cause before others. Without one, that which most of belief expects to fail.
 */
function proofFor(job: Job, notebook: Notebook, belief: Belief, cause: Cause): Proof {
  const wanted: Verdict = cause.effects.length === 0 ? 'pass' : 'fail';
  const read = readWith(notebook, wanted).filter(({ check }) => measuresMoreThanCodes(job, check));
  const named = read.find((one) => cause.provenBy.some((proof) => sameCheck(one, proof)));
  const expected = expectedToFail(job, belief, cause);
  const proof = named ?? expected ?? read[0] ?? cause.provenBy[0];
  if (!proof) throw new RangeError(`Nothing proves ${cause.id}`);
  return { check: proof.check, condition: proof.condition };
}

function sameCheck(one: Proof, other: Proof): boolean {
  return one.check === other.check && one.condition === other.condition;
}

/** Readings with a finding of that verdict. */
function readWith({ acts, readings }: Notebook, verdict: Verdict): Proof[] {
  const found = acts.filter((act): act is FindingAct & { seq: number } => act.kind === 'finding');
  return readings.filter(({ seq }) => found.some((one) => one.reading === seq && one.verdict === verdict));
}

function measuresMoreThanCodes({ catalogue }: Job, check: string): boolean {
  return catalogue.checks.get(check)?.quantities.some(({ measures }) => measures !== 'codes') ?? false;
}

/** Of the proofs that content names, the one that fails by most of the belief in the cause. */
function expectedToFail(job: Job, belief: Belief, cause: Cause): Proof | undefined {
  if (cause.effects.length === 0) return undefined;
  const possible = cause.provenBy.filter(({ check, condition }) => canBeDone(job, check, condition));
  const rated = possible.map((proof) => ({ proof, chance: chanceOfFailing(job, belief, cause, proof) }));
  return rated.filter(({ chance }) => chance > 0).sort((a, b) => b.chance - a.chance)[0]?.proof;
}

function canBeDone({ theCase, catalogue }: Job, checkId: string, condition: Proof['condition']): boolean {
  const check = catalogue.checks.get(checkId);
  if (!check?.ports[theCase.rig.id]) return false;
  return conditionsReachable(theCase.points, check.conditions).includes(condition);
}

function chanceOfFailing({ theCase, catalogue, particles }: Job, belief: Belief, cause: Cause, proof: Proof): number {
  const { check, condition } = proof;
  const quantities = catalogue.checks.get(check)?.quantities.filter(({ of }) => of.kind !== 'trace') ?? [];
  const chances = quantities.map((quantity) => {
    const line = findLimit(theCase.rig, check, condition, quantity.id);
    if (!line || quantity.measures === 'codes') return 0;
    const { expected } = particles.valuesOf(check, quantity, condition);
    return particles.causes.reduce((sum, causes, index) => {
      const fails = verdictOf(compare(expected[index] ?? Number.NaN, limitBounds(line), 0)) === 'fail';
      return fails && causes.includes(cause) ? sum + (belief[index] ?? 0) : sum;
    }, 0);
  });
  return Math.max(0, ...chances);
}
