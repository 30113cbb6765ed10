import type { Catalogue } from '../../../catalogue';
import type { RandomStream } from '../../../random';
import type { Fault } from '../../shared/broken-day';
import type { RigDay } from '../../shared/rig-day';
import { shuffled } from '../../shared/shuffled-options';
import { type Change, type Direction, effectsOf, type Look, looksOn, NO_READING } from './changes';
import { livelyLooks } from './lively-looks';

/** A reading that is asked about: nothing about its direction is open. */
export interface Row {
  look: Look;
  /** Of the look among those of its day. */
  index: number;
  change: Change & { direction: Direction };
}

/**
 * Readings of which one at least moves, no two of the same check, in a drawn order; undefined where the fault moves too few.
 */
export function drawRows(
  stream: (name: string) => RandomStream,
  day: RigDay,
  fault: Fault,
  [least, most]: readonly [number, number],
  catalogue: Catalogue,
): Row[] | undefined {
  const rows = decidedRows(day, fault, catalogue);
  const count = least + Math.floor(stream('rows').next() * (most - least + 1));
  const moving = 1 + Math.floor(stream('moving').next() * count);
  const mixed = shuffled(stream('looks'), rows);
  const moved = ofDifferentChecks(mixed.filter(({ change }) => change.direction !== 'stays')).slice(0, moving);
  if (moved.length === 0) return undefined;
  const lively = livelyLooks(day, catalogue);
  const rest = mixed.filter(({ change, index }) => change.direction === 'stays' && lively.has(index));
  const drawn = ofDifferentChecks([...moved, ...rest]).slice(0, count);
  return drawn.length < least ? undefined : shuffled(stream('places'), drawn);
}

function decidedRows(day: RigDay, fault: Fault, catalogue: Catalogue): Row[] {
  const effects = effectsOf(day, fault, catalogue);
  return looksOn(day, catalogue).flatMap((look, index) => {
    const change = effects[index];
    if (!change || change === NO_READING || !change.direction) return [];
    return [{ look, index, change: { ...change, direction: change.direction } }];
  });
}

function ofDifferentChecks(rows: readonly Row[]): Row[] {
  const checks = new Set<string>();
  return rows.filter(({ look }) => !checks.has(look.check.id) && checks.add(look.check.id));
}
