import { describe, expect, test } from 'vitest';
import type { Quantity } from '@/lib/checks/check';
import { trueValue } from '@/lib/checks/quantity';
import { type Belief, beliefFromWorkOrder, entropy, likelihood, updateBelief } from '@/lib/diagnosis/belief';
import { byArea, byCause, simulateParticles } from '@/lib/diagnosis/particles';
import { canHappen } from '@/lib/faults/apply-cause';
import type { WorkOrder } from '@/lib/symptoms/work-order';
import { aRig, catalogue, causeOf, mildDay, stateWith } from '../../support/bench-rig';
import { aCase } from '../../support/worked-attempt';

const particles = simulateParticles(aRig(), mildDay, catalogue);
const { workOrder } = aCase({ cause: 'inlet-screen-plugged' });
const start = beliefFromWorkOrder(particles, workOrder);

function quantityOf(check: string, id = check): Quantity {
  const found = catalogue.checks.get(check)?.quantities.find((quantity) => quantity.id === id);
  if (!found) throw new Error(`No ${id} in ${check}`);
  return found;
}

function sum(belief: Belief): number {
  return belief.reduce((total, weight) => total + weight, 0);
}

const screenDrop = quantityOf('screen-drop');
const seenDrop = {
  value: trueValue(stateWith('inlet-screen-plugged', 0.8), 'full-load', screenDrop, 0),
  uncertainty: 2e3,
  beyond: undefined,
};

test('the priors of all particles sum to one', () => {
  expect(particles.reduce((total, { prior }) => total + prior, 0)).toBeCloseTo(1, 12);
});

test('every cause that can befall the rig in its weather is a particle, at several severities within its range', () => {
  const possible = [...catalogue.causes.values()].filter((cause) => canHappen(aRig(), cause, mildDay));
  expect(possible.length).toBeGreaterThan(30);
  expect([...byCause(particles, start).keys()]).toEqual(possible.map(({ id }) => id));
  for (const { cause, severity } of particles) {
    const range = catalogue.causes.get(cause)?.severity;
    expect(severity).toBeGreaterThanOrEqual(range?.min ?? 2);
    expect(severity).toBeLessThanOrEqual(range?.max ?? -1);
  }
});

test('belief sums to one before and after a reading', () => {
  expect(sum(start)).toBeCloseTo(1, 12);
  expect(sum(updateBelief(start, particles, screenDrop, 'full-load', seenDrop))).toBeCloseTo(1, 12);
});

test('belief still sums to one when the reading fits nothing', () => {
  const absurd = { value: 1e12, uncertainty: 1, beyond: undefined };
  expect(sum(updateBelief(start, particles, screenDrop, 'full-load', absurd))).toBeCloseTo(1, 9);
});

test('a complaint and codes like a particle’s own each speak for it', () => {
  const alike = particles.findIndex(({ complaint, codes }) => complaint === 'lacks-power' && codes.length > 0);
  const { codes = [] } = particles[alike] ?? {};
  const weight = (changes: Partial<WorkOrder>) =>
    beliefFromWorkOrder(particles, { ...workOrder, complaint: 'lacks-power', codes, ...changes })[alike] ?? 0;
  expect(weight({})).toBeGreaterThan(1.5 * weight({ codes: [] }));
  expect(weight({})).toBeGreaterThan(1.5 * weight({ complaint: 'hunts' }));
});

test('a drop across the screen moves belief to the screen and clears the supply side', () => {
  const after = updateBelief(start, particles, screenDrop, 'full-load', seenDrop);
  // What a torn main filter lets through ends in the screen as well.
  const believed = byCause(particles, after);
  const [screen = 0, torn = 0] = ['inlet-screen-plugged', 'main-filter-bypassing'].map((id) => believed.get(id));
  expect(screen + torn).toBeGreaterThan(0.9);
  expect(screen).toBeGreaterThan(torn);
  const [before, now] = [byArea(particles, start), byArea(particles, after)];
  expect(now.filtration).toBeGreaterThan(before.filtration);
  expect(now['supply-side']).toBeLessThan(0.1 * before['supply-side']);
});

