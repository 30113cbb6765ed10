import { describe, expect, test } from 'vitest';
import type { Case } from '@/lib/cases/case';
import { conditionsOf, performCheck } from '@/lib/cases/perform-check';
import type { Check, Mistake } from '@/lib/checks/check';
import type { Shown } from '@/lib/checks/shown';
import { appliesTo } from '@/lib/faults/apply-cause';
import { safetyEvents } from '@/lib/grading/safety-events';
import type { ConditionId } from '@/lib/rig/condition';
import { aRig, catalogue } from '../../support/bench-rig';
import { caseAt } from '../../support/case-at';

/** Mistakes that only bite where something is wrong, each with a fault that makes it bite; by check or by rig and check. */
const NEEDS: Readonly<Record<string, { cause: string; severity: number }>> = {
  'relief-valve-leak glass-too-small': { cause: 'relief-valve-weak-spring', severity: 0.8 },
  'screen-drop dial-too-small': { cause: 'inlet-screen-plugged', severity: 0.8 },
  'control-valve-leak glass-too-small': { cause: 'pressure-control-valve-leaking', severity: 0.2 },
  // A small pump, sound, leaks less than the small glass holds.
  'plover-7 pump-return-flow glass-too-small': { cause: 'high-pressure-pump-worn', severity: 0.6 },
};

/** Mistakes that do no harm on one of the rigs: there the regulator's return holds the manifold above ambient. */
const HARMLESS = ['plover-7 return-restriction no-vacuum-on-the-dial'];

/** Instruments differ within their class: with each of these seeds they err in another way. */
const SEEDS = ['000000', '111111', '222222', '333333', '444444'];

type Computed = Mistake & { condition: ConditionId };

const checks = [...catalogue.checks.values()];

const computed = checks.flatMap((check) =>
  check.mistakes.flatMap((mistake) =>
    isComputed(mistake)
      ? Object.keys(check.ports).map((rig) => [`${check.id} ${mistake.id}`, rig, check, mistake] as const)
      : [],
  ),
);

function isComputed(mistake: Mistake): mistake is Computed {
  return mistake.consequence !== 'misleading' && mistake.condition !== undefined;
}

/** What comes of a mistake on one rig. */
function made(
  check: Check,
  { id, instrument = check.instruments[0] ?? '', condition }: Computed,
  rig: string,
  seed: string,
) {
  const needs = NEEDS[`${rig} ${check.id} ${id}`] ?? NEEDS[`${check.id} ${id}`];
  const theCase = caseAt({ rig, seed, ...needs });
  const hookUp = { check: check.id, condition, instrument };
  const read = performCheck(theCase, catalogue, hookUp);
  if ('error' in read) throw new Error(`${check.id} on ${rig}: ${read.error}`);
  return { hookUp, shown: read.shown };
}

describe('a mistake', () => {
  test.each(checks)('is known for $id, each under an id of its own', ({ mistakes }) => {
    expect(mistakes.length).toBeGreaterThan(0);
    expect(new Set(mistakes.map(({ id }) => id)).size).toBe(mistakes.length);
  });

  test.each(checks)('of $id can be made: its instrument and condition are among those offered', (check) => {
    for (const { instrument, condition, consequence } of check.mistakes) {
      if (instrument) expect(check.instruments).toContain(instrument);
      if (condition) expect(conditionsOf(check)).toContain(condition);
      if (consequence !== 'misleading') expect(condition).toBeDefined();
    }
  });

  test.each(computed)(
    '%s on %s has the consequence it is said to have, whichever gauge is drawn',
    (_name, rig, check, mistake) => {
      const harmless = HARMLESS.includes(`${rig} ${check.id} ${mistake.id}`);
      const kind = harmless
        ? 'value'
        : mistake.consequence === 'instrument-destroyed'
          ? 'destroyed'
          : mistake.consequence;
      for (const seed of SEEDS)
        expect(made(check, mistake, rig, seed).shown.map((shown) => shown.kind)).toEqual(
          check.quantities.map(() => kind),
        );
    },
  );

  test.each(computed.filter(([, , , { consequence }]) => consequence !== 'off-scale'))(
    '%s on %s is a safety event',
    (_name, rig, check, mistake) => {
      const { hookUp, shown } = made(check, mistake, rig, '000000');
      const events = safetyEvents([{ kind: 'reading', seq: 1, ...hookUp, shown }], { rig: aRig(rig) }, catalogue);
      const code = mistake.consequence === 'jet' ? 'high-pressure-jet' : mistake.consequence;
      expect(events).toEqual([{ seq: 1, code }]);
    },
  );
});

describe('who keeps to the procedure', () => {
  const faults = [...catalogue.rigs.values()].flatMap((rig) =>
    [...catalogue.causes.values()]
      .filter((cause) => cause.effects.length > 0 && appliesTo(rig, cause))
      .map((cause) => [rig.id, cause.id, cause.severity.max] as const),
  );

  test.each(faults)(
    'on %s with %s comes to no harm and breaks no instrument, however bad it is',
    (rig, cause, severity) => {
      const broken = caseAt({ rig, cause, severity });
      const shown = checks
        .filter(({ ports, quantities }) => ports[rig] && quantities.every(({ of }) => of.kind !== 'trace'))
        .flatMap((check) => check.conditions.flatMap((condition) => shownBy(broken, check, condition)));
      expect(shown.filter(({ kind }) => kind === 'destroyed' || kind === 'jet')).toEqual([]);
      expect(shown.length).toBeGreaterThan(0);
    },
  );

  /** Nothing where the engine does not run so. */
  function shownBy(broken: Case, { id, instruments }: Check, condition: ConditionId): readonly Shown[] {
    const read = performCheck(broken, catalogue, { check: id, condition, instrument: instruments[0] ?? '' });
    return 'shown' in read ? read.shown : [];
  }
});

test.each([...catalogue.rigs.values()])(
  'on $id the procedure’s own instruments cover what the sheet lets one expect',
  (rig) => {
    const events = checks.flatMap(({ id, ports, conditions, instruments }) =>
      (ports[rig.id] ? conditions : []).flatMap((condition) => {
        const reading = { kind: 'reading', seq: 1, check: id, condition, instrument: instruments[0] ?? '' } as const;
        return safetyEvents([{ ...reading, shown: [] }], { rig }, catalogue).map(({ code }) => `${id} ${code}`);
      }),
    );
    expect(events).toEqual([]);
  },
);

test('every kind of consequence is taught somewhere', () => {
  const kinds = new Set(checks.flatMap(({ mistakes }) => mistakes.map(({ consequence }) => consequence)));
  expect(kinds).toEqual(new Set(['instrument-destroyed', 'off-scale', 'jet', 'misleading']));
});

test('a fitting opened on an empty rail weeps and no more', () => {
  const read = performCheck(caseAt({}), catalogue, {
    check: 'high-pressure-fitting',
    condition: 'key-off',
    instrument: 'eyes',
  });
  expect(read).toMatchObject({ shown: [{ kind: 'value', value: 0, unit: 'grade' }] });
});
