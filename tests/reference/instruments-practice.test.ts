import { describe, expect, test } from 'vitest';
import { limitBounds } from '@/lib/checks/limit';
import { elementOfKind } from '@/lib/rig/rig';
import { sensorLine, signalVolts } from '@/lib/rig/sensor-line';
import { fromSi, type Unit } from '@/lib/units';
import { aRig, catalogue, healthyPoints, mildDay } from '../support/bench-rig';
import { caseAt } from '../support/case-at';

/*
 * Usual limits of low-pressure sides and of the meters and recorders that judge them, held against tern-13's limit sheet
 * and its computed healthy state. Common practice, no source, but where a row says otherwise. Figures are round: a tenth
 * either way counts as "about".
 */
const ABOUT = 1.1;

const rig = aRig();
const healthy = healthyPoints();

/** A line of the sheet in the unit of the figure that it is held against; no number where it has no such bound. */
function sheet(id: string, unit: Unit): { min: number; max: number } {
  const line = rig.limits.find((candidate) => candidate.id === id);
  if (!line) throw new Error(`No line ${id}`);
  const { min, max } = limitBounds(line);
  return { min: fromSi(min ?? Number.NaN, unit), max: fromSi(max ?? Number.NaN, unit) };
}

describe('common practice, no source: electrical', () => {
  test('a 5 V sensor supply is good from 4.75 to 5.25 V', () => {
    expect(sheet('rail-reference-key-off', 'V')).toEqual({ min: 4.75, max: 5.25 });
    expect(healthy['key-off'].values.railReferenceVoltage).toBe(5);
  });

  // 0.5 to 4.5 V over the sensor's range; below 0.25 and above 4.75 V counts as a broken line.
  test.each([
    [0, 0.5],
    [0.25, 1.5],
    [0.5, 2.5],
    [1, 4.5],
  ])('a ratiometric sensor gives at %d of its range %d V', (share, volts) => {
    const sensor = elementOfKind(rig, 'rail-sensor');
    const fullScale = sensor.fullScaleMpa * 1e6;
    // Exact arithmetic.
    expect(signalVolts(sensorLine(sensor), share * fullScale, fullScale)).toBeCloseTo(volts, 12);
  });

  test('without pressure a good one gives 0.5 V, and what counts as broken never passes', () => {
    const { min, max } = sheet('rail-signal-key-off', 'V');
    expect([min < 0.5, max > 0.5, min > 0.25, max < 4.75]).toEqual([true, true, true, true]);
  });

  test('at most 1 V may be lost on the way to a 24 V pump under load', () => {
    expect(rig.conditions['key-on'].liftPumpVolts).toBe(24);
    expect(24 - sheet('lift-pump-voltage-key-on', 'V').min).toBeLessThanOrEqual(1);
  });

  test('a 24 V lift pump draws 1.5 to 5 A', () => {
    const { min, max } = sheet('lift-pump-current-key-on', 'A');
    expect([min >= 1.5, max <= 5 * ABOUT]).toEqual([true, true]);
    const drawn = healthy['key-on'].values.liftPumpCurrent ?? Number.NaN;
    expect([drawn >= 1.5, drawn <= 5]).toEqual([true, true]);
  });

  test('an open circuit is off a meter’s scale, a short and a good winding are on it', () => {
    const ohms = catalogue.gauges.get('multimeter')?.alsoReads?.find(({ unit }) => unit === 'Ω');
    const { coilOhm } = elementOfKind(rig, 'metering-valve');
    expect([ohms?.range.min === 0, coilOhm < (ohms?.range.max ?? 0), (ohms?.range.max ?? Infinity) < 1e3]).toEqual([
      true,
      true,
      true,
    ]);
  });
});

