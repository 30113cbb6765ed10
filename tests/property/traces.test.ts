import { describe, expect, test } from 'vitest';
import { appliesTo } from '@/lib/faults/apply-cause';
import { elementOfKind, type Rig } from '@/lib/rig/rig';
import { sensorLine } from '@/lib/rig/sensor-line';
import { type TraceId, traceIds } from '@/lib/rig/traces/trace';
import { Traces } from '@/lib/rig/traces/traces';
import { catalogue, fuelOf, mildDay } from '../support/bench-rig';
import { brokenBy } from '../support/broken-rig';

const rigs = [...catalogue.rigs.values()];

function featuresOf(rig: Rig): [string, number][] {
  const traces = new Traces(rig, mildDay, fuelOf(mildDay));
  return traceIds.flatMap((id) =>
    Object.entries(traces.get(id).features).map(([name, value]): [string, number] => [`${id} ${name}`, value]),
  );
}

/** Below this no trace tells anything: a sample of the controller, and what noise a recorder would hide. */
const LEAST: Record<TraceId, number> = { prime: 0.1, crank: 0.1, 'tank-vacuum': 10, snap: 0.5e6, decay: 0.1 };

/** A little less and a little more of a cause, on the same side of where the control unit stops believing its sensor. */
function nearby(rig: Rig, cause: string): [number, number] {
  const [from, to] = [0.5, 0.501].map((severity) => believesSensor(brokenBy(rig, [cause, severity])));
  return from === to ? [0.5, 0.501] : [0.4, 0.401];
}

function believesSensor(rig: Rig): boolean {
  return sensorLine(elementOfKind(rig, 'rail-sensor')).believed;
}

describe.each(rigs)('$id', (rig) => {
  const causes = [...catalogue.causes.values()].filter((cause) => appliesTo(rig, cause)).map(({ id }) => id);

  test('every trace comes out the same twice', () => {
    for (const id of traceIds) {
      const [one, other] = [1, 2].map(() =>
        new Traces(brokenBy(rig, ['injector-leakage-high', 0.37]), mildDay, fuelOf(mildDay)).get(id),
      );
      expect(other).toEqual(one);
    }
  });

  test.each(causes)('what is read off traces hardly moves when %s grows by a thousandth', (cause) => {
    const [before, after] = nearby(rig, cause).map((severity) => featuresOf(brokenBy(rig, [cause, severity])));
    before?.forEach(([name, value], index) => {
      const moved = Math.abs((after?.[index]?.[1] ?? Number.NaN) - value);
      const [trace] = name.split(' ') as [TraceId];
      expect({ name, continuous: moved <= 0.03 * Math.max(Math.abs(value), LEAST[trace] / 0.03) }).toEqual({
        name,
        continuous: true,
      });
    });
  });
});
