import { describe, expect, test } from 'vitest';
import type { Quantity } from '@/lib/checks/check';
import type { Measured } from '@/lib/checks/expected';
import { trueValue } from '@/lib/checks/quantity';
import {
  type Belief,
  beliefAtStart,
  entropy,
  likelihood,
  likelihoodOfGrade,
  updateBelief,
} from '@/lib/diagnosis/belief';
import { Particles, particlesOf } from '@/lib/diagnosis/particles';
import { byArea, byCause, byRepair } from '@/lib/diagnosis/shares';
import type { ConditionId } from '@/lib/rig/condition';
import type { WorkOrder } from '@/lib/symptoms/work-order';
import { aRig, catalogue, causeOf, mildDay, stateOf, stateWith } from '../../support/bench-rig';
import { aCase } from '../../support/worked-attempt';

/** What is left open when nothing but the complaint is known. */
function suspects(order: Pick<WorkOrder, 'complaint' | 'codes'> = { complaint: 'lacks-power', codes: [] }): Particles {
  return new Particles(
    { rig: aRig(), setting: mildDay, spec: {}, workOrder: order, points: stateOf().points },
    catalogue,
  );
}

const particles = suspects();
const start = beliefAtStart(particles);

function read(belief: Belief, check: string, condition: ConditionId, seen: Measured, id = check, among = particles) {
  return updateBelief(belief, among, { check, condition, quantity: quantityOf(check, id), seen });
}

/** What is left open by the work order that a cause leads to. */
function suspectsAfter(cause: string): Particles {
  return particlesOf(aCase({ cause }), catalogue);
}

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

test('belief sums to one before and after a reading', () => {
  expect(sum(start)).toBeCloseTo(1, 12);
  expect(sum(read(start, 'screen-drop', 'full-load', seenDrop))).toBeCloseTo(1, 12);
});

test('belief still sums to one when the reading fits nothing', () => {
  const absurd = { value: 1e12, uncertainty: 1, beyond: undefined };
  expect(sum(read(start, 'screen-drop', 'full-load', absurd))).toBeCloseTo(1, 9);
});

test('the order of two readings does not matter', () => {
  const prime = { value: 60e3, uncertainty: 3e3, beyond: undefined };
  const one = read(read(start, 'screen-drop', 'full-load', seenDrop), 'prime-pressure', 'key-on', prime);
  const other = read(read(start, 'prime-pressure', 'key-on', prime), 'screen-drop', 'full-load', seenDrop);
  one.forEach((weight, index) => {
    expect(weight).toBeCloseTo(other[index] ?? Number.NaN, 12);
  });
});

test('a stored code speaks for the causes that store it', () => {
  const lost = suspects({ complaint: 'lacks-power', codes: [{ spn: 97, fmi: 31 }] });
  expect(byCause(lost, beliefAtStart(lost)).get('water-in-fuel')).toBeGreaterThan(0.9);
  expect(byCause(particles, start).get('water-in-fuel') ?? 0).toBeLessThan(0.05);
});

test('causes with one repair are one decision', () => {
  const repairs = byRepair(particles, start);
  const causes = byCause(particles, start);
  const regulator = (causes.get('regulator-stuck-open') ?? 0) + (causes.get('regulator-stuck-closed') ?? 0);
  expect(repairs.get('replace-regulator') ?? 0).toBeCloseTo(regulator, 12);
});

test('a drop across the screen moves belief to the screen and clears the supply side', () => {
  const among = suspectsAfter('inlet-screen-plugged');
  const started = beliefAtStart(among);
  const { setting } = aCase({ cause: 'inlet-screen-plugged' });
  const drop = trueValue(stateWith('inlet-screen-plugged', 0.8, setting), 'full-load', screenDrop, 0);
  const after = read(started, 'screen-drop', 'full-load', { ...seenDrop, value: drop }, 'screen-drop', among);
  // What a torn main filter lets through ends in the screen as well.
  const believed = byCause(among, after);
  const [screen = 0, torn = 0] = ['inlet-screen-plugged', 'main-filter-bypassing'].map((id) => believed.get(id));
  expect(screen + torn).toBeGreaterThan(0.9);
  expect(screen).toBeGreaterThan(torn);
  const [before, now] = [byArea(among, started), byArea(among, after)];
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
  const after = read(start, 'prime-pressure', 'key-on', { ...seenDrop, value });
  const believed = [...byCause(particles, after)].filter(([id]) => UP_TO_MAIN_FILTER.has(causeOf(id).element ?? ''));
  expect(believed.reduce((total, [, weight]) => total + weight, 0)).toBeGreaterThan(0.95);
  expect(byArea(particles, after)['high-pressure']).toBeLessThan(0.02);
});

/** A metering valve that stands open, for want of shutting, of current or of a signal to shut it by. */
const RAIL_RUNS_UP = ['metering-valve-stuck-open', 'metering-actuator-open-circuit', 'rail-sensor-reference-lost'];

