import { describe, expect, test } from 'vitest';
import { GRID } from '@/lib/competency/grid';
import { chanceAtOrAbove, meanOf, spreadOf } from '@/lib/competency/posterior';
import { agedTo, emptyTally, posteriorAt, type Response, tallyOf, withResponse } from '@/lib/competency/tally';
import { fromBytes, toBytes } from '@/lib/competency/tally-bytes';
import { logChances } from '@/lib/competency/task-model';
import { weightOf } from '@/lib/competency/weights';
import { choice, steps } from '../../support/task-models';

const DAY = 86_400_000;
const noon = 20_000 * DAY;
const response = (more: Partial<Response> = {}): Response => ({
  at: noon,
  model: choice(0.3),
  score: 1,
  weight: 1,
  ...more,
});

test('nothing answered leaves the prior', () => {
  const posterior = posteriorAt(emptyTally, noon, 180);
  expect(meanOf(posterior)).toBeCloseTo(0, 12);
  expect(spreadOf(posterior)).toBeCloseTo(1, 6);
  expect(tallyOf([], 180)).toEqual(emptyTally);
});

describe('a response', () => {
  test('adds its log chances, aged and weighed', () => {
    const tally = tallyOf([response({ weight: 0.5 }), response({ at: noon + 90 * DAY, score: 0 })], 90);
    const [right, wrong] = [logChances(choice(0.3), 1), logChances(choice(0.3), 0)];
    expect([...tally.sum]).toEqual(
      Array.from(GRID, (_, at) => expect.closeTo(0.25 * (right[at] ?? 0) + (wrong[at] ?? 0), 9)),
    );
    expect(tally).toMatchObject({ at: noon + 90 * DAY, count: 2, weight: 1.25 });
  });

  test('that is older than the newest is taken in as old as it is', () => {
    const [old, young] = [response({ at: noon - 60 * DAY, model: steps(-1, 1), score: 1 }), response()];
    const late = withResponse(withResponse(emptyTally, young, 60), old, 60);
    const inTime = withResponse(withResponse(emptyTally, old, 60), young, 60);
    expect(late.at).toBe(noon);
    expect([...late.sum]).toEqual([...inTime.sum].map((log) => expect.closeTo(log, 12)));
  });

  test('of weight 0 is as if it had not been given, its time too', () => {
    const tally = withResponse(emptyTally, response(), 180);
    expect(withResponse(tally, response({ at: noon + DAY, weight: 0 }), 180)).toBe(tally);
    expect(tallyOf([response(), response({ at: noon + DAY, weight: 0 })], 180)).toEqual(tally);
  });

  test.each([Number.NaN, -0.1, 1.1])('of weight %d is refused', (weight) => {
    expect(() => withResponse(emptyTally, response({ weight }), 180)).toThrow(RangeError);
    expect(() => tallyOf([response({ weight })], 180)).toThrow(RangeError);
  });

  test('with a score that the task does not have is refused', () => {
    for (const score of [-1, 2, 0.5, Number.NaN])
      expect(() => withResponse(emptyTally, response({ score }), 180)).toThrow('No score');
  });

  test('at no time is refused', () => {
    expect(() => withResponse(emptyTally, response({ at: Number.NaN }), 180)).toThrow(RangeError);
  });

  test('leaves the tally that it is added to as it was', () => {
    const tally = withResponse(emptyTally, response(), 180);
    const before = [...tally.sum];
    withResponse(tally, response({ at: noon + DAY, score: 0 }), 180);
    expect([...tally.sum]).toEqual(before);
    expect(emptyTally.sum.every((log) => log === 0)).toBe(true);
  });
});

