import { describe, expect, test } from 'vitest';
import { trueValue } from '@/lib/checks/quantity';
import type { RigState } from '@/lib/rig/rig-state';
import {
  type ColumnId,
  coldDay,
  columnIds,
  type DirectionColumn,
  directionColumns,
} from '../reference/direction-columns';
import { tern13 } from '../reference/direction-tern-13';
import { aRig, catalogue, mildDay, stateOf, stateWith } from '../support/bench-rig';

/*
 * Which way each reading goes, slightly broken (severity 0.3) and badly (0.9), reasoned from hydraulics before it was computed
 * (the sign logic of suction, outlet restriction, air, worn pump and stuck regulator is common practice, no source; the
 * orders of size are hand arithmetic with the rig's parameters). A reading stays when it moves less than a twentieth of
 * its healthy value or than the least that its instrument shows, whichever is more.
 */
type Moves = Partial<Record<ColumnId, string>>;

const tables: readonly [rig: string, table: Record<string, string>][] = [['tern-13', tern13]];

describe.each(tables)('%s', (rigId, table) => {
  test('the table speaks of every cause, and of columns that there are', () => {
    expect(Object.keys(table).sort()).toEqual(causesOf());
    for (const row of Object.values(table)) expect(row).toMatch(/^([a-zA-Z]+:[-+=]{2}( |$))*$/);
    const named = Object.values(table).flatMap((row) => Object.keys(listed(row)));
    expect(named.filter((column) => !(column in directionColumns))).toEqual([]);
  });

  test.each(Object.entries(table))('%s moves what it should', (cause, row) => {
    expect(seen(rigId, cause)).toEqual(predicted(row));
  });
});

function causesOf(): string[] {
  return [...catalogue.causes.keys()].sort();
}

/** What a row says: `column:xy` for what moves. */
function listed(row: string): Moves {
  return Object.fromEntries(row.split(' ').flatMap((cell) => (cell === '' ? [] : [cell.split(':')])));
}

/** Every column, with `==` for what a row does not list. */
function predicted(row: string): Moves {
  return Object.fromEntries(columnIds.map((id) => [id, listed(row)[id] ?? '==']));
}

function seen(rigId: string, cause: string): Moves {
  const setting = cause === 'fuel-waxed' ? coldDay : mildDay;
  const rig = aRig(rigId);
  const healthy = stateOf(rig, setting);
  const [slight, bad] = [stateWith(cause, 0.3, setting, rig), stateWith(cause, 0.9, setting, rig)];
  return Object.fromEntries(columnIds.map((id) => [id, direction(id, healthy, slight) + direction(id, healthy, bad)]));
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
