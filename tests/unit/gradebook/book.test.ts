import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { countingTurn } from '@/lib/gradebook/best-turn';
import { type BookPerson, type Cell, cellStates, meanOf, usualView, viewed } from '@/lib/gradebook/book';
import { cellOf } from '@/lib/gradebook/cell-of';
import { packed, unpacked } from '@/lib/gradebook/wire';

const done = (total: number): Cell => ({ state: 'done', total, late: false });
const missed: Cell = { state: 'missed', total: null, late: false };
const notBegun: Cell = { state: 'not-begun', total: null, late: false };
const closesAt = Date.UTC(2026, 0, 8);
const assignments = [
  { id: 'first', title: 'First', closesAt },
  { id: 'second', title: 'Second', closesAt },
];
const aPerson = (name: string, cells: Cell[], classes: string[] = []): BookPerson => ({
  id: name,
  name,
  classes,
  cells,
});
const book = {
  assignments,
  people: [
    aPerson('Zoë Quill', [done(80), notBegun], ['mornings']),
    aPerson('ada Moor', [done(40), done(90)], ['evenings']),
    aPerson('Ben 10', [missed, done(60)], ['mornings', 'evenings']),
    aPerson('Ben 9', [notBegun, notBegun]),
  ],
};
const names = (changes: Partial<typeof usualView>) =>
  viewed(book, { ...usualView, ...changes }).map(({ name }) => name);

test('a mean counts what was missed as nothing, and what is still to come not at all', () => {
  expect(meanOf([done(80), missed])).toBe(40);
  expect(meanOf([done(80), notBegun])).toBe(80);
  expect(meanOf([notBegun])).toBeNull();
});

describe('the people of a book', () => {
  test('stand by name as people read names, or the other way round', () => {
    expect(names({})).toEqual(['ada Moor', 'Ben 9', 'Ben 10', 'Zoë Quill']);
    expect(names({ down: true })).toEqual(['Zoë Quill', 'Ben 10', 'Ben 9', 'ada Moor']);
  });

  test('stand by mean or by one assignment, those without a number last either way', () => {
    expect(names({ sort: 'mean' })).toEqual(['Ben 10', 'ada Moor', 'Zoë Quill', 'Ben 9']);
    expect(names({ sort: 'second', down: true })).toEqual(['ada Moor', 'Ben 10', 'Ben 9', 'Zoë Quill']);
    expect(names({ sort: 'second' })).toEqual(['Ben 10', 'ada Moor', 'Ben 9', 'Zoë Quill']);
  });

  test('are narrowed down by part of a name, by class and by state', () => {
    expect(names({ name: ' BEN ' })).toEqual(['Ben 9', 'Ben 10']);
    expect(names({ classId: 'mornings' })).toEqual(['Ben 10', 'Zoë Quill']);
    expect(names({ state: 'missed' })).toEqual(['Ben 10']);
  });
});

test('what is sent of a book comes back as it was', () => {
  const cells = fc.record({
    state: fc.constantFrom(...cellStates),
    total: fc.option(fc.integer({ min: 0, max: 1000 }).map((tenths) => tenths / 10)),
    late: fc.boolean(),
  });
  fc.assert(
    fc.property(fc.array(fc.tuple(cells, cells)), (rows) => {
      const whole = { assignments, people: rows.map((row, index) => aPerson(`Person ${index}`, row)) };
      expect(unpacked(packed(whole))).toEqual(whole);
    }),
  );
});

describe('the turn that counts', () => {
  const aTurn = (number: number, total: number | null) => ({
    ...{ id: `turn-${number}`, number, total, waiting: 0 },
    handedIn: total !== null,
  });

  test('is the best, and of equals the first', () => {
    expect(countingTurn([aTurn(1, 50), aTurn(2, 70), aTurn(3, 70), aTurn(4, null)])?.number).toBe(2);
  });

  test('is the last begun while none was handed in', () => {
    expect(countingTurn([aTurn(1, null), aTurn(2, null)])?.number).toBe(2);
    expect(countingTurn([])).toBeUndefined();
  });
});

describe('a cell', () => {
  const turn = { id: 'a', number: 1, handedIn: true, handedInAt: closesAt - 5, total: 70, waiting: 0 };
  const standing = { given: true, turns: [], closesAt, endsAt: closesAt + 10, unseen: false };

  test('says of somebody without a turn whether it was given to them, and whether they may still begin', () => {
    expect(cellOf({ ...standing, given: false }, closesAt).state).toBe('not-given');
    expect(cellOf(standing, closesAt + 9).state).toBe('not-begun');
    expect(cellOf(standing, closesAt + 10).state).toBe('missed');
  });

  test('says that somebody is at it, that marks are waited for, and what came of it', () => {
    expect(cellOf({ ...standing, turns: [{ ...turn, handedIn: false, handedInAt: null }] }, closesAt).state).toBe(
      'open',
    );
    expect(cellOf({ ...standing, turns: [{ ...turn, waiting: 1 }] }, closesAt).state).toBe('waiting');
    expect(cellOf({ ...standing, turns: [turn] }, closesAt)).toEqual({ state: 'done', total: 70, late: false });
  });

  test('is late from the moment on that the assignment closed', () => {
    const late = (handedInAt: number) => cellOf({ ...standing, turns: [{ ...turn, handedInAt }] }, closesAt).late;
    expect([late(closesAt), late(closesAt + 1)]).toEqual([false, true]);
  });

  test('shows no total where marks are given without names, and keeps that of somebody who left the class', () => {
    expect(cellOf({ ...standing, unseen: true, turns: [turn] }, closesAt)).toMatchObject({
      state: 'unseen',
      total: null,
    });
    expect(cellOf({ ...standing, given: false, turns: [turn] }, closesAt).total).toBe(70);
  });
});
