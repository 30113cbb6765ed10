import { describe, expect, test } from 'vitest';
import { isClear, only, rounded, type Sum, slip, sumsBody, toStep } from '@/lib/questions/kinds/work-out/sum';
import { headsOf, readTable } from '@/lib/questions/kinds/work-out/table';
import type { QuestionKindId } from '@/lib/questions/question';
import { questionFromSeed } from '@/lib/questions/question-from-seed';
import { catalogue } from '../../../support/bench-rig';

const table = { from: -10, step: 10, values: [1.02, 1.01, 1] };

describe('a printed table', () => {
  test.each([
    [-10, 1.02],
    [-5, 1.015],
    [0, 1.01],
    [7.5, 1.0025],
    [10, 1],
  ])('gives at %d, straight on between two rows, %d', (at, value) => {
    expect(readTable(table, at)).toBeCloseTo(value, 12);
  });

  test.each([-10.1, 10.1])('has nothing for %d', (at) => {
    expect(() => readTable(table, at)).toThrow(RangeError);
  });

  test('heads its rows in even steps', () => {
    expect(headsOf(table)).toEqual([-10, 0, 10]);
  });
});

describe('a question of one number', () => {
  const sum: Sum = { id: 'a', line: { say: 'a' }, units: [], value: 20, tolerance: 1, slips: [] };
  const body = (slips: Sum['slips']) =>
    sumsBody({ stem: [], explanation: [], topics: [], seconds: 1, sums: [{ ...sum, slips }] });

  test.each([
    [22.1, false],
    [17.9, false],
    [22.3, true],
    [-20, true],
  ])('is clear of a slip to %d: %s', (value, clear) => {
    expect(isClear(body([slip('sign', value)]))).toBe(clear);
  });

  test('counts its parts, and tells one mark apart', () => {
    expect(body([])).toMatchObject({ features: { parts: 1 }, steps: 1, guessFloor: 0 });
  });
});

test('numbers are rounded as they are printed, and readings to a mark', () => {
  expect(rounded(1.00449, 2)).toBe(1);
  expect(toStep(1462.6, 5)).toBe(1465);
  expect(toStep(15.3, 0.25)).toBe(15.25);
});

test('a stem is given those values alone that it names', () => {
  expect(only({ given: 1, answer: 2 }, 'given')).toEqual({ given: 1 });
});

describe('a rig without a gear pump', () => {
  const kind: QuestionKindId = 'work-out';
  test.each(['suction-tank-and-air', 'low-pressure-supply-and-regulation', 'flow-path-and-components'])(
    'has something to reckon on %s, and not what it lacks',
    (topic) => {
      for (let seed = 0; seed < 40; seed++) {
        const { stem, topics } = questionFromSeed({ kind, seed: `${seed}`, rig: 'plover-7', topic }, catalogue);
        expect(topics).toContain(topic);
        expect(JSON.stringify(stem)).not.toMatch(/gear-pump|suctionAbsolute/);
      }
    },
  );
});