/** From the tank to where the gauge sits, the pumps' own short circuits and wiring included. */
const UP_TO_MAIN_FILTER = new Set([
  'fuel-tank',
  'pickup',
  'supply-line',
  'supply-filter',
  'inlet-check-valve',
  'suction-joint',
  'lift-pump',
  'gear-pump',
  'pressure-regulator',
  'cooling-plate',
]);

test('a low prime pressure moves belief to what lies up to the main filter, not beyond it', () => {
  const prime = quantityOf('prime-pressure');
  const value = trueValue(stateWith('lift-pump-weak', 0.9), 'key-on', prime, 0);
  const after = updateBelief(start, particles, prime, 'key-on', { ...seenDrop, value });
  const believed = [...byCause(particles, after)].filter(([id]) => UP_TO_MAIN_FILTER.has(causeOf(id).element ?? ''));
  expect(believed.reduce((total, [, weight]) => total + weight, 0)).toBeGreaterThan(0.95);
  expect(byArea(particles, after)['high-pressure']).toBeLessThan(0.02);
});

/** A metering valve that stands open, for want of shutting, of current or of a signal to shut it by. */
const RAIL_RUNS_UP = ['metering-valve-stuck-open', 'metering-actuator-open-circuit', 'rail-sensor-reference-lost'];

test('a glass that overflows well past the limit speaks for what would overflow it', () => {
  const flow = quantityOf('injector-return-flow');
  const overflow = { value: 150e-6 / 60, uncertainty: 1e-7, beyond: 'high' } as const;
  const after = byCause(particles, updateBelief(start, particles, flow, 'idle', overflow));
  // Worn injectors, or a rail that runs up to its relief valve and presses more through sound ones.
  const fits = ['injector-leakage-high', 'injector-seat-leak', ...RAIL_RUNS_UP];
  expect(fits.reduce((total, id) => total + (after.get(id) ?? 0), 0)).toBeGreaterThan(0.95);
  expect(after.get('injector-leakage-high')).toBe(Math.max(...after.values()));
});

test('reading the codes again says nothing new', () => {
  const codes = quantityOf('trouble-codes', 'stored-codes');
  expect(updateBelief(start, particles, codes, 'key-on', { value: 9, uncertainty: 0, beyond: undefined })).toBe(start);
});

describe('likelihood', () => {
  const seen = { value: 100, uncertainty: 10, beyond: undefined };

  test('is highest where the particle says what was seen, and the same on either side', () => {
    const at = (value: number) => likelihood({ ...seen, value }, 100);
    expect(at(100)).toBeCloseTo(1, 5);
    expect(at(110)).toBeCloseTo(at(90), 12);
    expect(at(110)).toBeLessThan(at(105));
  });

  test('never quite rules anything out', () => {
    expect(likelihood(seen, 1e9)).toBeGreaterThan(0);
  });

  test('beyond a stop counts everything further that way', () => {
    const stopped = { ...seen, beyond: 'high' } as const;
    expect(likelihood(stopped, 1000)).toBeCloseTo(1, 3);
    expect(likelihood(stopped, 100)).toBeCloseTo(0.5, 5);
    expect(likelihood(stopped, 10)).toBeLessThan(1e-3);
    expect(likelihood({ ...seen, beyond: 'low' }, 10)).toBeCloseTo(1, 3);
  });

  test('of nothing seen where nothing is expected is certain', () => {
    expect(likelihood({ value: 0, uncertainty: 0, beyond: undefined }, 0)).toBeCloseTo(1, 5);
  });
});

describe('entropy', () => {
  test('is nothing when all is settled, and ln n over n equal shares', () => {
    expect(entropy([1, 0, 0])).toBe(0);
    expect(entropy([0.25, 0.25, 0.25, 0.25])).toBeCloseTo(Math.log(4), 12);
  });

  test('is larger the more even the shares are', () => {
    expect(entropy([0.5, 0.5])).toBeGreaterThan(entropy([0.9, 0.1]));
  });
});
