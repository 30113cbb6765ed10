import { isLowRange } from '../../../checks/low-range';
import type { Gauge } from '../../../gauges/gauge';
import type { RandomStream } from '../../../random';
import { type Pascal, toSi } from '../../../units';
import { exact } from '../../shared/exact';
import { type Bench, mostAt, pressureAt, said } from './bench';
import type { Fact } from './fact';

/** So far beyond what a gauge survives, or below what it shows, that nothing hangs on the last kilopascal. */
const CLEAR = 1.1;

/** The gauge at the port: one that the pressure there destroys, or one that covers all the port can reach. */
export function fittedGauge(bench: Bench, hazard: boolean, stream: RandomStream): Fact | undefined {
  const { day, job, condition, node, port } = bench;
  const mayTurn = job === 'prime';
  const most = mostAt(day, node, condition, mayTurn);
  const now = pressureAt(day, node, condition);
  // With somebody at the key it is the cranking that has to be the danger, not what the lift pump already does.
  const fits = [...bench.catalogue.gauges.values()].filter((gauge) =>
    hazard ? bursts(gauge, most) && (!mayTurn || !bursts(gauge, now)) : covers(gauge, bench),
  );
  if (fits.length === 0) return undefined;
  const gauge = stream.pick(fits);
  return {
    id: mayTurn ? 'gauge-crank' : 'gauge',
    hazard,
    topics: ['instruments-and-uncertainty'],
    cautions: ['gauge-range', ...(mayTurn ? ['no-cranking-low-range'] : [])],
    with: {
      gauge: { name: 'gauge', id: gauge.id },
      full: exact(gauge.range.max, gauge.unit),
      inPsi: gauge.unit === 'psi' ? 'yes' : 'no',
      end: said(toSi(gauge.range.max, gauge.unit)),
      port,
      now: said(now),
      most: said(hazard ? most : mostAt(day, node, condition, true)),
    },
    computed: true,
    group: 'gauge',
  };
}

function bursts({ measures, overRange, range, unit }: Gauge, most: Pascal): boolean {
  if (!measures.includes('gauge-pressure') || overRange.kind !== 'destroyed') return false;
  return most > CLEAR * overRange.ratio * toSi(range.max, unit);
}

/** Whatever the engine does next. */
function covers(gauge: Gauge, { day, node, condition, catalogue: { checks } }: Bench): boolean {
  const { measures, overRange, range, unit } = gauge;
  if (!measures.includes('gauge-pressure') || overRange.kind !== 'destroyed') return false;
  if (toSi(range.max, unit) < CLEAR * mostAt(day, node, condition, true)) return false;
  return ![...checks.values()].some((check) => at(check, node) && isLowRange(gauge, check, 'idle', day.rig, checks));
}

function at({ quantities }: { quantities: readonly { of: { kind: string; node?: string } }[] }, node: string): boolean {
  return quantities.some(({ of }) => of.kind === 'above-ambient' && of.node === node);
}
