import { describe, expect, test } from 'vitest';
import { seedFromWord } from '@/lib/cases/case-code';
import { caseFromSeed } from '@/lib/cases/case-from-seed';
import { gaugeFor } from '@/lib/cases/perform-check';
import { beliefAtStart, sigmaOf } from '@/lib/diagnosis/belief';
import type { Candidate } from '@/lib/diagnosis/candidates';
import { type CheckWorth, hookUpKey, nextChecks } from '@/lib/diagnosis/next-check';
import { type Particles, particlesOf } from '@/lib/diagnosis/particles';
import { repairDecision } from '@/lib/diagnosis/shares';
import { standardUncertainty } from '@/lib/gauges/uncertainty';
import { canRun } from '@/lib/symptoms/complaint';
import { fromSi, toSi } from '@/lib/units';
import { catalogue } from '../../support/bench-rig';
import { aCase } from '../../support/worked-attempt';

const running = aCase({ cause: 'main-filter-plugged' });
const particles = particlesOf(running, catalogue);
const start = beliefAtStart(particles);
const worths = nextChecks(particles, start, new Set());

test('the best comes first, by what it tells per minute', () => {
  expect(worths.length).toBeGreaterThan(30);
  worths.forEach(({ gain, perMinute, minutes }, index) => {
    expect(perMinute).toBeCloseTo(gain / minutes, 12);
    expect(perMinute).toBeLessThanOrEqual(worths[index - 1]?.perMinute ?? Number.POSITIVE_INFINITY);
  });
});

test('no check tells more than there is to know, or less than nothing', () => {
  const decisions = new Map<string, number>();
  particles.causes.forEach((causes, index) => {
    const id = repairDecision(causes);
    decisions.set(id, (decisions.get(id) ?? 0) + (start[index] ?? 0));
  });
  const all = [...decisions.values()].reduce((sum, p) => sum - (p > 0 ? p * Math.log(p) : 0), 0);
  for (const { gain } of worths) {
    expect(gain).toBeGreaterThanOrEqual(0);
    // The heaviest particles stand for all: what is left out carries next to nothing.
    expect(gain).toBeLessThanOrEqual(all + 0.02);
  }
});

test('what was done is not offered again', () => {
  const [best] = worths;
  const done = new Set([hookUpKey(best?.check ?? '', best?.condition ?? 'idle')]);
  const left = nextChecks(particles, start, done);
  expect(left).toHaveLength(worths.length - 1);
  expect(left.some(({ check, condition }) => done.has(hookUpKey(check, condition)))).toBe(false);
});

test('once all is settled nothing tells any more', () => {
  const truth = particles.causes.findIndex(([cause]) => cause?.id === 'main-filter-plugged');
  const certain = start.map((_, index) => Number(index === truth));
  for (const { gain } of nextChecks(particles, certain, new Set())) expect(gain).toBeLessThan(1e-9);
});

test('an engine that does not start is not asked to run', () => {
  const dead = aCase({ cause: 'relief-valve-leaking' });
  expect(canRun(dead.points, 'idle')).toBe(false);
  const open = particlesOf(dead, catalogue);
  for (const { condition } of nextChecks(open, beliefAtStart(open), new Set())) {
    expect(canRun(dead.points, condition)).toBe(true);
  }
});

test('an expert takes no instrument that belief goes beyond, however thinly it is spread, where another shows it all', () => {
  // Two causes may be wrong here: hundreds of particles, most of them believed less than a thousandth.
  const open = particlesOf(
    caseFromSeed({ rig: 'petrel-15', seed: seedFromWord('w-7'), hardest: true }, catalogue),
    catalogue,
  );
  const belief = beliefAtStart(open);
  const takenOf = new Map(
    nextChecks(open, belief, new Set()).map(({ check, condition, instrument }) => [
      hookUpKey(check, condition),
      instrument,
    ]),
  );
  for (const { check, condition, quantities, instruments } of open.candidates) {
    const [quantity] = quantities;
    if (!quantity) throw new Error(`${check.id} measures nothing`);
    const { expected } = open.valuesOf(check.id, quantity, condition);
    const showsAll = instruments.filter((instrument) => {
      const { range, unit } = gaugeFor(instrument, quantity);
      return (
        belief.reduce((sum, weight, at) => sum + ((expected[at] ?? 0) > toSi(range.max, unit) ? weight : 0), 0) <= 1e-3
      );
    });
    if (showsAll.length === 0) continue;
    expect(showsAll.map(({ id }) => id)).toContain(takenOf.get(hookUpKey(check.id, condition)));
  }
});

