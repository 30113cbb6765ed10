import type { Case } from '@/lib/cases/case';
import type { Catalogue } from '@/lib/catalogue';
import { type Belief, beliefAtStart } from '@/lib/diagnosis/belief';
import { expertRoute } from '@/lib/diagnosis/expert-route';
import { particlesOf } from '@/lib/diagnosis/particles';
import { byCause } from '@/lib/diagnosis/shares';
import { type DrawOptions, drawnCases } from './job';

/** Beliefs between two tenths, and how often what they were held of was true. */
export interface Bin {
  from: number;
  count: number;
  /** Cases that they come from. Beliefs of one case hang together. */
  cases: number;
  /** Mean belief. */
  believed: number;
  /** Share that was true. */
  true: number;
}

export interface Calibration {
  cases: number;
  /** Every cause, after each of the first readings. */
  every: { bins: Bin[]; error: number };
  /** Only the cause most believed: not diluted by the many that are hardly believed at all. */
  leading: { bins: Bin[]; error: number };
}

/** Belief is taken after none to so many readings of the expert's route. */
const READINGS = 3;
const BINS = 10;

interface Held {
  /** Number of the case. */
  from: number;
  belief: number;
  right: boolean;
}

/** Cases as the generator draws them, settled or not: choosing among them by how they end would spoil the count. */
export function calibrate({ count, ...draw }: DrawOptions, catalogue: Catalogue): Calibration {
  const every: Held[] = [];
  const leading: Held[] = [];
  let from = 0;
  for (const theCase of drawnCases(draw, catalogue)) {
    if (from++ === count) break;
    for (const shares of sharesOnTheWay(theCase, catalogue)) {
      const held = shares.map(([cause, belief]) => ({ from, belief, right: isAtWork(theCase, cause) }));
      every.push(...held);
      leading.push(...held.slice(0, 1));
    }
  }
  return { cases: count, every: binned(every), leading: binned(leading) };
}

/** Causes by belief, most believed first: at the start and after each reading. */
function sharesOnTheWay(theCase: Case, catalogue: Catalogue): [string, number][][] {
  const particles = particlesOf(theCase, catalogue);
  const { beliefs } = expertRoute(theCase, catalogue, particles);
  const held: Belief[] = [beliefAtStart(particles), ...beliefs.slice(0, READINGS)];
  return held.map((belief) => [...byCause(particles, belief)].sort(([, a], [, b]) => b - a));
}

function isAtWork({ truth: { cause, also } }: Case, id: string): boolean {
  return cause === id || also?.cause === id;
}

/** In tenths, with the expected calibration error: Σ n/N · |share true − mean belief|. */
function binned(held: readonly Held[]): { bins: Bin[]; error: number } {
  const bins = Array.from({ length: BINS }, (_, bin) => {
    const within = held.filter(({ belief }) => Math.min(BINS - 1, Math.floor(belief * BINS)) === bin);
    const mean = (of: (one: Held) => number) => within.reduce((sum, one) => sum + of(one), 0) / (within.length || 1);
    return {
      from: bin / BINS,
      count: within.length,
      cases: new Set(within.map(({ from }) => from)).size,
      believed: mean(({ belief }) => belief),
      true: mean(({ right }) => Number(right)),
    };
  });
  const error = bins.reduce((sum, bin) => sum + (bin.count / held.length) * Math.abs(bin.true - bin.believed), 0);
  return { bins, error };
}