describe('ageing', () => {
  test('halves everything in a half-life, and stops where nothing fades', () => {
    const tally = tallyOf([response()], 30);
    expect([...agedTo(tally, noon + 30 * DAY, 30)]).toEqual([...tally.sum].map((log) => log / 2));
    expect(agedTo(tally, noon + 3000 * DAY, null)).toEqual(tally.sum);
    expect(agedTo(tally, noon + 3000 * DAY, Number.POSITIVE_INFINITY)).toEqual(tally.sum);
  });

  test('never makes a response count for more than it did', () => {
    const tally = tallyOf([response()], 30);
    expect(agedTo(tally, noon - 30 * DAY, 30)).toEqual(tally.sum);
  });

  test('goes by the moment, whatever a clock on the wall says of it', () => {
    // The same moment written down in three time zones, one of them in summer time.
    const moments = ['2026-03-29T03:30:00+02:00', '2026-03-29T01:30:00Z', '2026-03-28T21:30:00-04:00'].map(Date.parse);
    expect(new Set(moments).size).toBe(1);
    const later = Date.parse('2026-04-28T01:30:00Z');
    for (const at of moments)
      expect(agedTo(tallyOf([response({ at })], 30), later, 30)[0]).toBeCloseTo(
        (logChances(choice(0.3), 1)[0] ?? 0) / 2,
        12,
      );
  });

  test('ends at the prior', () => {
    const tally = tallyOf(
      Array.from({ length: 30 }, () => response()),
      180,
    );
    const posterior = posteriorAt(tally, noon + 100 * 365 * DAY, 180);
    expect(meanOf(posterior)).toBeCloseTo(0, 9);
    expect(spreadOf(posterior)).toBeCloseTo(1, 6);
  });
});

describe('many responses', () => {
  const many = (score: number, count: number) =>
    posteriorAt(
      tallyOf(
        Array.from({ length: count }, () => response({ score })),
        null,
      ),
      noon,
      null,
    );

  test.each([200, 5000])('%i, all right or all wrong, keep mean, spread and chances finite', (count) => {
    for (const score of [0, 1]) {
      const posterior = many(score, count);
      expect(posterior.every((share) => share >= 0 && share <= 1)).toBe(true);
      expect(posterior.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 12);
      expect(Math.sign(meanOf(posterior))).toBe(score === 1 ? 1 : -1);
      expect(Math.abs(meanOf(posterior))).toBeLessThan(6);
      expect(spreadOf(posterior)).toBeGreaterThan(0);
    }
    expect(chanceAtOrAbove(many(1, count), 1)).toBeGreaterThan(0.999);
  });

  test('all right where guessing is easy lift somebody less than where it is not', () => {
    const guessed = tallyOf(
      Array.from({ length: 10 }, () => response({ model: choice(0.3, { floor: 0.5 }) })),
      null,
    );
    const worked = tallyOf(
      Array.from({ length: 10 }, () => response()),
      null,
    );
    expect(meanOf(posteriorAt(guessed, noon, null))).toBeLessThan(meanOf(posteriorAt(worked, noon, null)) - 0.3);
  });
});

describe('working out anew', () => {
  test('after a change of marks gives what answering so would have given', () => {
    const log = [response(), response({ at: noon + DAY, model: steps(-1, 0, 1), score: 1 }), response({ score: 0 })];
    const changed = log.map((one) => (one.model.kind === 'steps' ? { ...one, score: 3 } : one));
    const answered = changed.reduce((tally, one) => withResponse(tally, one, 180), emptyTally);
    expect([...tallyOf(changed, 180).sum]).toEqual([...answered.sum].map((log) => expect.closeTo(log, 12)));
    expect(meanOf(posteriorAt(tallyOf(changed, 180), noon, 180))).toBeGreaterThan(
      meanOf(posteriorAt(tallyOf(log, 180), noon, 180)),
    );
  });

  test('goes by the task as it was answered: another difficulty since then changes nothing', () => {
    const log = [response({ model: choice(0.3) })];
    const before = tallyOf(log, null);
    const after = tallyOf([...log, response({ model: choice(1.4) })], null);
    const second = logChances(choice(1.4), 1);
    expect([...after.sum]).toEqual([...before.sum].map((sum, at) => expect.closeTo(sum + (second[at] ?? 0), 12)));
  });

  test('counts a task that was answered before no second time', () => {
    const again = response({ at: noon + DAY, weight: weightOf({ hints: 0, earlier: 1 }) });
    expect(tallyOf([response(), again], 180)).toEqual(tallyOf([response()], 180));
  });
});

test('bytes that are not those of a sum are refused', () => {
  expect(toBytes(emptyTally.sum)).toHaveLength(8 * 241);
  expect(() => fromBytes(new Uint8Array(8 * 240))).toThrow('has 1928 bytes, here are 1920');
});

test('bytes have the least significant first', () => {
  // IEEE 754: 1.5 is 3FF8 0000 0000 0000.
  const bytes = toBytes(Float64Array.from(GRID, () => 1.5));
  expect([...bytes.subarray(0, 8)]).toEqual([0, 0, 0, 0, 0, 0, 0xf8, 0x3f]);
});
