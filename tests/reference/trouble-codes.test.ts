import { describe, expect, test } from 'vitest';
import { catalogue } from '../support/bench-rig';

/**
 * Suspect parameters of fuel systems with the standard's names.
 * SAE J1939DA (October 2020) as extracted in the Equipment and Tool Institute's j1939-84 resources (seen); agrees with an
 * independent public list wherever both have the number.
 */
const SUSPECT_PARAMETERS: Readonly<Record<number, string>> = {
  16: 'Engine Fuel Filter Differential Pressure',
  94: 'Engine Fuel Delivery Pressure',
  95: 'Engine Fuel Filter Differential Pressure',
  96: 'Fuel Level 1',
  97: 'Water In Fuel Indicator 1',
  157: 'Engine Fuel 1 Injector Metering Rail 1 Pressure',
  174: 'Engine Fuel 1 Temperature 1',
  633: 'Engine Fuel Actuator 1 Control Command',
  651: 'Engine Fuel 1 Injector Cylinder 1',
  652: 'Engine Fuel 1 Injector Cylinder 2',
  653: 'Engine Fuel 1 Injector Cylinder 3',
  654: 'Engine Fuel 1 Injector Cylinder 4',
  655: 'Engine Fuel 1 Injector Cylinder 5',
  656: 'Engine Fuel 1 Injector Cylinder 6',
  931: 'Engine Fuel Supply Pump Actuator',
  1075: 'Engine Electric Lift Pump',
  1076: 'Engine Fuel Injection Pump 1 Fuel Control Valve',
  1347: 'Engine Fuel Pump Pressurizing Assembly #1',
  1348: 'Engine Fuel Pump Pressurizing Assembly #2',
  1349: 'Engine Fuel 1 Injector Metering Rail 2 Pressure',
  1381: 'Engine Fuel Supply Pump Intake Absolute Pressure',
  1382: 'Engine Fuel Filter (suction side) Differential Pressure',
  3509: 'Sensor supply voltage 1',
  5313: 'Commanded Engine Fuel Rail Pressure',
  5571: 'High Pressure Common Rail Fuel Pressure Relief Valve',
  5585: 'Rail 1 Cranking Pressure',
  6816: 'Engine Fuel Return Pressure',
};

/** SAE J1939-73 failure mode identifiers, in few words (seen in two independent lists). 22–30 are reserved. */
const FAILURE_MODES: Readonly<Record<number, string>> = {
  0: 'above normal, most severe',
  1: 'below normal, most severe',
  2: 'erratic, intermittent, incorrect',
  3: 'voltage above normal, shorted high',
  4: 'voltage below normal, shorted low',
  5: 'current below normal, open circuit',
  6: 'current above normal, grounded',
  7: 'mechanical system not responding, out of adjustment',
  8: 'abnormal frequency, pulse width, period',
  9: 'abnormal update rate',
  10: 'abnormal rate of change',
  11: 'root cause not known',
  12: 'bad device or component',
  13: 'out of calibration',
  14: 'special instructions',
  15: 'above normal, least severe',
  16: 'above normal, moderately severe',
  17: 'below normal, least severe',
  18: 'below normal, moderately severe',
  19: 'received network data in error',
  20: 'drifted high',
  21: 'drifted low',
  31: 'condition exists',
};

const { spn: spnNames, fmi: fmiNames } = catalogue.codeNames;
const rules = [...catalogue.rigs.values()].flatMap(({ id, codes }) => codes.map((rule) => ({ rig: id, ...rule })));

/** Words that carry meaning: small, without joining words and marks. */
function words(text: string): string[] {
  return (text.toLowerCase().match(/[a-z]+|\d+/g) ?? []).filter((word) => word !== 'or' && word !== 'and');
}

describe('suspect parameters', () => {
  test.each(Object.entries(spnNames))('%s is called in our words what the standard calls it: %s', (spn, name) => {
    const standard = words(SUSPECT_PARAMETERS[Number(spn)] ?? 'not a suspect parameter');
    expect(standard).toEqual(expect.arrayContaining(words(name)));
  });

  test.each(rules)('SPN $spn FMI $fmi of $rig is one of the standard’s', ({ spn, fmi }) => {
    expect(SUSPECT_PARAMETERS).toHaveProperty(String(spn));
    expect(FAILURE_MODES).toHaveProperty(String(fmi));
  });

  test('every code that a rig stores can be named', () => {
    for (const { spn, fmi } of rules) {
      expect(spnNames).toHaveProperty(String(spn));
      expect(fmiNames).toHaveProperty(String(fmi));
    }
  });
});

describe('failure modes', () => {
  test('are the whole list, and none of the reserved ones', () => {
    expect(Object.keys(fmiNames)).toEqual(Object.keys(FAILURE_MODES));
  });

  test.each(Object.entries(fmiNames))('%s means what the standard says: %s', (fmi, name) => {
    expect(words(name)).toEqual(words(FAILURE_MODES[Number(fmi)] ?? ''));
  });

  // The least severe bound has to be the nearest to normal: J1939-73 ranks 15, 16, 0 above and 17, 18, 1 below.
  test.each([
    ['above', [15, 16, 0]],
    ['below', [17, 18, 1]],
  ] as const)('that lie %s normal are set further out the more severe they are', (side, ranks) => {
    const pairs = rules.flatMap((rule) =>
      rules.filter((other) => isMilder(other, rule, ranks)).map((other) => [other, rule]),
    );
    expect(pairs.length).toBeGreaterThan(0);
    for (const [milder, severer] of pairs) {
      const [near, far] = [milder?.[side] ?? Number.NaN, severer?.[side] ?? Number.NaN];
      expect(side === 'above' ? near < far : near > far).toBe(true);
    }
  });

  type Rule = (typeof rules)[number];

  /** Same rig, parameter, condition and value, one rank or more nearer to normal. */
  function isMilder(other: Rule, rule: Rule, ranks: readonly number[]): boolean {
    const same = (['rig', 'spn', 'condition', 'value'] as const).every((key) => other[key] === rule[key]);
    return same && ranks.includes(other.fmi) && ranks.indexOf(other.fmi) < ranks.indexOf(rule.fmi);
  }
});
