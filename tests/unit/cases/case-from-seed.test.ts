import { describe, expect, test } from 'vitest';
import { formatCaseCode, seedFromWord } from '@/lib/cases/case-code';
import { caseFromSeed } from '@/lib/cases/case-from-seed';
import { ZERO_CELSIUS } from '@/lib/units';
import { catalogue, causeOf } from '../../support/bench-rig';
import { aCase } from '../../support/worked-attempt';

const seed = seedFromWord('alder-17');

test('the same spec gives the same case', () => {
  const draw = () => caseFromSeed({ rig: 'tern-13', seed }, catalogue);
  expect(JSON.stringify(draw())).toBe(JSON.stringify(draw()));
});

test('a case says what made it', () => {
  const { code, contentHash, generatorVersion } = caseFromSeed({ rig: 'tern-13', seed }, catalogue);
  expect(code).toBe(formatCaseCode({ rig: 'tern-13', seed }));
  expect(contentHash).toBe(catalogue.contentHash);
  expect(generatorVersion).toBeGreaterThan(0);
});

test('choosing a cause moves neither the setting nor the vehicle', () => {
  const drawn = caseFromSeed({ rig: 'tern-13', seed }, catalogue);
  const chosen = aCase({ cause: 'injector-leakage-high' });
  expect(chosen.truth).toEqual({ cause: 'injector-leakage-high', severity: 0.8 });
  expect(chosen.setting).toEqual(drawn.setting);
  expect(chosen.workOrder.vehicle).toBe(drawn.workOrder.vehicle);
});

test('settings and severities stay within what content allows', () => {
  for (let word = 0; word < 100; word++) {
    const { rig, setting, truth } = caseFromSeed({ rig: 'tern-13', seed: seedFromWord(`elm-${word}`) }, catalogue);
    const airC = setting.airTemperature - 273.15;
    const { severity } = causeOf(truth.cause);
    expect(airC).toBeGreaterThanOrEqual(rig.settings.airC[0] - 1e-9);
    expect(airC).toBeLessThanOrEqual(rig.settings.airC[1] + 1e-9);
    expect(rig.settings.fuels).toContain(setting.fuel);
    expect(truth.severity).toBeGreaterThanOrEqual(severity.min);
    expect(truth.severity).toBeLessThanOrEqual(severity.max);
  }
});

test('a rig or a cause that content does not have is refused by name', () => {
  expect(() => caseFromSeed({ rig: 'heron-9', seed }, catalogue)).toThrow(/no rig heron-9/);
  const chosen = { cause: 'gremlins', severity: 500 };
  expect(() => caseFromSeed({ rig: 'tern-13', seed, chosen }, catalogue)).toThrow(/no cause gremlins/);
});

const hardestCases = Array.from({ length: 120 }, (_, n) =>
  caseFromSeed({ rig: 'tern-13', seed: seedFromWord(`yew-${n}`), hardest: true }, catalogue),
);

describe('the hardest level', () => {
  const doubles = hardestCases.filter(({ truth }) => truth.also);

  test('draws two causes more often than not, and one at times', () => {
    // 0.6 of the draws, but for cases without a fault: 72 expected of 120, with a standard deviation of 5.4.
    expect(doubles.length).toBeGreaterThan(72 - 4 * 5.4);
    expect(doubles.length).toBeLessThan(72 + 4 * 5.4);
  });

  test('draws a second cause of another part and another area, within its severities', () => {
    for (const { truth } of doubles) {
      const [first, second] = [causeOf(truth.cause), causeOf(truth.also?.cause ?? '')];
      expect(second.element).not.toBe(first.element);
      expect(second.area).not.toBe(first.area);
      expect(truth.also?.severity).toBeGreaterThanOrEqual(second.severity.min);
      expect(truth.also?.severity).toBeLessThanOrEqual(second.severity.max);
    }
  });

  test('never gives a sound rig a second cause, nor a second cause that is none', () => {
    for (const { truth } of hardestCases) {
      if (truth.cause === 'no-fuel-fault') expect(truth.also).toBeUndefined();
      expect(truth.also?.cause).not.toBe('no-fuel-fault');
    }
  });

  test('leaves the setting and the vehicle as they are without it', () => {
    const [one] = hardestCases;
    const plain = caseFromSeed({ rig: 'tern-13', seed: one?.spec.seed ?? '' }, catalogue);
    expect(one?.setting).toEqual(plain.setting);
    expect(one?.workOrder.vehicle).toBe(plain.workOrder.vehicle);
  });
});

test('two chosen causes are both there, and both at work', () => {
  const [chosen, also] = [
    { cause: 'main-filter-plugged', severity: 800 },
    { cause: 'relief-valve-leaking', severity: 400 },
  ];
  const theCase = caseFromSeed({ rig: 'tern-13', seed, chosen, also }, catalogue);
  expect(theCase.truth).toEqual({ cause: chosen.cause, severity: 0.8, also: { cause: also.cause, severity: 0.4 } });
  const alone = (one: typeof chosen) => caseFromSeed({ rig: 'tern-13', seed, chosen: one }, catalogue).points.idle;
  const { pressures, flows } = theCase.points.idle;
  const drop = (of: typeof pressures) => (of['main-filter-inlet'] ?? 0) - (of['main-filter-outlet'] ?? 0);
  expect(drop(pressures)).toBeGreaterThan(2 * drop(alone(also).pressures));
  expect(flows['relief-valve']).toBeGreaterThan(100 * (alone(chosen).flows['relief-valve'] ?? 1));
});

describe('weather', () => {
  const drawn = Array.from({ length: 400 }, (_, n) =>
    caseFromSeed({ rig: 'tern-13', seed: seedFromWord(`rowan-${n}`) }, catalogue),
  );

  test('fuel waxes only in the cold', () => {
    const [coldest, warmest] = causeOf('fuel-waxed').airC ?? [Number.NaN, Number.NaN];
    const waxed = drawn.filter(({ truth }) => truth.cause === 'fuel-waxed');
    expect(waxed.length).toBeGreaterThan(0);
    for (const { setting } of waxed) {
      expect(setting.airTemperature).toBeGreaterThanOrEqual(ZERO_CELSIUS + coldest);
      expect(setting.airTemperature).toBeLessThanOrEqual(ZERO_CELSIUS + warmest);
    }
  });

  test('nobody is sold a fuel that clouds in it', () => {
    for (const { setting } of drawn) {
      const { cloudPointC } = catalogue.fuels.get(setting.fuel) ?? { cloudPointC: Number.NaN };
      expect(ZERO_CELSIUS + cloudPointC).toBeLessThan(setting.airTemperature);
    }
  });
});