describe('common practice, no source: suction and vent', () => {
  test('with clean filters the supply pump’s inlet stands 2 to 6 inHg below ambient at high idle', () => {
    const point = healthyPoints({ ...mildDay, supplyFilterAge: 0 })['high-idle'];
    const vacuum = (point.values.ambientPressure ?? 0) - (point.pressures['gear-pump-inlet'] ?? 0);
    expect(fromSi(vacuum, 'inHg')).toBeGreaterThanOrEqual(2);
    expect(fromSi(vacuum, 'inHg')).toBeLessThanOrEqual(6);
  });

  test.each(['high-idle', 'full-load'])(
    'at %s 8 to 12 inHg call for a new filter or a look at the line',
    (condition) => {
      const inHg = sheet(`suction-restriction-${condition}`, 'inHg').max;
      // 27 kPa, the round metric figure, is 7.97 inHg.
      expect([inHg >= 7.9, inHg <= 12]).toEqual([true, true]);
    },
  );

  test.each(['high-idle', 'full-load'])(
    'at %s each line along the suction side lies inside the next one',
    (condition) => {
      const lines = ['suction-before-filter', 'suction-after-filter', 'suction-restriction'].map(
        (id) => sheet(`${id}-${condition}`, 'kPa').max,
      );
      expect(lines).toEqual([...lines].sort((a, b) => a - b));
    },
  );

  test('a blocked vent makes a vacuum that grows with running time, a free one does not', () => {
    const growth = (cause?: string) =>
      caseAt({ ...(cause && { cause }), severity: 1 }).traces.get('tank-vacuum').features.growth ?? Number.NaN;
    const line = sheet('growth-full-load', 'Pa').max;
    expect(growth('tank-vent-blocked')).toBeGreaterThan(line);
    expect(growth()).toBeLessThan(line / 4);
  });
});

describe('common practice, no source: priming', () => {
  test('fuel runs clear within 30 s, and the lift pump runs for about two minutes', () => {
    expect(sheet('priming-time-key-on', 's').max).toBeLessThanOrEqual(30);
    expect(rig.traces.prime.onSeconds).toBe(120);
  });

  test('an engine cranks at 130 to 200 turns a minute', () => {
    const { engineRpm } = rig.conditions.cranking;
    expect([engineRpm >= 130, engineRpm <= 200]).toEqual([true, true]);
  });
});

describe('common practice, no source: returns and temperature', () => {
  test.each(['idle', 'full-load'])('at %s a return manifold stands at 20 kPa at most', (condition) => {
    expect(sheet(`return-restriction-${condition}`, 'kPa').max).toBeLessThanOrEqual(20);
  });

  test('the supply is no warmer than 70 °C on a mild day and never passes where engines pull back, at 80 to 90 °C', () => {
    const supply = fromSi(healthy['full-load'].temperatures['metering-inlet'] ?? Number.NaN, '°C');
    expect(supply).toBeLessThanOrEqual(70);
    expect(sheet('supply-temperature-idle', '°C').max).toBeLessThanOrEqual(70);
    expect(sheet('supply-temperature-full-load', '°C').max).toBeLessThanOrEqual(90);
  });

  test('under load the return comes back at 60 to 100 °C', () => {
    const back = fromSi(healthy['full-load'].temperatures['return-manifold'] ?? Number.NaN, '°C');
    expect([back >= 60, back <= 100]).toEqual([true, true]);
  });
});

// EN 590 (published, restated on the reference page): 820 to 845 kg/m³ at 15 °C. Coefficient of expansion of diesel near
// 8.3e-4 1/K, so some 0.7 kg/m³ a kelvin (ASTM D1250).
test('what EN 590 lets be sold passes as a sample at whatever temperature the tank has', () => {
  const { min, max } = sheet('fuel-density-key-on', 'kg/m³');
  const [coldest, warmest] = rig.settings.airC;
  expect(max).toBeGreaterThanOrEqual(845 + 0.7 * (15 - coldest));
  expect(min).toBeLessThanOrEqual(820 - 0.7 * (warmest - 15));
});

// Seen on a gauge vendor's page: the normal reading in the middle half of the scale, full scale 1.3 times it at least.
test.each([
  ['prime-pressure', 'key-on', 'main-filter-inlet'],
  ['gear-pump-pressure', 'idle', 'gear-pump-outlet'],
  ['return-restriction', 'idle', 'return-manifold'],
] as const)('%s has a gauge that reads a sound rig in the middle half of its scale', (id, condition, node) => {
  const gauge = catalogue.gauges.get(catalogue.checks.get(id)?.instruments[0] ?? '');
  const { pressures, values } = healthy[condition];
  if (!gauge) throw new Error(`No gauge for ${id}`);
  const reading = fromSi((pressures[node] ?? Number.NaN) - (values.ambientPressure ?? Number.NaN), gauge.unit);
  const share = (reading - gauge.range.min) / (gauge.range.max - gauge.range.min);
  expect([share >= 0.25, share <= 0.75, gauge.range.max >= 1.3 * reading]).toEqual([true, true, true]);
});
