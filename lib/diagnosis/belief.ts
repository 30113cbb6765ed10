import type { Quantity } from '../checks/check';
import type { Measured } from '../checks/expected';
import { trueValue } from '../checks/quantity';
import type { ConditionId } from '../rig/condition';
import type { WorkOrder } from '../symptoms/work-order';
import type { Particle } from './particles';

/** Weight of each particle, in their order; sums to 1. */
export type Belief = Float64Array;

/** A driver's words and a stored code are not always what this state would give: such a mismatch only counts against. */
const OTHER_COMPLAINT = 0.15;
const OTHER_CODES = 0.15;
/** The model, and the gaps between the severities that stand for a range, are right to this share of a value. Assumed. */
const MODEL_SPREAD = 0.06;

/** Belief once the work order is read. */
export function beliefFromWorkOrder(particles: readonly Particle[], { complaint, codes }: WorkOrder): Belief {
  return normalised(
    Float64Array.from(particles, (particle) => {
      // A particle that nobody would notice is only ever brought in for some other reason.
      const said = particle.complaint === complaint ? 1 : OTHER_COMPLAINT;
      const stored = sameCodes(particle.codes, codes) ? 1 : OTHER_CODES;
      return particle.prior * said * stored;
    }),
  );
}

/**
 * Belief after one reading: weights times the likelihood of what was measured (Bayes' rule).
 *
 * The likelihood is normal around each particle's computed value, with the instrument's uncertainty and the model's
 * spread; a stopped pointer counts everything beyond its stop.
 */
export function updateBelief(
  belief: Belief,
  particles: readonly Particle[],
  quantity: Quantity,
  condition: ConditionId,
  reading: Measured,
): Belief {
  // Codes have been weighed with the work order; reading them again says nothing new.
  if (quantity.measures === 'codes') return belief;
  const likelihoods = particles.map((particle, index) => {
    // A trace takes milliseconds a particle: what is hardly believed is not followed through it.
    if (quantity.of.kind === 'trace' && (belief[index] ?? 0) < NEGLIGIBLE) return undefined;
    return likelihood(reading, trueValue(particle, condition, quantity, particle.codes.length));
  });
  const asked = likelihoods.filter((value) => value !== undefined);
  const usual = asked.reduce((sum, value) => sum + value, 0) / Math.max(1, asked.length);
  return normalised(belief.map((weight, index) => weight * (likelihoods[index] ?? usual)));
}

/** Particles believed less than this neither gain nor lose by a trace. */
const NEGLIGIBLE = 2e-3;

/** Likelihood of a measurement where `expected` is the truth, with a floor for what nobody thought of. */
export function likelihood({ value, uncertainty, beyond }: Measured, expected: number): number {
  const spread = Math.hypot(uncertainty, MODEL_SPREAD * expected) || 1e-9;
  const apart = (value - expected) / spread;
  if (beyond === 'high') return FLOOR + normalTail(apart);
  if (beyond === 'low') return FLOOR + normalTail(-apart);
  return FLOOR + Math.exp(-0.5 * apart * apart);
}

const FLOOR = 1e-6;

/** P(Z > z), to 1e-7. @source Abramowitz & Stegun 26.2.17 (from memory). */
function normalTail(z: number): number {
  if (z < 0) return 1 - normalTail(-z);
  const t = 1 / (1 + 0.2316419 * z);
  const poly = t * (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
  return (Math.exp(-0.5 * z * z) / Math.sqrt(2 * Math.PI)) * poly;
}

function sameCodes(some: WorkOrder['codes'], others: WorkOrder['codes']): boolean {
  return some.length === others.length && some.every(({ spn }) => others.some((other) => other.spn === spn));
}

function normalised(weights: Float64Array): Belief {
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return weights.map((weight) => weight / total);
}

/** In nats. */
export function entropy(shares: Iterable<number>): number {
  let sum = 0;
  for (const share of shares) if (share > 0) sum -= share * Math.log(share);
  return sum;
}
