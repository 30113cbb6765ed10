import { beforeAll, describe, expect, test } from 'vitest';
import { gaugeFor, performCheck } from '@/lib/cases/perform-check';
import type { Check } from '@/lib/checks/check';
import { compareMeasured, measured } from '@/lib/checks/expected';
import { findLimit, limitBounds } from '@/lib/checks/limit';
import type { Shown } from '@/lib/checks/shown';
import { type Verdict, verdictOf } from '@/lib/checks/verdict';
import { randomStream } from '@/lib/random';
import type { ConditionId } from '@/lib/rig/condition';
import type { Rig } from '@/lib/rig/rig';
import type { Setting } from '@/lib/rig/setting';
import { toSi } from '@/lib/units';
import { aRig, catalogue } from '../../support/bench-rig';
import { caseAt } from '../../support/case-at';

/** Sound rigs in weather, height, fuel, filters and tank as a case may draw them, every third at the ends of the ranges. */
const SETTINGS = 200;
/** Fuel is delivered so much clear of its cloud point, K. */
const CLEAR = 3;
/** A healthy reading may lie too close to its line to tell in so many of these. */
const UNDECIDED = 0.02;

/** Time that two hundred rounds with all their traces may take on a busy machine, ms. */
const FOLLOWED = 300_000;

function settingOf(rig: Rig, index: number): Setting | undefined {
  const draw = (name: string, [min, max]: readonly [number, number]) => {
    const share = randomStream(`sound ${index}`, name).next();
    return min + (max - min) * (index % 3 === 0 ? Math.round(share) : share);
  };
  const airC = draw('air', rig.settings.airC);
  const fuels = rig.settings.fuels.filter((id) => (catalogue.fuels.get(id)?.cloudPointC ?? 0) <= airC - CLEAR);
  if (fuels.length === 0) return undefined;
  return {
    airTemperature: toSi(airC, '°C'),
    altitude: draw('altitude', rig.settings.altitudeM),
    fuel: randomStream(`sound ${index}`, 'fuel').pick(fuels),
    supplyFilterAge: draw('supply filter', rig.settings.filterAge),
    mainFilterAge: draw('main filter', rig.settings.filterAge),
    tankLevel: draw('tank level', rig.settings.tankLevel),
    hoursStanding: draw('standing', rig.settings.hoursStanding),
    cylinder: 1,
  };
}

interface Judged {
  name: string;
  shown: Shown;
  /** Undefined where the sheet has no line. */
  verdict: Verdict | undefined;
}

/** Every check in every condition that its procedure calls for, with the procedure's own instrument. */
function round(rig: Rig, setting: Setting, seed: string): Judged[] {
  const sound = caseAt({ rig: rig.id, setting, seed });
  return [...catalogue.checks.values()]
    .filter(({ ports }) => ports[rig.id])
    .flatMap((check) =>
      check.conditions.flatMap((condition) => {
        const instrument = check.instruments[0] ?? '';
        const read = performCheck(sound, catalogue, { check: check.id, condition, instrument });
        if ('error' in read) throw new Error(`${check.id} at ${condition}: ${read.error}`);
        return read.shown.map((shown) => judge(rig, check, condition, shown));
      }),
    );
}

function judge(rig: Rig, check: Check, condition: ConditionId, shown: Shown): Judged {
  const gauge = catalogue.gauges.get(check.instruments[0] ?? '');
  const quantity = check.quantities.find(({ id }) => id === shown.quantity);
  const line = findLimit(rig, check.id, condition, shown.quantity);
  const seen = gauge && quantity && measured(shown, gaugeFor(gauge, quantity));
  return {
    name: `${check.id} ${condition} ${shown.quantity}`,
    shown,
    verdict: line && seen ? verdictOf(compareMeasured(seen, limitBounds(line))) : undefined,
  };
}

describe.each([...catalogue.rigs.keys()])('a sound %s', (id) => {
  let readings: Judged[][] = [];

  beforeAll(() => {
    const rig = aRig(id);
    readings = Array.from({ length: SETTINGS }, (_, index) => [index, settingOf(rig, index)] as const).flatMap(
      ([index, setting]) => (setting ? [round(rig, setting, `SEED${index}`)] : []),
    );
  }, FOLLOWED);

  test('has weather in which there is a fuel for it, most of the time', () => {
    expect(readings.length).toBeGreaterThan(0.6 * SETTINGS);
  });

  test('fails no line of its sheet', () => {
    expect(namesWhere(({ verdict }) => verdict === 'fail')).toEqual([]);
  });

  test('is seldom too close to a line to tell', () => {
    const undecided = namesWhere(({ verdict }) => verdict === 'cannot-tell');
    for (const name of new Set(undecided)) {
      const share = undecided.filter((other) => other === name).length / readings.length;
      expect({ name, share }).toMatchObject({ share: expect.toSatisfy((found: number) => found < UNDECIDED) });
    }
  });

  test('destroys no instrument, shoots no jet and stores no code', () => {
    const kinds = namesWhere(({ shown }) => shown.kind === 'destroyed' || shown.kind === 'jet');
    const codes = namesWhere(({ shown }) => shown.kind === 'codes' && shown.codes.length > 0);
    expect([...kinds, ...codes]).toEqual([]);
  });

  test('stays on the scale of every instrument that its procedures ask for', () => {
    expect([...new Set(namesWhere(({ shown }) => shown.kind === 'off-scale'))]).toEqual([]);
  });

  function namesWhere(is: (judged: Judged) => boolean): string[] {
    return readings.flatMap((each) => each.filter(is).map(({ name }) => name));
  }
});
