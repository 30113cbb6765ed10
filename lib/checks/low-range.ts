import type { Gauge } from '../gauges/gauge';
import type { ConditionId } from '../rig/condition';
import type { Rig } from '../rig/rig';
import { type Pascal, toSi } from '../units';
import type { Check } from './check';
import { findLimit, limitBounds } from './limit';

type Checks = ReadonlyMap<string, Check>;

const STANDING: readonly ConditionId[] = ['key-on', 'key-off'];

/**
 * Whether an engine would be turned with a gauge on that its port may burst: one whose range ends below what the limit
 * sheet lets one expect there. A pointer that merely stops is in no danger.
 */
export function isLowRange(gauge: Gauge, check: Check, condition: ConditionId, rig: Rig, checks: Checks): boolean {
  if (STANDING.includes(condition) || gauge.overRange.kind !== 'destroyed') return false;
  const most = toSi(gauge.range.max, gauge.unit);
  return check.quantities.some(({ of }) => of.kind === 'above-ambient' && most < expectedAt(of.node, rig, checks));
}

/**
 * The highest pressure that the limit sheet lets one expect at a node once the engine turns: by a line of its own, or by one
 * of a node from which fuel comes there through a part whose drop the sheet limits. An engine that cranks may catch, so that
 * every condition counts in which it turns.
 */
export function expectedAt(node: string, rig: Rig, checks: Checks): Pascal {
  const lines = linesOfTurning(rig, checks);
  const at = (place: string, seen: readonly string[]): Pascal => {
    const expected = lines.map(({ of, bounds: { min = 0, max = min } }) => {
      if (of.kind === 'above-ambient' && of.node === place) return max;
      return of.kind === 'drop' && of.to === place && !seen.includes(of.from) ? at(of.from, [...seen, place]) : 0;
    });
    return Math.max(0, ...expected);
  };
  return at(node, []);
}

/** Lines of the limit sheet for conditions in which the engine turns, each with what it limits. */
function linesOfTurning(rig: Rig, checks: Checks) {
  const on = [...checks.values()].filter((check) => check.ports[rig.id]);
  return on.flatMap((check) =>
    check.quantities.flatMap(({ id, of }) =>
      check.conditions.flatMap((condition) => {
        const line = STANDING.includes(condition) ? undefined : findLimit(rig, check.id, condition, id);
        return line ? [{ of, bounds: limitBounds(line) }] : [];
      }),
    ),
  );
}
