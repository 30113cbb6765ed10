import { describe, expect, test } from 'vitest';
import type { Line } from '@/lib/questions/line';
import type { GeneratedQuestion } from '@/lib/questions/question';
import { questionFromSeed } from '@/lib/questions/question-from-seed';
import type { Unit } from '@/lib/units';
import { catalogue } from '../support/bench-rig';
import { givenIn } from '../support/given-in';

/** Enough for every conversion, parameter and fuel. */
const SEEDS = 3000;
const questions = Array.from({ length: SEEDS }, (_, seed) =>
  questionFromSeed({ kind: 'work-out', seed: `outside-${seed}` }, catalogue),
);

describe('unit conversions', () => {
  // NIST SP 811 (2008), appendix B.8, as published there; from memory, the same as in units.test.ts. 10ⁿ units are exact.
  const TO_SI: Partial<Record<Unit, number>> = {
    psi: 6.894757e3,
    inHg: 3.386389e3,
    bar: 1e5,
    kPa: 1e3,
    MPa: 1e6,
    'L/min': 1.666667e-5,
    'mL/min': 1.666667e-8,
    'US gal/min': 6.30902e-5,
    L: 1e-3,
    'US gal': 3.785412e-3,
  };

  test('come out as with the factors of NIST SP 811', () => {
    const seen = new Set<string>();
    for (const { question, from, to, given } of conversions()) {
      const { value, tolerance } = keyOf(question, 'converted');
      const expected = convertPublished(given, from, to);
      // A chart prints a factor to four figures: at most 5 parts in 14,500.
      expect(Math.abs(value - expected), `${given} ${from} in ${to}`).toBeLessThan(0.1 * tolerance);
      seen.add(`${from} ${to}`);
    }
    expect(seen.size).toBeGreaterThan(15);
  });

  function convertPublished(given: number, from: Unit, to: Unit): number {
    // NIST SP 811 (2008), B.8: t/°C = (t/°F − 32)/1.8, exact.
    if (from === '°F') return (given - 32) / 1.8;
    if (from === '°C') return given * 1.8 + 32;
    return (given * (TO_SI[from] ?? Number.NaN)) / (TO_SI[to] ?? Number.NaN);
  }

  function conversions() {
    return asked('convertUnit').map((question) => {
      const [stem] = question.stem;
      const given = stem && 'say' in stem ? stem.with?.given : undefined;
      const { answer } = question;
      const to = answer.form === 'numbers' ? answer.parts[0]?.units[0] : undefined;
      if (typeof given !== 'object' || !('quantity' in given) || !to) throw new Error('not a conversion');
      return { question, from: given.unit, to, given: givenIn(question.stem)('given') };
    });
  }

  test('the drop between gauges in two units does so too', () => {
    for (const question of asked('filterDrop')) {
      const given = givenIn(question.stem);
      const outlet = unitOf(question.stem, 'outlet');
      const drop = given('inlet') - (given('outlet') * (TO_SI[outlet] ?? Number.NaN)) / 1e3;
      const { value, tolerance } = keyOf(question, 'drop');
      expect(Math.abs(value - drop)).toBeLessThan(0.2 * tolerance);
    }
  });
});

