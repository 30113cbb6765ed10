import { describe, expect, test } from 'vitest';
import type { RigElement } from '@/lib/rig/element';
import { elementOfKind, findOfKind, type Rig } from '@/lib/rig/rig';
import { fromSi } from '@/lib/units';
import { aRig, healthyPoints, mildDay } from '../support/bench-rig';
import { expectWithin, flow, kpaAt, RUNNING, settingsOf } from '../support/rig-settings';

/*
 * What the trade says of systems of a class, held against each rig's content and its computed healthy state.
 * "Design ranges" are those of the reference page 3.3, from memory and common in theses, no table seen. Everything else
 * is common practice, no source; ranges of the low-pressure side as gathered on the reference page 6.
 */

/** Reference page 3.3, by class: total displacement per engine turn, high-pressure volume, pressures, return per injector. */
const DESIGN = {
  medium: {
    displacementCm3: [0.4, 0.8],
    // A rail of 15–30 cm³, two to three times that with lines and injector bodies.
    volumeCm3: [2 * 15, 3 * 30],
    idleMpa: [25, 40],
    ratedMpa: [160, 200],
    enableMpa: [12, 25],
    returnMlMin: [5, 40],
  },
  heavy: {
    displacementCm3: [1, 2.5],
    volumeCm3: [2 * 20, 3 * 60],
    idleMpa: [25, 60],
    ratedMpa: [180, 250],
    enableMpa: [15, 30],
    returnMlMin: [10, 80],
  },
} as const;

const CLASS = { 'tern-13': 'heavy', 'plover-7': 'medium', 'petrel-15': 'heavy' } as const;

function heads({ elements }: Rig) {
  return elements.filter((element): element is Extract<RigElement, { kind: 'high-pressure-pump' }> => {
    return element.kind === 'high-pressure-pump';
  });
}

describe.each(Object.entries(CLASS))('%s, of the %s class', (id, name) => {
  const rig = aRig(id);
  const design = DESIGN[name];
  const mild = healthyPoints(mildDay, rig);

  describe.each(settingsOf(rig))('on %s', (_day, setting) => {
    const points = healthyPoints(setting, rig);

    // The controller's own hold is exact; a hundredth is what a display would let pass as steady.
    test('holds its rail within 1 % of command by metering alone', () => {
      for (const condition of ['cranking', ...RUNNING] as const) {
        const { trueRailPressure, commandedRailPressure, meteringDemand } = points[condition].values;
        expect(Math.abs((trueRailPressure ?? 0) / (commandedRailPressure ?? 1) - 1)).toBeLessThan(0.01);
        expect([meteringDemand === 0, meteringDemand === 1]).toEqual([false, false]);
      }
    });

    test('keeps its return free and its fuel below the 90 °C by which engines have pulled back', () => {
      for (const condition of RUNNING) {
        const { temperatures } = points[condition];
        expect(kpaAt(points[condition], 'return-manifold')).toBeLessThan(20);
        for (const node of ['tank', 'metering-inlet'])
          expect(fromSi(temperatures[node] ?? Number.NaN, '°C')).toBeLessThan(90);
      }
    });

    test('loses less at its main filter than ends a filter’s life, 70 kPa by ISO 4020', () => {
      const point = points['full-load'];
      expect(kpaAt(point, 'main-filter-inlet') - kpaAt(point, 'main-filter-outlet')).toBeLessThan(70);
    });
  });

  test('cranks at 130 to 200 turns a minute', () => {
    expectWithin(rig.conditions.cranking.engineRpm, [130, 200]);
  });

  test('has pressures inside the design ranges', () => {
    expectWithin(rig.conditions.idle.railCommandMpa, design.idleMpa);
    expectWithin(rig.conditions['full-load'].railCommandMpa, design.ratedMpa);
    expectWithin(rig.injectionEnableMpa, design.enableMpa);
    expect(rig.conditions.cranking.railCommandMpa).toBeGreaterThan(rig.injectionEnableMpa);
  });

  test('has a pump and a high-pressure volume inside the design ranges', () => {
    const displacement = heads(rig).reduce((sum, head) => sum + head.displacementCm3 * head.speedRatio, 0);
    expectWithin(displacement, design.displacementCm3);
    expectWithin(elementOfKind(rig, 'rail').volumeCm3, design.volumeCm3);
  });

  test('has a pump of 1.3 to 1.6 times what full load takes: injection, leakage and control', () => {
    const point = mild['full-load'];
    const capacity = heads(rig).reduce((sum, head) => sum + head.displacementCm3 * head.speedRatio, 0);
    const perSecond = (capacity * 1e-6 * rig.conditions['full-load'].engineRpm) / 60;
    expectWithin(perSecond / flow(point, 'metering-valve'), [1.3, 1.6]);
  });

  test('sends back inside the design range from each injector at full load', () => {
    const each = mild['full-load'].values.injectorReturn1 ?? Number.NaN;
    expectWithin(fromSi(each, 'mL/min'), design.returnMlMin);
  });

  test('has a sensor that covers the highest pressure its rail can see', () => {
    const relief = findOfKind(rig, 'relief-valve')?.openMpa ?? 0;
    const { holdShare = 0 } = findOfKind(rig, 'pressure-control-valve') ?? {};
    const highest = Math.max(relief, holdShare * rig.conditions['full-load'].railCommandMpa);
    expect(elementOfKind(rig, 'rail-sensor').fullScaleMpa).toBeGreaterThan(highest);
  });

  test('draws 3 to 10 A at 12 V, or half that at 24 V, to prime', () => {
    const { liftPumpCurrent = Number.NaN } = mild['key-on'].values;
    expectWithin(liftPumpCurrent, rig.conditions['key-on'].liftPumpVolts > 18 ? [1.5, 5] : [3, 10]);
  });

  test('starts within a few turns and no slower than its driver would put up with', () => {
    const { secondsToPrime = Number.NaN, secondsToEnable = Number.NaN, willStart } = mild.cranking.values;
    expect(willStart).toBe(1);
    expectWithin(secondsToPrime + secondsToEnable, [0.5, rig.complaints.startSeconds]);
  });
});
