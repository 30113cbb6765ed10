import type { Case } from '../cases/case';
import type { Catalogue } from '../catalogue';
import { findLimit, limitBounds } from '../checks/limit';
import type { ConditionId } from '../rig/condition';
import type { Rig } from '../rig/rig';
import { type Pascal, toSi } from '../units';
import type { ReadingAct } from './acts';
import type { SafetyEvent } from './grade';
import type { Numbered } from './marking';

/**
 * Everything that could have hurt someone: an instrument lost to a pressure beyond its range, a fitting opened under
 * pressure, an engine turned with a gauge on whose range ends below what the sheet lets one expect there.
 */
export function safetyEvents(
  readings: readonly Numbered<ReadingAct>[],
  { rig }: Pick<Case, 'rig'>,
  catalogue: Catalogue,
): SafetyEvent[] {
  return readings.flatMap((reading) => {
    const code = dangerOf(reading) ?? (crankedLowRange(reading, rig, catalogue) ? 'cranked-low-range' : undefined);
    return code ? [{ seq: reading.seq, code }] : [];
  });
}

function dangerOf({ shown }: ReadingAct): SafetyEvent['code'] | undefined {
  if (shown.some(({ kind }) => kind === 'destroyed')) return 'instrument-destroyed';
  return shown.some(({ kind }) => kind === 'jet') ? 'high-pressure-jet' : undefined;
}

const STANDING: readonly ConditionId[] = ['key-on', 'key-off'];

function crankedLowRange({ check, condition, instrument }: ReadingAct, rig: Rig, catalogue: Catalogue): boolean {
  const gauge = catalogue.gauges.get(instrument);
  if (STANDING.includes(condition) || gauge?.overRange.kind !== 'destroyed') return false;
  const most = toSi(gauge.range.max, gauge.unit);
  const measured = catalogue.checks.get(check)?.quantities ?? [];
  return measured.some(({ of }) => of.kind === 'above-ambient' && most < expectedAt(of.node, rig, catalogue));
}

/**
 * The highest pressure that the limit sheet lets one expect at a node once the engine turns: by a line of its own, or by one
 * of a node from which fuel comes there through a part whose drop the sheet limits. An engine that cranks may catch, so that
 * every condition counts in which it turns.
 */
export function expectedAt(node: string, rig: Rig, { checks }: Pick<Catalogue, 'checks'>): Pascal {
  const on = [...checks.values()].filter((check) => check.ports[rig.id]);
  const lines = on.flatMap((check) =>
    check.quantities.flatMap(({ id, of }) =>
      check.conditions.flatMap((condition) => {
        const line = STANDING.includes(condition) ? undefined : findLimit(rig, check.id, condition, id);
        return line ? [{ of, bounds: limitBounds(line) }] : [];
      }),
    ),
  );
  const at = (place: string, seen: readonly string[]): Pascal => {
    const expected = lines.map(({ of, bounds: { min = 0, max = min } }) => {
      if (of.kind === 'above-ambient' && of.node === place) return max;
      return of.kind === 'drop' && of.to === place && !seen.includes(of.from) ? at(of.from, [...seen, place]) : 0;
    });
    return Math.max(0, ...expected);
  };
  return at(node, []);
}
