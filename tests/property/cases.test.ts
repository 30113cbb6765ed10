import { execFileSync } from 'node:child_process';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { codeCollisions, formatCaseCode, parseCaseCode, seedFromBytes, seedFromWord } from '@/lib/cases/case-code';
import { caseFromSeed } from '@/lib/cases/case-from-seed';
import { describeCase } from '@/lib/cases/describe-case';
import { canRun, complaintOf } from '@/lib/symptoms/complaint';
import { troubleCodes } from '@/lib/symptoms/trouble-codes';
import { catalogue } from '../support/bench-rig';

const seeds = fc.uint8Array({ minLength: 5, maxLength: 5 }).map(seedFromBytes);
const chosen = fc.record({
  cause: fc.constantFrom(...catalogue.causes.keys()),
  severity: fc.integer({ min: 0, max: 1000 }),
});
const specs = fc.record(
  { rig: fc.constantFrom(...catalogue.rigs.keys()), seed: seeds, chosen },
  { requiredKeys: ['rig', 'seed'] },
);

test('a case code reads back as what it was written from, however it is typed', () => {
  fc.assert(
    fc.property(specs, fc.boolean(), (spec, sloppy) => {
      const code = formatCaseCode(spec);
      const typed = sloppy
        ? ` ${code.toLowerCase().replaceAll('-', ' ').replaceAll('0', 'o').replaceAll('1', 'l')} `
        : code;
      expect(parseCaseCode(typed, catalogue)).toEqual({ spec });
    }),
  );
});

test('one wrong symbol or two neighbours swapped are caught', () => {
  const alphabet = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';
  fc.assert(
    fc.property(specs, fc.nat(12), fc.nat(31), (spec, position, symbol) => {
      const symbols = [...formatCaseCode(spec).replaceAll('-', '')];
      const at = position % (symbols.length - 1);
      const wrong = symbols.with(at, alphabet[symbol] ?? '0').join('');
      const swapped = symbols
        .with(at, symbols[at + 1] ?? '')
        .with(at + 1, symbols[at] ?? '')
        .join('');
      for (const typed of [wrong, swapped]) {
        if (typed !== symbols.join('')) expect(parseCaseCode(typed, catalogue)).toHaveProperty('error');
      }
    }),
  );
});

test('no two ids share the fingerprint that codes carry', () => {
  expect(codeCollisions(catalogue)).toEqual([]);
});

test('two thousand seeds all solve, and each complaint and code follows from the state', () => {
  const complaints = new Set<string>();
  for (let word = 0; word < 2000; word++) {
    const theCase = caseFromSeed({ rig: 'tern-13', seed: seedFromWord(`beech-${word}`) }, catalogue);
    const codes = troubleCodes(theCase.rig, theCase.points);
    const computed = complaintOf(theCase.rig, theCase.points, codes);
    expect(theCase.workOrder.codes).toEqual(codes);
    if (theCase.truth.cause === 'no-fuel-fault')
      expect({ word, computed, codes }).toEqual({ word, computed: undefined, codes: [] });
    else expect({ word, complaint: theCase.workOrder.complaint }).toEqual({ word, complaint: computed });
    complaints.add(theCase.workOrder.complaint);
  }
  expect([...complaints].sort()).toEqual(['hunts', 'lacks-power', 'starts-slowly', 'warning-lamp', 'will-not-start']);
});

test('two processes print the same bytes for the same seed', () => {
  const print = () =>
    execFileSync('npx', ['tsx', 'app/_cli/case.ts', '--seed', 'alder-17', '--json'], { encoding: 'utf8' });
  const [one, other] = [print(), print()];
  expect(one.length).toBeGreaterThan(1000);
  expect(other).toBe(one);
});

test('a sound rig keeps every limit in every setting that a case can draw, as its instruments show it', () => {
  for (let word = 0; word < 300; word++) {
    const chosen = { cause: 'no-fuel-fault', severity: 0 };
    const theCase = caseFromSeed({ rig: 'tern-13', seed: seedFromWord(`sound ${word}`), chosen }, catalogue);
    const failing = describeCase(theCase, catalogue).readings.filter(({ verdict }) => verdict === 'fail');
    expect({ word, failing }).toEqual({ word, failing: [] });
  }
});

test('every case but an unfounded one shows at least one reading beyond its limit', () => {
  for (let word = 0; word < 300; word++) {
    const theCase = caseFromSeed({ rig: 'tern-13', seed: seedFromWord(`shown ${word}`) }, catalogue);
    if (theCase.truth.cause === 'no-fuel-fault') continue;
    const failing = describeCase(theCase, catalogue).readings.filter(
      ({ verdict, check, condition }) =>
        verdict === 'fail' && check !== 'trouble-codes' && canRun(theCase.points, condition),
    );
    expect({ word, cause: theCase.truth, failing: failing.length > 0 }).toMatchObject({ failing: true });
  }
});
