import { expect, test } from 'vitest';
import { seedFromWord } from '@/lib/cases/case-code';
import { caseFromSeed } from '@/lib/cases/case-from-seed';
import { findLimit, limitBounds } from '@/lib/checks/limit';
import { certify } from '@/lib/diagnosis/certificate';
import { MOST_CHECKS, sheetRows } from '@/lib/paper/sheet';
import { toSi } from '@/lib/units';
import { catalogue } from '../../support/bench-rig';

const cases = [1, 2, 3, 4, 5, 6].map((seed) => {
  const rigs = [...catalogue.rigs.keys()];
  const theCase = caseFromSeed({ rig: rigs[seed % rigs.length] ?? '', seed: seedFromWord(`sheet ${seed}`) }, catalogue);
  const { route } = certify(theCase, catalogue);
  return { theCase, route, rows: sheetRows(theCase, catalogue, route.steps) };
});

test('a sheet gives every value that an expert would read at rest, and others beside them', () => {
  for (const { theCase, route, rows } of cases) {
    const given = new Set(rows.map(({ check, condition }) => `${check.id} ${condition}`));
    for (const { check, condition } of route.steps) {
      const atRest = catalogue.checks.get(check)?.quantities.some(({ of }) => of.kind !== 'trace');
      if (atRest) expect(given, theCase.code).toContain(`${check} ${condition}`);
    }
    expect(given.size).toBeGreaterThanOrEqual(Math.min(MOST_CHECKS, route.steps.length));
    expect(rows.some(({ onRoute }) => !onRoute)).toBe(true);
  }
});

test('the order of a sheet is that of the names, whatever is wrong', () => {
  for (const { rows } of cases) {
    const names = rows.map(({ check }) => check.text.en.name);
    expect(names).toEqual([...names].sort());
  }
});

test('a verdict of the key passes or fails on the right side of its line', () => {
  for (const { theCase, rows } of cases)
    for (const { check, condition, quantity, shown, verdict } of rows) {
      const limit = findLimit(theCase.rig, check.id, condition, quantity.id);
      if (!limit || shown.kind !== 'value') continue;
      const { min = Number.NEGATIVE_INFINITY, max = Number.POSITIVE_INFINITY } = limitBounds(limit);
      const value = toSi(shown.value, shown.unit);
      if (verdict === 'pass') expect(value >= min && value <= max).toBe(true);
      if (verdict === 'fail') expect(value < min || value > max).toBe(true);
    }
});
