import { expect, test } from 'vitest';
import { type CaseSpec, formatCaseCode, parseCaseCode, seedFromBytes, seedFromWord } from '@/lib/cases/case-code';
import { catalogue } from '../../support/bench-rig';

const drawn: CaseSpec = { rig: 'tern-13', seed: 'Q72M0A' };
const chosen: CaseSpec = { ...drawn, chosen: { cause: 'inlet-screen-plugged', severity: 800 } };

const hardest: CaseSpec = { ...drawn, hardest: true };
const twice: CaseSpec = { ...chosen, also: { cause: 'relief-valve-leaking', severity: 350 } };

function parsed(code: string) {
  return parseCaseCode(code, catalogue);
}

test('a code is short groups of symbols that no one mistakes for each other', () => {
  expect(formatCaseCode(drawn)).toMatch(/^[0-9A-HJKMNP-TV-Z]{3}-[0-9A-HJKMNP-TV-Z]{4}-[0-9A-HJKMNP-TV-Z]{2}$/);
  expect([drawn, hardest, chosen, twice].map((spec) => formatCaseCode(spec).replaceAll('-', '').length)).toEqual([
    9, 10, 13, 17,
  ]);
});

test('a code gives back the spec it stands for', () => {
  expect(parsed(formatCaseCode(drawn))).toEqual({ spec: drawn });
  expect(parsed(formatCaseCode(chosen))).toEqual({ spec: chosen });
});

test('the hardest level and a second chosen cause read back as well', () => {
  expect(parsed(formatCaseCode(hardest))).toEqual({ spec: hardest });
  expect(parsed(formatCaseCode(twice))).toEqual({ spec: twice });
});

test('which of two causes was chosen first is kept', () => {
  const { chosen: first, also: second } = twice;
  if (!first || !second) throw new Error('Two causes are chosen above');
  const swapped: CaseSpec = { ...drawn, chosen: second, also: first };
  expect(parsed(formatCaseCode(swapped))).toEqual({ spec: swapped });
  expect(formatCaseCode(swapped)).not.toBe(formatCaseCode(twice));
});

test('a second cause that content does not have is told apart', () => {
  const causes = new Map([...catalogue.causes].filter(([id]) => id !== 'relief-valve-leaking'));
  expect(parseCaseCode(formatCaseCode(twice), { ...catalogue, causes })).toEqual({ error: 'unknown-cause' });
});

test('a code may be typed in small letters, with spaces, with O for 0 and I or L for 1', () => {
  const spec = { rig: 'tern-13', seed: '010101' };
  const typed = formatCaseCode(spec)
    .toLowerCase()
    .replaceAll('-', '  ')
    .replaceAll('0', 'o')
    .replace('1', 'i')
    .replace('1', 'l');
  expect(parsed(typed)).toEqual({ spec });
});

test.each(['', 'ABC', 'SAD-MPW3-G', 'SAD-MPW3-G8U', `${'S'.repeat(9)}!`, 'SADMPW3G8'.repeat(3)])(
  '%o is malformed',
  (text) => {
    expect(parsed(text)).toEqual({ error: 'malformed' });
  },
);

test('a mistyped symbol is caught by the check symbols', () => {
  const code = formatCaseCode(drawn);
  const wrong = code.startsWith('A') ? `B${code.slice(1)}` : `A${code.slice(1)}`;
  expect(parsed(wrong)).toEqual({ error: 'check-symbols' });
});

test('a code of a rig that content does not have is told apart from a mistyped one', () => {
  expect(parseCaseCode(formatCaseCode(drawn), { ...catalogue, rigs: new Map() })).toEqual({ error: 'unknown-rig' });
});

test('a code of a cause that content does not have is told apart as well', () => {
  expect(parseCaseCode(formatCaseCode(chosen), { ...catalogue, causes: new Map() })).toEqual({
    error: 'unknown-cause',
  });
});

test('the cause in a code is masked by the seed', () => {
  const bodies = ['Q72M0A', 'Q72M0B', 'ZZZZZZ'].map((seed) =>
    formatCaseCode({ ...chosen, seed })
      .replaceAll('-', '')
      .slice(7, 11),
  );
  expect(new Set(bodies).size).toBe(bodies.length);
});

test('words and bytes give seeds of six symbols, the same each time', () => {
  expect(seedFromWord('alder-17')).toBe(seedFromWord('alder-17'));
  expect(seedFromWord('alder-17')).not.toBe(seedFromWord('alder-18'));
  expect(seedFromWord('')).toMatch(/^[0-9A-HJKMNP-TV-Z]{6}$/);
  expect(seedFromBytes(Uint8Array.of(0, 0, 0, 33))).toBe('000011');
  expect(seedFromBytes(Uint8Array.of(255, 255, 255, 255))).toBe('ZZZZZZ');
});
