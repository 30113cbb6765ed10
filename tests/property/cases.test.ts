import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  type CaseSpec,
  codeCollisions,
  formatCaseCode,
  parseCaseCode,
  seedFromBytes,
  seedFromWord,
} from '@/lib/cases/case-code';
import { caseFromSeed } from '@/lib/cases/case-from-seed';
import { describeCase } from '@/lib/cases/describe-case';
import { appliesTo } from '@/lib/faults/apply-cause';
import { canRun } from '@/lib/symptoms/complaint';
import { catalogue } from '../support/bench-rig';
import { runCommandLine } from '../support/command-line';

const seeds = fc.uint8Array({ minLength: 5, maxLength: 5 }).map(seedFromBytes);
/** A rig with causes that it can have. */
const onRig = fc.constantFrom(...catalogue.rigs.values()).chain((found) => {
  const possible = [...catalogue.causes.values()].filter((cause) => appliesTo(found, cause)).map(({ id }) => id);
  const choice = fc.record({ cause: fc.constantFrom(...possible), severity: fc.integer({ min: 0, max: 1000 }) });
  return fc.record({ rig: fc.constant(found.id), chosen: choice, also: choice });
});
const rig = fc.constantFrom(...catalogue.rigs.keys());
const specs: fc.Arbitrary<CaseSpec> = fc.oneof(
  fc.record({ rig, seed: seeds }),
  fc.record({ rig, seed: seeds, hardest: fc.constant(true as const) }),
  fc.tuple(onRig, seeds).map(([{ rig: id, chosen }, seed]) => ({ rig: id, seed, chosen })),
  fc.tuple(onRig, seeds).map(([both, seed]) => ({ ...both, seed })),
);

test('a code that names a cause which its rig cannot have is refused', () => {
  const chosen = { cause: 'gear-pump-worn', severity: 500 };
  const code = formatCaseCode({ rig: 'plover-7', seed: seedFromWord('no gear pump'), chosen });
  expect(parseCaseCode(code, catalogue)).toEqual({ error: 'unknown-cause' });
});

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

test('two processes print the same bytes for the same seed', () => {
  const print = () => runCommandLine('case', '--seed', 'alder-17', '--json').stdout;
  const [one, other] = [print(), print()];
  expect(one.length).toBeGreaterThan(1000);
  expect(other).toBe(one);
});

const rigIds = [...catalogue.rigs.keys()];

test.each(rigIds)(
  'a sound %s keeps every limit in every setting that a case can draw, as its instruments show it',
  (id) => {
    for (let word = 0; word < 150; word++) {
      const sound = { cause: 'no-fuel-fault', severity: 0 };
      const theCase = caseFromSeed({ rig: id, seed: seedFromWord(`sound ${word}`), chosen: sound }, catalogue);
      const failing = describeCase(theCase, catalogue).readings.filter(({ verdict }) => verdict === 'fail');
      expect({ word, failing }).toEqual({ word, failing: [] });
    }
  },
  120_000,
);

test.each(rigIds)(
  'every case on %s but an unfounded one shows at least one reading beyond its limit',
  (id) => {
    for (let word = 0; word < 150; word++) {
      const theCase = caseFromSeed({ rig: id, seed: seedFromWord(`shown ${word}`) }, catalogue);
      if (theCase.truth.cause === 'no-fuel-fault') continue;
      const failing = describeCase(theCase, catalogue).readings.filter(
        ({ verdict, check, condition }) =>
          verdict === 'fail' && check !== 'trouble-codes' && canRun(theCase.points, condition),
      );
      expect({ word, cause: theCase.truth, failing: failing.length > 0 }).toMatchObject({ failing: true });
    }
  },
  120_000,
);