describe('volume correction', () => {
  // ASTM D1250 / API MPMS 11.1 (1980), Table 54B, computed from its form by another program, five decimals printed.
  const PUBLISHED: Readonly<Record<number, number>> = {
    [-20]: 1.02925,
    0: 1.01261,
    20: 0.99578,
    40: 0.97878,
    50: 0.97022,
    60: 0.96163,
    80: 0.94436,
  };

  test('the table of a fuel of 840 kg/m³ prints what Table 54B gives, to the four decimals that it prints', () => {
    const tables = corrections().filter(({ density15 }) => density15 === 840);
    expect(tables.length).toBeGreaterThan(0);
    for (const { table } of tables)
      for (const [celsius, factor] of Object.entries(PUBLISHED))
        expect(Math.abs((table.get(Number(celsius)) ?? Number.NaN) - factor)).toBeLessThanOrEqual(0.6e-4);
  });

  test('the form written out here gives the published test value', () => {
    // 850 kg/m³ at 25 °C: 0.9917, a test value of a public implementation of MPMS 11.1.
    expect(correctionFactor(850, 25)).toBeCloseTo(0.9917, 4);
  });

  test('factors, volumes and densities come out as by the standard’s formula', () => {
    const all = corrections();
    expect(new Set(all.map(({ density15 }) => density15)).size).toBe(catalogue.fuels.size);
    for (const { question, density15 } of all) {
      const given = givenIn(question.stem);
      const shown = given('shown');
      const celsius = unitOf(question.stem, 'shown') === '°F' ? (shown - 32) / 1.8 : shown;
      const published = correctionFactor(density15, celsius);
      const { value, tolerance } = keyOf(question, 'factor');
      // Rows to four decimals and straight on between them.
      expect(Math.abs(value - published)).toBeLessThan(0.5 * tolerance);
      const result = keyOf(question, 'result');
      const before = given('before');
      const expected = unitOf(question.stem, 'before') === 'L' ? before * published : before / published;
      expect(Math.abs(result.value - expected)).toBeLessThan(0.5 * result.tolerance);
    }
  });

  /** Table 54B, generalised products: fuel oils from 839 kg/m³ on, kerosenes to 838.5 (as published). */
  function correctionFactor(density15: number, celsius: number): number {
    const alpha = density15 >= 839 ? 186.9696 / density15 ** 2 + 0.48618 / density15 : 594.5418 / density15 ** 2;
    const rise = celsius - 15;
    return Math.exp(-alpha * rise * (1 + 0.8 * alpha * rise));
  }

  function corrections() {
    return asked('volumeCorrection').map((question) => {
      const density15 = fuelOf(question.stem).density15;
      return { question, density15, table: tableOf(question) };
    });
  }
});

describe('viscosity', () => {
  test('the line written out here gives the published values', () => {
    // ASTM D341, full form, through 2.70 and 1.13 mm²/s at 40 and 100 °C; computed by another program, three figures.
    for (const [celsius, viscosity] of [
      [0, 7.46],
      [20, 4.19],
      [60, 1.91],
      [80, 1.44],
    ] as const)
      expect(onChart(2.7, 1.13, celsius)).toBeCloseTo(viscosity, 2);
  });

  test('the right one of four is what the chart of ASTM D341 gives, and no other comes near it', () => {
    const all = asked('viscosityChart');
    expect(all.length).toBeGreaterThan(50);
    for (const { stem, answer, key } of all) {
      const given = givenIn(stem);
      const published = onChart(given('viscosity40'), given('viscosity100'), given('celsius'));
      if (answer.form !== 'choice' || key.form !== 'choice') throw new Error('no choice');
      const distances = answer.options.map(({ id, line }) => ({
        id,
        away: Math.abs(givenIn([line])('value') / published - 1),
      }));
      const [nearest, next] = distances.sort((one, other) => one.away - other.away);
      expect(key.right).toEqual([nearest?.id]);
      expect(nearest?.away).toBeLessThan(0.05);
      expect(next?.away).toBeGreaterThan(0.1);
    }
  });

  /** ASTM D341, full form: Z by its definition, and back by halving, so that the standard's own inverse is not needed. */
  function onChart(at40: number, at100: number, celsius: number): number {
    const ordinate = (nu: number) => Math.log10(Math.log10(nu + 0.7 + Math.exp(-1.47 - 1.84 * nu - 0.51 * nu ** 2)));
    const abscissa = (t: number) => Math.log10(t + 273.15);
    const b = (ordinate(at40) - ordinate(at100)) / (abscissa(100) - abscissa(40));
    const wanted = ordinate(at40) + b * (abscissa(40) - abscissa(celsius));
    let [low, high] = [0.3, 100];
    for (let halving = 0; halving < 60; halving++) {
      const middle = (low + high) / 2;
      if (ordinate(middle) < wanted) low = middle;
      else high = middle;
    }
    return low;
  }
});