test('a glass that overflows well past the limit speaks for what would overflow it', () => {
  const among = suspectsAfter('injector-leakage-high');
  const overflow = { value: 150e-6 / 60, uncertainty: 1e-7, beyond: 'high' } as const;
  const after = byCause(
    among,
    read(beliefAtStart(among), 'injector-return-flow', 'idle', overflow, 'injector-return-flow', among),
  );
  // Worn injectors, or a rail that runs up to its relief valve and presses more through sound ones.
  const fits = ['injector-leakage-high', 'injector-seat-leak', ...RAIL_RUNS_UP];
  expect(fits.reduce((total, id) => total + (after.get(id) ?? 0), 0)).toBeGreaterThan(0.95);
  expect(after.get('injector-leakage-high')).toBe(Math.max(...after.values()));
});

test('reading the codes again says nothing new', () => {
  const nine = { value: 9, uncertainty: 0, beyond: undefined };
  expect(read(start, 'trouble-codes', 'key-on', nine, 'stored-codes')).toBe(start);
});

test('a trace speaks through its features', () => {
  const quantity = catalogue.checks.get('prime-hold')?.quantities[0];
  if (!quantity) throw new Error('prime-hold measures nothing');
  const value = trueValue(stateWith('lift-pump-weak', 0.9), 'key-on', quantity, 0);
  const seen = { value, uncertainty: 0.02 * Math.abs(value), beyond: undefined };
  const after = updateBelief(start, particles, { check: 'prime-hold', condition: 'key-on', quantity, seen });
  const [before = 0, now = 0] = [start, after].map((belief) => byCause(particles, belief).get('lift-pump-weak'));
  expect(now).toBeGreaterThan(before);
});

test('what the work order all but ruled out gains when nothing else explains a reading', () => {
  // No code is stored: an open circuit of the metering actuator is out of the question, until it is measured.
  const quantity = quantityOf('metering-actuator', catalogue.checks.get('metering-actuator')?.quantities[0]?.id);
  const open = trueValue(stateWith('metering-actuator-open-circuit', 1), 'key-off', quantity, 0);
  const seen = { value: open, uncertainty: 1, beyond: undefined };
  const after = updateBelief(start, particles, { check: 'metering-actuator', condition: 'key-off', quantity, seen });
  const [before = 0, now = 0] = [start, after].map((b) => byCause(particles, b).get('metering-actuator-open-circuit'));
  expect(before).toBeLessThan(1e-3);
  expect(now).toBeGreaterThan(1e3 * before);
});

describe('likelihood', () => {
  const seen = { value: 100, uncertainty: 10, beyond: undefined };

  test('is a density: it sums to one over all readings', () => {
    let total = 0;
    for (let value = 0; value <= 200; value += 0.5) total += likelihood({ ...seen, value }, 100, 5) * 0.5;
    // Over what nothing explains, which is a thousandth spread wide, and the tails beyond eight standard deviations.
    expect(total).toBeGreaterThan(0.995);
    expect(total).toBeLessThan(1.005);
  });

  test('is highest where the particle says what was seen, and the same on either side', () => {
    const at = (value: number) => likelihood({ ...seen, value }, 100);
    // Over what nothing explains, which is spread a little thinner the further up a reading lies.
    expect(at(110)).toBeCloseTo(at(90), 5);
    expect(at(110)).toBeLessThan(at(105));
    expect(at(105)).toBeLessThan(at(100));
  });

  test('of a slice that spreads wide is lower in its middle and higher far off', () => {
    expect(likelihood(seen, 100, 30)).toBeLessThan(likelihood(seen, 100, 0));
    expect(likelihood(seen, 150, 30)).toBeGreaterThan(likelihood(seen, 150, 0));
  });

  test('never quite rules anything out', () => {
    expect(likelihood(seen, 1e9)).toBeGreaterThan(0);
    expect(likelihood(seen, Number.POSITIVE_INFINITY)).toBeGreaterThan(0);
    expect(likelihoodOfGrade(0, 3)).toBeGreaterThan(0);
  });

  test('beyond a stop counts everything further that way', () => {
    const stopped = { ...seen, beyond: 'high' } as const;
    expect(likelihood(stopped, 1000)).toBeCloseTo(1, 3);
    // The reading is as likely as not past its own stop; a thousandth is left to what nobody thought of.
    expect(likelihood(stopped, 100)).toBeCloseTo(0.5, 2);
    expect(likelihood(stopped, 10)).toBeLessThan(2e-3);
    expect(likelihood({ ...seen, beyond: 'low' }, 10)).toBeCloseTo(1, 3);
  });

  test('of a grade is highest for the grade itself and next for its neighbour', () => {
    expect(likelihoodOfGrade(2, 2)).toBeGreaterThan(likelihoodOfGrade(2, 1));
    expect(likelihoodOfGrade(2, 1)).toBeGreaterThan(likelihoodOfGrade(2, 0));
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
