import type { Belief } from './belief';
import type { Particles } from './particles';
import { repairDecision, repairMinutes } from './shares';
import { type Stakes, stakesOf } from './value-of-look';

/** Outcomes tried for each check: readings of particles drawn by their weights. */
export const OUTCOMES = 24;
/** Particles that are weighed against each outcome: the heaviest. */
const HEAVIEST = 180;
/** Those believed less are left out even so. */
const NEGLIGIBLE = 1e-4;

/** The particles that matter now, and the repair decision that each calls for. */
export interface Active extends Stakes {
  index: Int32Array;
  /** Some were all but ruled out at first. */
  remote: boolean;
  /** Which active particle each outcome is a reading of. */
  truths: Int32Array;
}

export function activeOf(particles: Particles, belief: Belief): Active {
  const index = heaviest(belief);
  const total = index.reduce((sum, at) => sum + (belief[at] as number), 0);
  const weight = Float64Array.from(index, (at) => (belief[at] as number) / total);
  const decisions = new Map<string, number>();
  const costs: number[] = [];
  const decision = Int32Array.from(index, (at) => {
    const causes = particles.causes[at] ?? [];
    const id = repairDecision(causes);
    const known = decisions.get(id) ?? decisions.size;
    decisions.set(id, known);
    costs[known] = repairMinutes(causes);
    return known;
  });
  return {
    ...stakesOf(weight, decision, Float64Array.from(costs)),
    index,
    remote: index.some((at) => particles.isRemote(at)),
    truths: drawnEvenly(weight),
  };
}

function heaviest(belief: Belief): Int32Array {
  const index = [...belief.keys()].filter((at) => (belief[at] as number) > NEGLIGIBLE);
  if (index.length <= HEAVIEST) return Int32Array.from(index);
  index.sort((a, b) => (belief[b] as number) - (belief[a] as number) || a - b);
  return Int32Array.from(index.slice(0, HEAVIEST).sort((a, b) => a - b));
}

/** Indices drawn by weight at even distances, so that every share of the weight is stood for. */
function drawnEvenly(weight: Float64Array): Int32Array {
  const drawn = new Int32Array(OUTCOMES);
  let [at, sum] = [0, weight[0] ?? 0];
  for (let outcome = 0; outcome < OUTCOMES; outcome++) {
    const aim = (outcome + 0.5) / OUTCOMES;
    while (sum < aim && at < weight.length - 1) sum += weight[++at] as number;
    drawn[outcome] = at;
  }
  return drawn;
}
