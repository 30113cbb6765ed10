import { expect, test } from 'vitest';
import { formatCaseCode, seedFromWord } from '@/lib/cases/case-code';
import { caseFromSeed } from '@/lib/cases/case-from-seed';
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
