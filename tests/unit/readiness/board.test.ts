import { expect, test } from 'vitest';
import type { Tally } from '@/lib/competency/tally';
import { type BoardPerson, boardOf, type OnBoard } from '@/lib/readiness/board';
import { type BoardView, changesIn, usualBoardView, viewedBoard } from '@/lib/readiness/board-view';
import { packedPeople, unpackedPeople } from '@/lib/readiness/board-wire';
import { answered, aProfile, NOW } from '../../support/shown';

const DAY = 86_400_000;

function onBoard(id: string, tallies: Record<string, Tally>, rest: Partial<OnBoard> = {}): OnBoard {
  const evidence = {
    tallies: new Map(Object.entries(tallies)),
    cases: new Map([['filtration', 2]]),
    safety: [{ events: 0 }, { events: 0 }],
  };
  return { id, name: id, classes: [], evidence, signOffEndsAt: null, ...rest };
}

const strong = answered(30, 0);
const board = boardOf(
  [
    onBoard('Ann', { filtration: strong, 'fuel-quality': strong }, { signOffEndsAt: NOW + 40.5 * DAY }),
    onBoard('bob', { filtration: answered(0, 12) }, { classes: ['night'] }),
    onBoard('Cy', { filtration: answered(30, 0, 190), 'fuel-quality': answered(2, 0) }),
    onBoard('Di', {}),
  ],
  aProfile,
  180,
  NOW,
);
const topics = aProfile.topics.map(({ topic }) => ({ id: topic }));

function names(changes: Partial<BoardView>): string[] {
  return viewedBoard({ topics, people: board }, { ...usualBoardView, ...changes }).map(({ name }) => name);
}

test('everybody stands somewhere on every topic, and as a whole', () => {
  expect(board.map(({ decision }) => decision)).toEqual([
    'ready',
    'not-yet',
    'not-enough-evidence',
    'not-enough-evidence',
  ]);
  expect(board.map(({ cells }) => cells.map(({ missing }) => missing ?? 'ready'))).toEqual([
    ['ready', 'ready'],
    ['weak', 'untested'],
    ['ready', 'too-few'],
    ['untested', 'untested'],
  ]);
  expect(board[0]?.cells[0]).toMatchObject({ responses: 30, cases: 2 });
});

test('what time alone changes is told in whole days', () => {
  expect(board.map(changesIn)).toEqual([40, null, 10, null]);
});

test('a view narrows down by name, class, decision and what changes soon', () => {
  expect(names({})).toEqual(['Ann', 'bob', 'Cy', 'Di']);
  expect(names({ name: 'B' })).toEqual(['bob']);
  expect(names({ classId: 'night' })).toEqual(['bob']);
  expect(names({ decision: 'not-enough-evidence' })).toEqual(['Cy', 'Di']);
  expect([names({ soon: '30' }), names({ soon: '60' })]).toEqual([['Cy'], ['Ann', 'Cy']]);
});

test('a view sorts, and whoever has nothing in the column comes last either way', () => {
  expect(names({ sort: 'decision' })).toEqual(['Ann', 'bob', 'Cy', 'Di']);
  expect(names({ sort: 'filtration', down: true }).slice(2)).toEqual(['bob', 'Di']);
  expect(names({ sort: 'filtration' })[0]).toBe('bob');
  expect([names({ sort: 'soon' }), names({ sort: 'soon', down: true })]).toEqual([
    ['Cy', 'Ann', 'bob', 'Di'],
    ['Ann', 'Cy', 'bob', 'Di'],
  ]);
});

test('a board comes out of its packing as it went in, but for digits that nobody sees', () => {
  const rounded = (people: readonly BoardPerson[]) =>
    people.map(({ cells, ...rest }) => ({
      ...rest,
      cells: cells.map(({ chance, ...cell }) => ({ ...cell, chance: Math.round(chance * 1000) / 1000 })),
    }));
  expect(unpackedPeople(packedPeople(board))).toEqual(rounded(board));
});

test('five hundred people with thirteen topics are sent in less than 170 kB', () => {
  const [first] = board as [BoardPerson];
  const cell = { decision: 'ready', chance: 0.9712, responses: 24, cases: 11, changesIn: 57 } as const;
  const people = Array.from({ length: 500 }, () => ({ ...first, id: 'x'.repeat(24), cells: Array(13).fill(cell) }));
  expect(JSON.stringify(packedPeople(people)).length).toBeLessThan(170_000);
});
