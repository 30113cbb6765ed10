import { describe, expect, test } from 'vitest';
import { compare, conformanceProbability } from '@/lib/checks/verdict';
import type { Gauge } from '@/lib/gauges/gauge';
import { standardUncertainty } from '@/lib/gauges/uncertainty';
import { normalTail } from '@/lib/normal-tail';
import { fromSi, toSi } from '@/lib/units';
import { catalogue } from '../support/bench-rig';
import { aGauge } from '../support/gauge';

/** P(Z ≤ z) by Simpson's rule over the density; good to 1e-9 up to |z| = 8, beyond which nothing is left. */
function normal(z: number): number {
  const end = Math.max(-8, Math.min(8, z));
  const steps = 800;
  const width = end / steps;
  const weight = (k: number) => (k === 0 || k === steps ? 1 : k % 2 === 1 ? 4 : 2);
  let sum = 0;
  for (let k = 0; k <= steps; k++) sum += weight(k) * Math.exp(-0.5 * (k * width) ** 2);
  return 0.5 + (sum * width) / 3 / Math.sqrt(2 * Math.PI);
}

describe('the normal distribution', () => {
  // Five decimals as every printed table has them (from memory); the formula is good to 1e-7.
  test.each([
    [0, 0.5],
    [1, 0.84134],
    [1.5, 0.93319],
    [1.645, 0.95002],
    [1.96, 0.975],
    [2, 0.97725],
    [3, 0.99865],
  ])('up to %d holds %d', (z, share) => {
    expect(1 - normalTail(z)).toBeCloseTo(share, 5);
  });

  test('agrees with its density summed up, on both sides', () => {
    for (let z = -6; z <= 6; z += 0.37) expect(Math.abs(1 - normalTail(z) - normal(z))).toBeLessThan(1e-7);
  });
});

describe('conformance probability', () => {
  // JCGM 106:2012 clause 7.4 (inputs seen in a secondary source, result from memory): y = 13.6, u = 1.8, limits 12.5 and
  // 16.3 give 0.66; two figures, so ± 0.005.
  const worked = { min: 12.5, max: 16.3 };

  test('of the worked example is what JCGM 106 prints', () => {
    const chance = conformanceProbability({ value: 13.6, uncertainty: 1.8 }, worked);
    expect(Math.abs(chance - 0.66)).toBeLessThanOrEqual(0.005);
    // Φ(1.5) − Φ(−0.611) to four figures, by another programme.
    expect(chance).toBeCloseTo(0.6626, 4);
  });

  test('of one-sided limits is what lies on their good side', () => {
    const seen = { value: 5, uncertainty: 0.5 };
    // The approximation is good to 1e-7.
    expect(conformanceProbability(seen, { max: 6 })).toBeCloseTo(normal(2), 6);
    expect(conformanceProbability(seen, { min: 6 })).toBeCloseTo(1 - normal(2), 6);
  });

  test('is certain where the instrument is', () => {
    expect(conformanceProbability({ value: 6, uncertainty: 0 }, { max: 6 })).toBe(1);
    expect(conformanceProbability({ value: 6.01, uncertainty: 0 }, { max: 6 })).toBe(0);
  });

  test('of two in three earns no verdict', () => {
    expect(compare(13.6, worked, 1.8)).toBe('too-close');
  });

  // ISO 14253-1:2017 (from memory): conformity and its opposite are proven at 95 %, one-sided.
  test('is 95 % at the last reading that passes and 5 % at the first that fails', () => {
    const [max, u] = [6, 0.5];
    const readings = Array.from({ length: 4001 }, (_, index) => 4 + index * 1e-3);
    const verdicts = readings.map((y) => compare(y, { max }, u));
    const good = readings[verdicts.lastIndexOf('within')] ?? Number.NaN;
    const bad = readings[verdicts.indexOf('above')] ?? Number.NaN;
    // Readings step by 0.002 u, which there is worth 2e-4 of probability.
    const oneSided = (y: number) => conformanceProbability({ value: y, uncertainty: u }, { max });
    expect(Math.abs(oneSided(good) - 0.95)).toBeLessThanOrEqual(3e-4);
    expect(Math.abs(oneSided(bad) - 0.05)).toBeLessThanOrEqual(3e-4);
  });
});

describe('a suction limit of 6.0 inHg', () => {
  const gradeB = catalogue.gauges.get('vacuum-dial-0-30-inhg');
  const fine = aGauge({
    unit: 'inHg',
    range: { min: 0, max: 15 },
    resolution: 0.1,
    accuracy: { kind: 'quarters', percentOfSpan: [1, 1, 1] },
  });

  // Worked by hand from GUM's rectangular distributions and a guard band of 1.645 u, printed to 0.01 inHg. ASME B40.100
  // grades from memory: B is 3/2/3 % and 1A 1 % of span, so 0.90 and 0.15 inHg.
  test.each([
    ['0–30 inHg grade B, read to 0.25', gradeB, 5.11, 6.89],
    ['0–15 inHg grade 1A, read to 0.1', fine, 5.83, 6.17],
  ] as const)('is proven met or broken with a gauge %s', (_name, gauge, acceptUpTo, rejectFrom) => {
    if (!gauge) throw new Error('No such gauge');
    expect(edges(gauge)).toEqual([expect.closeTo(acceptUpTo, 2), expect.closeTo(rejectFrom, 2)]);
  });

  /** The last reading that passes and the first that fails, inHg, to a thousandth. */
  function edges(gauge: Gauge): [number, number] {
    const judge = (reading: number) =>
      compare(toSi(reading, 'inHg'), { max: toSi(6, 'inHg') }, standardUncertainty(gauge, reading));
    const readings = Array.from({ length: 3001 }, (_, index) => 4.5 + index * 1e-3);
    const verdicts = readings.map(judge);
    return [readings[verdicts.lastIndexOf('within')] ?? 0, readings[verdicts.indexOf('above')] ?? 0];
  }

  test('leaves to the grade-B gauge a standard uncertainty of 0.539 inHg', () => {
    if (!gradeB) throw new Error('No such gauge');
    // √((0.90/√3)² + (0.25/√3)²), worked by hand and printed to three figures.
    expect(fromSi(standardUncertainty(gradeB, 5), 'inHg')).toBeCloseTo(0.539, 3);
  });
});
