import { describe, expect, test } from 'vitest';
import type { OperatingPoint } from '@/lib/rig/operating-point';
import { elementOfKind, findOfKind } from '@/lib/rig/rig';
import { aRig, fuelOf, healthyPoints, mildDay, pointsWith, stateOf } from '../support/bench-rig';
import { expectWithin, flow, kpaAt, RUNNING, settingsOf } from '../support/rig-settings';

/*
 * What the trade says of each layout, held against the rigs laid out so: common practice, no source. Ranges of the
 * low-pressure side as gathered on the reference page 6, the relief valve's ratio on 3.3.
 */

describe.each(['tern-13', 'petrel-15'])('%s, sucked through and pressed by a gear pump', (id) => {
  const rig = aRig(id);

  test('opens its relief valve at 1.1 to 1.25 times rated pressure', () => {
    const ratio = elementOfKind(rig, 'relief-valve').openMpa / rig.conditions['full-load'].railCommandMpa;
    expectWithin(ratio, [1.1, 1.25]);
  });

  test('regulates delivery between 600 and 1300 kPa', () => {
    expectWithin(elementOfKind(rig, 'pressure-regulator').setKpa, [600, 1300]);
    const { idle } = healthyPoints(mildDay, rig);
    expectWithin(kpaAt(idle, 'gear-pump-outlet'), [600, 1300]);
  });

  test.each(settingsOf(rig))(
    'pulls less than the 8 inHg from which one looks for a restriction, on %s',
    (_day, setting) => {
      const points = healthyPoints(setting, rig);
      for (const condition of ['high-idle', 'full-load'] as const)
        expectWithin(-kpaAt(points[condition], 'gear-pump-inlet'), [0, 27]);
    },
  );

  test('primes with its lift pump to at least 10 psi', () => {
    expect(kpaAt(healthyPoints(mildDay, rig)['key-on'], 'main-filter-inlet')).toBeGreaterThan(69);
  });
});

describe('plover-7, fed by an electric pump in its tank', () => {
  const rig = aRig('plover-7');
  const valve = elementOfKind(rig, 'pressure-control-valve');

  test('has neither gear pump nor relief valve', () => {
    expect(findOfKind(rig, 'gear-pump')).toBeUndefined();
    expect(findOfKind(rig, 'relief-valve')).toBeUndefined();
  });

  describe.each(settingsOf(rig))('on %s', (_day, setting) => {
    const points = healthyPoints(setting, rig);

    test('has 300 to 600 kPa at the filter whenever the pump runs', () => {
      for (const condition of ['key-on', 'cranking', ...RUNNING] as const)
        expectWithin(kpaAt(points[condition], 'main-filter-inlet'), [300, 600]);
    });

    test('feeds the metering valve at a pressure that the regulator holds: about 450 kPa at any load', () => {
      // A tenth either way counts as about; the regulator's override is most of it.
      for (const condition of RUNNING) expectWithin(kpaAt(points[condition], 'metering-inlet'), [405, 495]);
      for (const condition of RUNNING) expect(flow(points[condition], 'pressure-regulator')).toBeGreaterThan(0);
    });

    test('runs under pressure all the way from the pump on: no joint there can draw air', () => {
      const nodes = rig.nodes.filter(({ id, side }) => side === 'low' && id !== 'pump-chamber');
      for (const condition of ['key-on', 'cranking', ...RUNNING] as const)
        for (const { id } of nodes) expect(kpaAt(points[condition], id)).toBeGreaterThan(0);
    });

    test('keeps the pressure-control valve shut while the metering valve holds the rail', () => {
      for (const condition of RUNNING) {
        const point = points[condition];
        expect(flow(point, valve.id)).toBeLessThan(0.02 * flow(point, 'high-pressure-pump'));
      }
    });
  });

  test('lets the pressure-control valve take over when metering sticks open: it opens, and the rail stays near command', () => {
    for (const condition of RUNNING) {
      const [sound, stuck] = [healthyPoints(mildDay, rig), pointsWith('metering-valve-stuck-open', 1, mildDay, rig)];
      const share = stuck[condition].values.railShare ?? Number.NaN;
      expect(share).toBeGreaterThanOrEqual(sound[condition].values.railShare ?? Number.NaN);
      // It holds at its own opening pressure, a few per cent above command, and rises with what it passes.
      expect(share).toBeLessThan(1.2);
    }
    const idle = pointsWith('metering-valve-stuck-open', 1, mildDay, rig).idle;
    expect(flow(idle, valve.id)).toBeGreaterThan(100 * flow(healthyPoints(mildDay, rig).idle, valve.id));
    expect(flow(idle, valve.id)).toBeGreaterThan(0.5 * flow(idle, 'high-pressure-pump'));
  });

  test('empties its rail at once when the key takes the valve’s current away, which a rail without such a valve does not', () => {
    const half = (id: string) => stateOf(aRig(id)).traces.get('decay').features.secondsToHalf ?? Number.NaN;
    expect(half('plover-7')).toBeLessThan(0.5);
    expect(half('petrel-15')).toBeGreaterThan(2);
  });

  test('starves when its only pump is dead', () => {
    const { cranking } = pointsWith('lift-pump-open-circuit', 1, mildDay, rig);
    expect(cranking.values.willStart).toBe(0);
  });
});

describe('petrel-15, with two pump heads', () => {
  const rig = aRig('petrel-15');
  const share = (point: OperatingPoint) =>
    flow(point, 'high-pressure-pump') / (flow(point, 'high-pressure-pump') + flow(point, 'high-pressure-pump-rear'));

  test.each(settingsOf(rig))('shares delivery between them within 5 % on %s', (_day, setting) => {
    const points = healthyPoints(setting, rig);
    for (const condition of ['cranking', ...RUNNING] as const)
      expectWithin(share(points[condition]), [0.5 * 0.95, 0.5 * 1.05]);
  });

  test('delivers through the heads what the metering valve admits', () => {
    for (const condition of RUNNING) {
      const point = healthyPoints(mildDay, rig)[condition];
      const delivered = flow(point, 'high-pressure-pump') + flow(point, 'high-pressure-pump-rear');
      // Balances close to the solver's tolerance, far below a millilitre a minute.
      expect(Math.abs(delivered / flow(point, 'metering-valve') - 1)).toBeLessThan(1e-6);
    }
  });

  test('leans on the other head when one is worn', () => {
    const worn = pointsWith('high-pressure-pump-worn', 0.5, mildDay, rig)['full-load'];
    expect(share(worn)).toBeLessThan(0.49);
    expect(flow(worn, 'pump-leakage')).toBeGreaterThan(2 * flow(worn, 'pump-leakage-rear'));
  });

  test('is the largest of the three: it burns most and pumps most', () => {
    const burnt = (id: string) => flow(healthyPoints(mildDay, aRig(id))['full-load'], 'injectors');
    expect(burnt('petrel-15')).toBeGreaterThan(burnt('tern-13'));
    expect(burnt('tern-13')).toBeGreaterThan(burnt('plover-7'));
  });
});

test('each rig has a fuel for its coldest weather that every case can draw', () => {
  for (const id of ['plover-7', 'petrel-15']) {
    const { settings } = aRig(id);
    const clear = settings.fuels.filter((fuel) => fuelOf({ ...mildDay, fuel }).cloudPointC < settings.airC[0]);
    expect({ id, clear }).toEqual({ id, clear: expect.arrayContaining(['winter-grade']) });
  }
});
