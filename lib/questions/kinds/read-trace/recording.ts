import type { Catalogue } from '../../../catalogue';
import type { Check } from '../../../checks/check';
import { recordedLines } from '../../../checks/recorded-lines';
import type { ShownLine } from '../../../checks/shown';
import type { Gauge } from '../../../gauges/gauge';
import type { ConditionId } from '../../../rig/condition';
import type { RigState } from '../../../rig/rig-state';
import { type TraceId, traceIds } from '../../../rig/traces/trace';
import { canRun } from '../../../symptoms/complaint';
import { brokenOn, type Fault } from '../../shared/broken-day';
import type { RigDay } from '../../shared/rig-day';

/** A trace that the procedures of a rig record, and what with. */
export interface Recorded {
  trace: TraceId;
  check: Check;
  condition: ConditionId;
  instrument: Gauge;
}

/** What is recorded on a rig, in the order a shop would go through it. */
export function recordedOn({ rig }: RigDay, { checks, gauges }: Catalogue): Recorded[] {
  return traceIds.flatMap((trace) => {
    const check = [...checks.values()].find(
      ({ ports, quantities }) =>
        ports[rig.id] && quantities.some(({ of }) => of.kind === 'trace' && of.trace === trace),
    );
    const [condition, instrument] = [check?.conditions[0], gauges.get(check?.instruments[0] ?? '')];
    return check && condition && instrument ? [{ trace, check, condition, instrument }] : [];
  });
}

/** The lines of a fault as the recorder draws them; undefined where the engine does not run for it. */
export function linesWith(day: RigDay, { trace, condition }: Recorded, fault: Fault): ShownLine[] | undefined {
  const state = brokenOn(day, fault);
  return runsFor(state, trace, condition) ? recordedLines(state.traces.get(trace)) : undefined;
}

/** The same without a fault. */
export function linesWithout(day: RigDay, { trace, condition }: Recorded): ShownLine[] | undefined {
  return runsFor(day, trace, condition) ? recordedLines(day.traces.get(trace)) : undefined;
}

/** Pressure can only decay from an idle that is reached. */
function runsFor({ points }: RigState, trace: TraceId, condition: ConditionId): boolean {
  return canRun(points, trace === 'decay' ? 'idle' : condition);
}