describe('the bus', () => {
  /**
   * Bytes, value of a bit and offset by SPN.
   * SAE J1939DA (October 2020) as extracted in the Equipment and Tool Institute's j1939-84 resources (seen).
   */
  const SCALING: Readonly<Record<string, readonly [bytes: 1 | 2, perBit: number, offset: number]>> = {
    94: [1, 4, 0],
    108: [1, 0.5, 0],
    157: [2, 1 / 256, 0],
    168: [2, 0.05, 0],
    174: [1, 1, -40],
    183: [2, 0.05, 0],
    190: [2, 0.125, 0],
    1381: [1, 2, 0],
    5313: [2, 1 / 256, 0],
  };

  test('values and bytes go together as the standard has it, the low byte first', () => {
    const seen = new Set<string>();
    for (const question of asked('busValue')) {
      const spn = String(valueIn(question.stem, 'spn'));
      const [bytes, perBit, offset] = SCALING[spn] ?? [1, Number.NaN, 0];
      const hex = valueIn(question.stem, 'hex');
      seen.add(`${spn} ${hex === undefined ? 'sent' : 'read'}`);
      if (typeof hex === 'string') {
        const read = new DataView(Uint8Array.from(hex.split(' '), (byte) => Number.parseInt(byte, 16)).buffer);
        expect(read.byteLength).toBe(bytes);
        const raw = bytes === 1 ? read.getUint8(0) : read.getUint16(0, true);
        expect(keyOf(question, 'value').value).toBeCloseTo(raw * perBit + offset, 9);
        // J1939-71: 0xFB and 0xFB00 upwards are no values (from memory).
        expect(raw).toBeLessThanOrEqual(bytes === 1 ? 0xfa : 0xfaff);
      } else {
        const raw = (givenIn(question.stem)('value') - offset) / perBit;
        expect(keyOf(question, 'raw').value).toBeCloseTo(raw, 6);
        if (bytes === 1) continue;
        const sent = new DataView(new ArrayBuffer(2));
        sent.setUint16(0, Math.round(raw), true);
        expect(keyOf(question, 'first').value).toBe(sent.getUint8(0));
        expect(keyOf(question, 'second').value).toBe(sent.getUint8(1));
      }
    }
    expect([...seen].sort()).toEqual(
      Object.keys(SCALING)
        .flatMap((spn) => [`${spn} read`, `${spn} sent`])
        .sort(),
    );
  });
});

test('the table of air pressures is the standard atmosphere’s', () => {
  // U.S. Standard Atmosphere 1976, kPa by geometric height; five figures from memory, as in fluids.test.ts.
  const published = { 0: 101.325, 500: 95.461, 1000: 89.876, 1500: 84.56, 2000: 79.501 };
  const [question] = asked('suctionAbsolute');
  const table = tableOf(question as GeneratedQuestion);
  for (const [height, pressure] of Object.entries(published))
    expect(Math.abs((table.get(Number(height)) ?? Number.NaN) - pressure)).toBeLessThanOrEqual(0.051);
});

function asked(exercise: string): GeneratedQuestion[] {
  return questions.filter(({ stem: [first] }) => first && 'say' in first && first.say.startsWith(`${exercise}-`));
}

function keyOf({ key }: GeneratedQuestion, part: string) {
  const found = key.form === 'numbers' ? key.parts[part] : undefined;
  if (!found) throw new Error(`No part ${part}`);
  return found;
}

function valueIn(lines: readonly Line[], name: string) {
  for (const line of lines) if ('say' in line && line.with?.[name] !== undefined) return line.with[name];
  return undefined;
}

function unitOf(lines: readonly Line[], name: string): Unit {
  const value = valueIn(lines, name);
  if (typeof value !== 'object' || !('quantity' in value)) throw new Error(`${name} has no unit`);
  return value.unit;
}

function fuelOf(lines: readonly Line[]) {
  const value = valueIn(lines, 'fuel');
  const fuel = typeof value === 'object' && 'name' in value ? catalogue.fuels.get(value.id) : undefined;
  if (!fuel) throw new Error('No fuel');
  return fuel;
}

function tableOf({ figure }: GeneratedQuestion): ReadonlyMap<number, number> {
  if (figure?.figure !== 'table') throw new Error('No table');
  return new Map(figure.rows.map((row) => row.map((cell) => givenIn([cell])('value')) as [number, number]));
}
