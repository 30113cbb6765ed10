import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { conditionsOf, gaugeFor } from '@/lib/cases/perform-check';
import type { Check, Quantity } from '@/lib/checks/check';
import type { Gauge } from '@/lib/gauges/gauge';
import { type ConditionId, isSteady } from '@/lib/rig/condition';
import type { Rig } from '@/lib/rig/rig';
import { dimensionOf } from '@/lib/units';
import { catalogue } from '../../support/bench-rig';

const checks = [...catalogue.checks.values()];
const rigs = [...catalogue.rigs.values()];

function gauge(id: string): Gauge {
  const found = catalogue.gauges.get(id);
  if (!found) throw new Error(`No gauge ${id}`);
  return found;
}

/** Every quantity of every check with every instrument that fits it. */
const fittings = checks.flatMap((check) =>
  check.quantities.flatMap((quantity) =>
    check.instruments.map((id) => [`${check.id}: ${quantity.id} with ${id}`, check, quantity, gauge(id)] as const),
  ),
);

describe('a check', () => {
  test.each(fittings)('%s is something that instrument can be connected to', (_name, _check, quantity, instrument) => {
    expect(instrument.measures).toContain(quantity.measures);
  });

  test.each(fittings)(
    '%s has one unit, that of one of the instrument’s ranges',
    (_name, _check, quantity, instrument) => {
      const { unit } = gaugeFor(instrument, quantity);
      const own = [instrument, ...(instrument.alsoReads ?? [])].map((range) => range.unit);
      // The data display is the exception: it prints whatever the bus carries.
      if (quantity.measures !== 'bus') expect(own).toContain(unit);
    },
  );

  test.each(checks)('$id names its quantities, and the words of each grade', ({ quantities, text }) => {
    expect(Object.keys(text.en.quantities).sort()).toEqual(quantities.map(({ id }) => id).sort());
    const graded = quantities.filter(({ grades }) => grades);
    expect(Object.keys(text.en.grades ?? {}).sort()).toEqual(graded.map(({ id }) => id).sort());
    for (const { id, grades } of graded) {
      const named = text.en.grades?.[id] ?? [];
      expect(grades?.steps.map(({ grade }) => grade).sort()).toEqual(named.map((_word, grade) => grade));
    }
  });

  test.each(checks)('$id has rising bounds between its grades, and a last step without one', ({ quantities }) => {
    for (const { grades } of quantities) {
      const bounds = grades?.steps.map(({ below }) => below ?? Number.POSITIVE_INFINITY) ?? [];
      expect(bounds).toEqual([...bounds].sort((a, b) => a - b));
      if (grades) expect(bounds.at(-1)).toBe(Number.POSITIVE_INFINITY);
    }
  });

  test.each(checks)('$id is not called for in a condition that it calls unwise', ({ conditions, unwiseConditions }) => {
    expect(conditions.filter((id) => unwiseConditions.includes(id))).toEqual([]);
  });

  test.each(checks)('$id reads at rest in conditions that come to rest', (check) => {
    const unsteady = conditionsOf(check).filter((id) => !isSteady(id));
    const atRest = check.quantities.filter(({ of }) => of.kind !== 'trace' && of.kind !== 'code-count');
    expect(unsteady.length > 0 && atRest.length > 0).toBe(false);
  });

  test.each(checks)('$id has cautions that there are words for', ({ cautions }) => {
    const messages = JSON.parse(readFileSync('content/messages/en.json', 'utf8'));
    expect(cautions.filter((id) => messages.cautions[id] === undefined)).toEqual([]);
  });

  test.each(checks)('$id warns of a jet wherever a fitting is opened', ({ opens, cautions }) => {
    if (opens) expect(cautions).toEqual(expect.arrayContaining(['jet', 'injection-injury']));
  });
});

describe.each(rigs)('the limit sheet of $id', (rig) => {
  test('has its lines under ids of their own', () => {
    const ids = rig.limits.map(({ id }) => id);
    expect(ids).toEqual([...new Set(ids)]);
  });

  test.each(rig.limits)(
    '$id judges what a check of this rig reads in that condition, in a unit of that kind',
    (line) => {
      const check = catalogue.checks.get(line.check);
      const quantity = check?.quantities.find(({ id }) => id === line.quantity);
      if (!check || !quantity) throw new Error(`${line.id} judges nothing`);
      expect(Object.keys(check.ports)).toContain(rig.id);
      expect(check.conditions).toContain(line.condition);
      expect(dimensionOf(line.unit)).toBe(dimensionOf(gaugeFor(gauge(check.instruments[0] ?? ''), quantity).unit));
    },
  );

  test.each(checks.filter(({ ports }) => ports[rig.id]))('has a line for $id in each of its conditions', (check) => {
    const open = check.conditions.flatMap((condition) =>
      check.quantities.some((quantity) => judged(rig, check, condition, quantity)) ? [] : [condition],
    );
    // Loosening a fitting on an empty rail tells nothing: there is no line that it could be held against.
    expect(open).toEqual(check.opens ? check.conditions : []);
  });
});

function judged(rig: Rig, check: Check, condition: ConditionId, quantity: Quantity): boolean {
  return rig.limits.some(
    (line) => line.check === check.id && line.condition === condition && line.quantity === quantity.id,
  );
}
