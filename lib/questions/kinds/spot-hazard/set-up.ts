import type { Catalogue } from '../../../catalogue';
import type { RandomStream } from '../../../random';
import type { SteadyConditionId } from '../../../rig/condition';
import { elementOfKind, type Rig } from '../../../rig/rig';
import { drawDay } from '../../shared/rig-day';
import { type Bench, type Job, jobs, pressureAt } from './bench';
import type { FactRanges } from './facts-of';

const RUNNING = ['idle', 'high-idle', 'full-load'] as const;
/** A gauge belongs where there is something to read. */
const LEAST_PRESSURE = 20e3;

export interface SetUpWish {
  rig: Rig;
  ranges: FactRanges & { jobs: Readonly<Record<Job, number>> };
  catalogue: Pick<Catalogue, 'fuels' | 'gauges' | 'checks'>;
}

/** A rig with somebody at work on it; undefined where this rig has no such port. */
export function drawBench(wish: SetUpWish, stream: (name: string) => RandomStream): Bench | undefined {
  const { rig, ranges, catalogue } = wish;
  const job = stream('job').pick(jobs, (one) => ranges.jobs[one]);
  const condition = conditionOf(job, stream('condition'));
  const day = drawDay(stream('day'), rig, catalogue);
  const late = stream('late').next() < 0.5;
  const secondsOff = late ? ranges.lateMinutes * 60 : stream('seconds').pick(ranges.tooSoonSeconds);
  const ports = portsFor(job, rig, catalogue).filter(
    ({ node }) => job === 'open' || pressureAt(day, node, condition) > LEAST_PRESSURE,
  );
  if (ports.length === 0) return undefined;
  const { id, node } = stream('port').pick(ports);
  return { day, job, condition, port: id, node, secondsOff: job === 'open' ? secondsOff : 0, catalogue };
}

function conditionOf(job: Job, stream: RandomStream): SteadyConditionId {
  if (job === 'run') return stream.pick(RUNNING);
  return job === 'prime' ? 'key-on' : 'key-off';
}

/** Ports of the low side that some check puts a gauge on, or the rail's for a nut. */
function portsFor(job: Job, rig: Rig, { checks }: Pick<Catalogue, 'checks'>): { id: string; node: string }[] {
  const rail = elementOfKind(rig, 'rail').node;
  const gauged = [...checks.values()].flatMap(({ ports, quantities }) =>
    quantities.some(({ measures }) => measures === 'gauge-pressure' || measures === 'pressure-drop')
      ? (ports[rig.id] ?? [])
      : [],
  );
  const isLow = (node: string) => rig.nodes.some(({ id, side }) => id === node && side === 'low');
  return rig.ports.flatMap(({ id, node }) => {
    if (node === undefined) return [];
    return (job === 'open' ? node === rail : isLow(node) && gauged.includes(id)) ? [{ id, node }] : [];
  });
}
