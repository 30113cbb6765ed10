import { describe, expect, test } from 'vitest';
import { trueValue } from '@/lib/checks/quantity';
import { appliesTo } from '@/lib/faults/apply-cause';
import type { RigState } from '@/lib/rig/rig-state';
import {
  type ColumnId,
  coldDay,
  columnIds,
  type DirectionColumn,
  directionColumns,
} from '../reference/direction-columns';
import { petrel15 } from '../reference/direction-petrel-15';
import { plover7 } from '../reference/direction-plover-7';
import { type Moves, movesOf, type Rows } from '../reference/direction-rows';
import { tern13 } from '../reference/direction-tern-13';
import { aRig, catalogue, mildDay, stateOf, stateWith } from '../support/bench-rig';

/*
 * Which way each reading goes, slightly broken (severity 0.3) and badly (0.9), reasoned from hydraulics before it was computed
 * (the sign logic of suction, outlet restriction, air, worn pump and stuck regulator is common practice, no source; the
 * orders of size are hand arithmetic with the rig's parameters). A reading stays when it moves less than a twentieth of
 * its healthy value or than the least that its instrument shows, whichever is more.
 *
 * Of 2,924 cells of tern-13 25 disagreed when first run, of 2,992 of petrel-15 19. In all but one of each the reasoning had
 * missed something, which the row then says; in that one both rigs warm their fuel while cranking.
 * Of 2,160 of plover-7 71 disagreed; its table says of which kind.
 */
const tables: readonly [rig: string, rows: Rows][] = [
  ['tern-13', tern13],
  ['petrel-15', petrel15],
  ['plover-7', plover7],
];

describe.each(tables)('%s', (rigId, rows) => {
  test('the table speaks of every cause that can befall the rig, and of columns that it has', () => {
    expect(Object.keys(rows).sort()).toEqual(causesOf(rigId));
    const named = Object.values(rows).flatMap((row) => Object.keys(movesOf(row)));
    expect(named.filter((id) => !columnsOf(rigId).includes(id as ColumnId))).toEqual([]);
  });

  test.each(Object.entries(rows))('%s moves what it should', (cause, row) => {
    expect(seen(rigId, cause)).toEqual(predicted(rigId, row));
  });
});

function causesOf(rigId: string): string[] {
  const rig = aRig(rigId);
  return [...catalogue.causes.values()].flatMap((cause) => (appliesTo(rig, cause) ? [cause.id] : [])).sort();
}

function columnsOf(rigId: string): ColumnId[] {
  return columnIds.filter((id) => catalogue.checks.get(directionColumns[id].check)?.ports[rigId]);
}

/** Every column, with `==` for what a row does not list. */
function predicted(rigId: string, row: string): Moves {
  const moves = movesOf(row);
  return Object.fromEntries(columnsOf(rigId).map((id) => [id, moves[id] ?? '==']));
}

function seen(rigId: string, cause: string): Moves {
  const setting = cause === 'fuel-waxed' ? coldDay : mildDay;
  const rig = aRig(rigId);
  const healthy = stateOf(rig, setting);
  const [slight, bad] = [stateWith(cause, 0.3, setting, rig), stateWith(cause, 0.9, setting, rig)];
  return Object.fromEntries(
    columnsOf(rigId).map((id) => [id, direction(id, healthy, slight) + direction(id, healthy, bad)]),
  );
}

function direction(id: ColumnId, healthy: RigState, broken: RigState): string {
  const column: DirectionColumn = directionColumns[id];
  const before = reading(healthy, column);
  const moved = reading(broken, column) - before;
  const threshold = Math.max(column.least, column.farZero ? 0 : Math.abs(before) / 20);
  if (Math.abs(moved) <= threshold) return '=';
  return moved > 0 ? '+' : '-';
}

function reading(state: RigState, { check, condition, quantity }: DirectionColumn): number {
  const found = catalogue.checks.get(check)?.quantities.find(({ id }) => id === quantity);
  if (!found) throw new Error(`No ${quantity} in ${check}`);
  return trueValue(state, condition, found, 0);
}