describe('the expected drop of entropy', () => {
  /**
   * A second implementation: integrates over the reading instead of drawing outcomes.
   *
   *     G = H(P) − ∫ p(y) H(P | y) dy
   */
  test.each(singleQuantities().slice(0, 12))(
    'of %s agrees with integrating over the reading',
    (_, worth, candidate) => {
      const [quantity] = candidate.quantities;
      if (!quantity) throw new Error('no quantity');
      const integrated = integratedGain(particles, candidate, worth);
      // 24 drawn outcomes stand for the integral: within a tenth of a nat, or a fifth of it.
      expect(Math.abs(worth.gain - integrated)).toBeLessThan(0.1 + 0.2 * integrated);
    },
  );
});

function singleQuantities(): [string, CheckWorth, Candidate][] {
  return worths.flatMap((worth): [string, CheckWorth, Candidate][] => {
    const candidate = particles.candidates.find(
      ({ check, condition }) => check.id === worth.check && condition === worth.condition,
    );
    if (!candidate || candidate.quantities.length > 1 || candidate.quantities[0]?.grades) return [];
    return [[`${worth.check} at ${worth.condition}`, worth, candidate]];
  });
}

function integratedGain(
  { causes, valuesOf }: Particles,
  { check, condition, quantities }: Candidate,
  worth: CheckWorth,
) {
  const [quantity] = quantities;
  const instrument = catalogue.gauges.get(worth.instrument);
  if (!quantity || !instrument) throw new Error('nothing to integrate');
  const gauge = gaugeFor(instrument, quantity);
  const { expected, spread } = valuesOf.call(particles, check.id, quantity, condition, true);
  const [least, most] = [toSi(gauge.range.min, gauge.unit), toSi(gauge.range.max, gauge.unit)];
  const clipped = expected.map((value) => Math.min(most, Math.max(least, value)));
  const sigmas = clipped.map((value, index) =>
    sigmaOf(standardUncertainty(gauge, fromSi(value, gauge.unit)), value, spread[index] ?? 0),
  );
  const [low, high] = [Math.min(...clipped) - 4 * Math.max(...sigmas), Math.max(...clipped) + 4 * Math.max(...sigmas)];
  const entropyOf = (weights: Map<string, number>, total: number) =>
    [...weights.values()].reduce((sum, w) => sum - (w > 0 ? (w / total) * Math.log(w / total) : 0), 0);
  const grouped = (density: (index: number) => number) => {
    const sums = new Map<string, number>();
    let total = 0;
    causes.forEach((some, index) => {
      const weight = (start[index] ?? 0) * density(index);
      sums.set(repairDecision(some), (sums.get(repairDecision(some)) ?? 0) + weight);
      total += weight;
    });
    return { sums, total };
  };
  const steps = 4000;
  const dy = (high - low) / steps;
  let left = 0;
  for (let step = 0; step < steps; step++) {
    const y = low + (step + 0.5) * dy;
    const { sums, total } = grouped((index) => {
      const sigma = sigmas[index] ?? 1;
      return Math.exp(-0.5 * ((y - (clipped[index] ?? 0)) / sigma) ** 2) / (sigma * Math.sqrt(2 * Math.PI));
    });
    if (total > 1e-300) left += total * dy * entropyOf(sums, total);
  }
  const { sums, total } = grouped(() => 1);
  return entropyOf(sums, total) - left;
}
