import { z } from 'zod';
import { PIERCES_SKIN } from '../../../checks/jet';
import type { RandomStream } from '../../../random';
import { idSchema } from '../../../source';
import { fromSi, toSi } from '../../../units';
import type { Value } from '../../line';
import { type Bench, railPressure, returnTemperature, said, saidTemperature } from './bench';
import type { Fact } from './fact';
import { fittedGauge } from './fitted-gauge';

/** Something that is seen done wrong or done right, and where it can be. */
export const pairSchema = z.strictObject({
  id: idSchema,
  group: idSchema,
  topics: z.array(idSchema),
  cautions: z.array(idSchema).min(1),
  /** Situations in which it is seen done wrong, and in which done right. */
  wrong: z.array(z.enum(['idle', 'high-idle', 'full-load', 'key-on', 'key-off'])),
  right: z.array(z.enum(['idle', 'high-idle', 'full-load', 'key-on', 'key-off'])),
  /** What must hold of this rig for it to be wrong: rail fuel that pierces skin, or return fuel that scalds. */
  needs: z.enum(['piercing-rail', 'piercing-when-cranked', 'scalding-return']).optional(),
});

export type Pair = z.infer<typeof pairSchema>;

export interface FactRanges {
  /** How often the danger is one that a number of this rig decides. */
  computedShare: number;
  pairs: readonly Pair[];
  /** Return fuel that is hotter scalds; cooler by far does not. */
  scaldingC: number;
  /** Times after the stop at which somebody comes with a wrench too soon, and late enough. */
  tooSoonSeconds: readonly number[];
  lateMinutes: number;
}

/** A rail counts as dangerous only well above what pierces skin. */
const CLEAR = 1.5;
/** Below this, fuel at a loosened nut wells up and stops. Assumed, as in the check of that fitting. */
const EMPTY = 20e3;

/** All that may be seen dangerous on a bench, or all that may be seen harmless. */
export function factsOf(bench: Bench, hazard: boolean, ranges: FactRanges, stream: RandomStream): Fact[] {
  const { job, condition } = bench;
  const atWork = job === 'open' ? nut(bench, hazard) : fittedGauge(bench, hazard, stream);
  const pairs = ranges.pairs.filter(
    (pair) =>
      (hazard ? pair.wrong : pair.right).some((one) => one === condition) &&
      (!hazard || holds(pair.needs, bench, ranges.scaldingC)),
  );
  const beside = pairs.map(
    ({ id, group, topics, cautions, needs }): Fact => ({
      id,
      hazard,
      topics,
      cautions,
      with: numbersOf(bench),
      computed: hazard && needs !== undefined,
      group,
    }),
  );
  return [...(atWork ? [atWork] : []), ...beside];
}

/** A wrench on the nut: too soon after the stop, or once the rail has emptied. */
function nut(bench: Bench, hazard: boolean): Fact | undefined {
  const pressure = railPressure(bench);
  if (hazard ? pressure < CLEAR * PIERCES_SKIN : pressure > EMPTY) return undefined;
  return {
    id: 'nut',
    hazard,
    topics: ['high-pressure-and-leakage'],
    cautions: ['injection-injury', 'residual-pressure'],
    with: numbersOf(bench),
    computed: true,
    group: 'lines',
  };
}

function holds(needs: Pair['needs'], bench: Bench, scaldingC: number): boolean {
  const cranked = bench.day.points.cranking.values.trueRailPressure ?? 0;
  if (needs === 'piercing-rail') return railPressure(bench) > CLEAR * PIERCES_SKIN;
  if (needs === 'piercing-when-cranked') return cranked > CLEAR * PIERCES_SKIN;
  return needs === undefined || returnTemperature(bench) > toSi(scaldingC, '°C');
}

/** What any line of the bay may want to say of this rig. */
export function numbersOf(bench: Bench): Record<string, Value> {
  const { day, port } = bench;
  const { cranking } = day.points;
  const rail = railPressure(bench);
  const density = day.points.idle.values.fuelDensity ?? 830;
  const back = Math.round(fromSi(returnTemperature(bench), '°C'));
  return {
    port,
    rail: said(rail),
    cranked: said(cranking.values.trueRailPressure ?? 0),
    pierces: said(PIERCES_SKIN),
    times: Math.round(rail / PIERCES_SKIN),
    speed: Math.round(Math.sqrt((2 * rail) / density) / 10) * 10,
    back: saidTemperature(returnTemperature(bench)),
    flash: saidTemperature(toSi(day.fuel.flashPointC, '°C')),
    above: back >= day.fuel.flashPointC ? 'yes' : 'no',
    off: bench.secondsOff,
    minutes: Math.floor(bench.secondsOff / 60),
  };
}
