import type { Check, Quantity } from '../checks/check';
import { findLimit } from '../checks/limit';
import { trueValue } from '../checks/quantity';
import type { Cause } from '../faults/cause';
import type { ConditionId } from '../rig/condition';
import type { Rig } from '../rig/rig';
import type { RigState } from '../rig/rig-state';
import { conditionsReachable } from '../symptoms/complaint';
import { type Belief, entropy, likelihood } from './belief';
import type { Particle } from './particles';

/** One check an expert makes: the hook-up and what it costs. */
export interface RouteStep {
  check: string;
  condition: ConditionId;
  minutes: number;
}

/** A check still open, with the value of each of its quantities under each particle and in truth. */
interface Candidate extends RouteStep {
  expected: readonly Float64Array[];
  actual: readonly number[];
}

/** Belief in one cause at which an expert stops looking. */
const SETTLED = 0.9;
const LONGEST_ROUTE = 8;
/** What a well-chosen instrument is unsure of, as a share of the value. Assumed. */
const READING_SPREAD = 0.05;
/** Particles believed less than this are not asked what they would show. */
const NEGLIGIBLE = 1e-3;

/**
 * The route of somebody who always takes the check that is worth most per minute: expected drop of the entropy over
 * causes, by the belief held at that moment. When one cause is settled, or nothing left tells anything, the part itself is
 * measured, unless it was already: an expert condemns none unmeasured.
 *
 * @param truth  What the broken rig really does; the route reads it, as the learner does.
 * @param confirmedBy  Checks that measure the cause at fault itself.
 */
export function expertRoute(
  rig: Rig,
  checks: ReadonlyMap<string, Check>,
  particles: readonly Particle[],
  start: Belief,
  truth: RigState,
  codeCount: number,
  confirmedBy: Cause['provenBy'],
): RouteStep[] {
  let open = candidates(rig, checks, particles, truth, codeCount);
  let belief = start;
  const route: RouteStep[] = [];
  const causes = causesOf(particles);
  while (route.length < LONGEST_ROUTE && Math.max(...shares(causes, belief)) < SETTLED) {
    const best = mostTelling(open, causes, belief);
    if (!best) break;
    route.push({ check: best.check, condition: best.condition, minutes: best.minutes });
    belief = afterReading(best, belief);
    open = open.filter((candidate) => candidate !== best);
  }
  return [...route, ...confirmation(route, open, confirmedBy)];
}

/** The first check still open that measures the part, where none on the route has. */
function confirmation(route: readonly RouteStep[], open: readonly Candidate[], confirmedBy: Cause['provenBy']) {
  const measures = ({ check, condition }: RouteStep) =>
    confirmedBy.some((proof) => proof.check === check && proof.condition === condition);
  if (route.some(measures)) return [];
  return open
    .filter(measures)
    .slice(0, 1)
    .map(({ check, condition, minutes }) => ({ check, condition, minutes }));
}

/** Every check in every condition that its procedure allows, the rig reaches and the limit sheet judges. */
function candidates(
  rig: Rig,
  checks: ReadonlyMap<string, Check>,
  particles: readonly Particle[],
  truth: RigState,
  codeCount: number,
): Candidate[] {
  return [...checks.values()].flatMap((check) => {
    if (!check.ports[rig.id]) return [];
    return conditionsReachable(truth.points, check.conditions).flatMap((condition) => {
      const judged = check.quantities.filter(
        ({ id, measures, of }) =>
          measures !== 'codes' && of.kind !== 'trace' && findLimit(rig, check.id, condition, id),
      );
      if (judged.length === 0) return [];
      const values = (quantity: Quantity) =>
        Float64Array.from(particles, (particle) => trueValue(particle, condition, quantity, particle.codes.length));
      return {
        check: check.id,
        condition,
        minutes: check.minutes,
        expected: judged.map(values),
        actual: judged.map((quantity) => trueValue(truth, condition, quantity, codeCount)),
      };
    });
  });
}

/** Particles by cause: the index of each one's cause, and how many causes there are. */
interface Causes {
  of: Int32Array;
  count: number;
}

function causesOf(particles: readonly Particle[]): Causes {
  const ids = [...new Set(particles.map(({ cause }) => cause))];
  return { of: Int32Array.from(particles, ({ cause }) => ids.indexOf(cause)), count: ids.length };
}

function shares({ of, count }: Causes, belief: Belief): Float64Array {
  const sums = new Float64Array(count);
  for (let index = 0; index < of.length; index++) {
    const cause = of[index] as number;
    sums[cause] = (sums[cause] as number) + (belief[index] as number);
  }
  return sums;
}

function mostTelling(open: readonly Candidate[], causes: Causes, belief: Belief) {
  const before = entropy(shares(causes, belief));
  const active = Int32Array.from(belief.keys()).filter((index) => (belief[index] as number) >= NEGLIGIBLE);
  let best: Candidate | undefined;
  let most = 1e-4;
  for (const candidate of open) {
    const worth = (before - expectedEntropy(candidate, causes, belief, active)) / candidate.minutes;
    if (worth > most) [best, most] = [candidate, worth];
  }
  return best;
}

/** Entropy over causes to be expected after a check: each particle in turn is taken for the truth. */
function expectedEntropy({ expected }: Candidate, { of, count }: Causes, belief: Belief, active: Int32Array): number {
  const sums = new Float64Array(count);
  let total = 0;
  for (const truth of active) {
    sums.fill(0);
    let all = 0;
    for (const index of active) {
      let weight = belief[index] as number;
      for (const values of expected) weight *= alike(values[truth] as number, values[index] as number);
      sums[of[index] as number] = (sums[of[index] as number] as number) + weight;
      all += weight;
    }
    let left = 0;
    for (let cause = 0; cause < count; cause++) {
      const share = (sums[cause] as number) / all;
      if (share > 0) left -= share * Math.log(share);
    }
    total += (belief[truth] as number) * left;
  }
  return total;
}

/** Likelihood of seeing a value where another is expected, with a well-chosen instrument. */
function alike(seen: number, expected: number): number {
  return likelihood({ value: seen, uncertainty: READING_SPREAD * Math.abs(seen), beyond: undefined }, expected);
}

function afterReading({ expected, actual }: Candidate, belief: Belief): Belief {
  const after = belief.map((weight, index) =>
    expected.reduce((product, values, q) => product * alike(actual[q] ?? 0, values[index] as number), weight),
  );
  const total = after.reduce((sum, weight) => sum + weight, 0);
  return after.map((weight) => weight / total);
}
