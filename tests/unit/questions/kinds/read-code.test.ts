import { describe, expect, test } from 'vitest';
import { bytesOfCode } from '@/lib/questions/kinds/read-code/trouble-bytes';
import { bytesOf, hexByte, rawOf, scaledValue } from '@/lib/questions/shared/bus-parameter';

describe('the bytes of a trouble code', () => {
  test.each([
    // SAE J1939-73, example of conversion method 4: SPN 1208, FMI 3, ten times (from memory).
    [{ spn: 1208, fmi: 3, often: 10 }, 'B8 04 03 0A'],
    // By hand: 522,352 = 7 × 65,536 + 248 × 256 + 112; 7 × 32 + 31 = 255.
    [{ spn: 522352, fmi: 31, often: 126 }, '70 F8 FF 7E'],
    [{ spn: 157, fmi: 18, often: 1 }, '9D 00 12 01'],
  ])('%o is %s', (stored, hex) => {
    expect(bytesOfCode(stored).map(hexByte).join(' ')).toBe(hex);
  });
});

describe('a value of the bus', () => {
  // Round trips by the scalings of SAE J1939DA (October 2020), as extracted in the j1939-84 resources (seen).
  test.each([
    ['rail pressure', { spn: 157, bytes: 2 as const, perBit: 1 / 256, offset: 0 }, 160, '00 A0'],
    ['fuel temperature', { spn: 174, bytes: 1 as const, perBit: 1, offset: -40 }, 80, '78'],
    ['engine speed', { spn: 190, bytes: 2 as const, perBit: 0.125, offset: 0 }, 2000, '80 3E'],
    ['battery potential', { spn: 168, bytes: 2 as const, perBit: 0.05, offset: 0 }, 27.6, '28 02'],
    ['fuel delivery pressure', { spn: 94, bytes: 1 as const, perBit: 4, offset: 0 }, 400, '64'],
  ])('%s: %o carries %d as %s', (_, parameter, value, hex) => {
    const raw = rawOf(parameter, value);
    expect(bytesOf(parameter, raw).map(hexByte).join(' ')).toBe(hex);
    expect(scaledValue(parameter, raw)).toBeCloseTo(value, 9);
  });

  test('is never sent beyond what stands for values', () => {
    expect(rawOf({ spn: 94, bytes: 1, perBit: 4, offset: 0 }, 5000)).toBe(0xfa);
    expect(rawOf({ spn: 190, bytes: 2, perBit: 0.125, offset: 0 }, 1e6)).toBe(0xfaff);
    expect(rawOf({ spn: 174, bytes: 1, perBit: 1, offset: -40 }, -60)).toBe(0);
  });
});
