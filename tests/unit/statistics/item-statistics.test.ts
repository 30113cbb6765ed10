import { describe, expect, test } from 'vitest';
import { choiceCounts } from '@/lib/statistics/choices';
import { itemFlags } from '@/lib/statistics/item-flags';
import { type ItemStatistics, itemStatistics } from '@/lib/statistics/item-statistics';
import { reliabilityOf } from '@/lib/statistics/reliability';
import { responsesFrom } from '@/lib/statistics/responses';
import { timeQuantiles } from '@/lib/statistics/time-quantiles';

const none = undefined;

function anItem(change: Partial<ItemStatistics> = {}): ItemStatistics {
  return { people: 100, pairs: 100, difficulty: { value: 0.6 }, discrimination: { value: 0.4 }, ...change };
}

describe('answers that give no figure say why', () => {
  test('an item that nobody answered', () => {
    const [, unanswered] = itemStatistics(
      responsesFrom([
        [1, none],
        [0, none],
        [1, none],
      ]),
    );
    expect(unanswered).toEqual({
      people: 0,
      difficulty: { why: 'no-answers' },
      discrimination: { why: 'too-few' },
      pairs: 0,
    });
  });

  test('an item that everybody got right, and a rest that does not differ', () => {
    const [same, only] = itemStatistics(
      responsesFrom([
        [1, 0],
        [1, 1],
        [1, 0],
        [1, 1],
      ]),
    );
    expect(same?.discrimination).toEqual({ why: 'item-without-spread' });
    expect(only?.discrimination).toEqual({ why: 'rest-without-spread' });
  });

  test('three tenths that are never quite the same number are no spread', () => {
    // 0.1 + 0.2 is not 0.3, and a rest of either is one and the same.
    const rows = [
      [1, 0.1, 0.2],
      [0, 0.3, 0],
      [1, 0, 0.3],
      [0, 0.2, 0.1],
    ];
    expect(itemStatistics(responsesFrom(rows))[0]?.discrimination).toEqual({ why: 'rest-without-spread' });
  });

  test('alpha of one item, of one person, of equal sums, of nobody who answered all', () => {
    expect(reliabilityOf(responsesFrom([[1], [0]])).alpha).toEqual({ why: 'too-few-items' });
    expect(reliabilityOf(responsesFrom([[1, 0]])).alpha).toEqual({ why: 'too-few-people' });
    const equal = reliabilityOf(
      responsesFrom([
        [1, 0],
        [0, 1],
      ]),
    );
    expect([equal.alpha, equal.errorOfMeasurement]).toEqual([{ why: 'no-spread' }, { why: 'no-spread' }]);
    const parts = reliabilityOf(
      responsesFrom([
        [1, none],
        [none, 1],
        [0, none],
      ]),
    );
    expect(parts).toMatchObject({ alpha: { why: 'too-few-people' }, people: 0, leftOut: 3 });
    expect(reliabilityOf(responsesFrom([])).alpha).toEqual({ why: 'too-few-items' });
  });

  test('no time at all', () => {
    expect(timeQuantiles(Float64Array.of(Number.NaN))).toBeUndefined();
    expect(timeQuantiles(Float64Array.of(Number.NaN, 40))).toEqual({
      count: 1,
      lowerQuartile: 40,
      median: 40,
      upperQuartile: 40,
    });
  });
});

describe('missing answers', () => {
  const complete = [
    [1, 1, 1],
    [1, 0, 1],
    [0, 0, 1],
    [0, 1, 0],
    [1, 1, 0],
  ];

  test('count neither as wrong nor towards the rest', () => {
    // By hand: of item 2 the right share is 2 of 3; the rests of its three people are 1/1, 2/2 and 0/1.
    const rows = [
      [1, 1, none],
      [1, 1, 1],
      [none, 0, 0],
      [1, none, 0],
    ];
    const [, second] = itemStatistics(responsesFrom(rows));
    expect(second).toMatchObject({ people: 3, pairs: 3, difficulty: { value: 2 / 3 }, discrimination: { value: 1 } });
  });

  test('leave the person out of alpha, and say how many', () => {
    const whole = reliabilityOf(responsesFrom(complete));
    const more = reliabilityOf(responsesFrom([...complete, [1, none, 1]]));
    expect(more).toEqual({ ...whole, leftOut: 1 });
  });

  test('of an item nobody met leave the others their alpha', () => {
    const whole = reliabilityOf(responsesFrom(complete));
    const wider = reliabilityOf(responsesFrom(complete.map((row) => [...row, none])));
    expect([wider.alpha, wider.items, wider.without[3]]).toEqual([whole.alpha, 3, whole.alpha]);
  });
});

test('scores in parts make it alpha, and points of the same worth do not change it', () => {
  const right = [
    [1, 1, 0],
    [0, 0, 0],
    [1, 1, 1],
    [1, 0, 1],
  ];
  const one = reliabilityOf(responsesFrom(right));
  const two = reliabilityOf(
    responsesFrom(
      right.map((row) => row.map((score) => 2 * score)),
      [2, 2, 2],
    ),
  );
  expect([one.coefficient, two.coefficient]).toEqual(['kr-20', 'kr-20']);
  expect(two.alpha.value).toBeCloseTo(one.alpha.value ?? Number.NaN, 12);
  expect(two.errorOfMeasurement.value).toBeCloseTo(2 * (one.errorOfMeasurement.value ?? Number.NaN), 12);
  expect(
    reliabilityOf(
      responsesFrom([
        [0.5, 1],
        [1, 1],
        [0, 0],
      ]),
    ).coefficient,
  ).toBe('alpha');
  expect(
    reliabilityOf(
      responsesFrom(
        [
          [1, 2],
          [0, 2],
          [0, 0],
        ],
        [1, 2],
      ),
    ).coefficient,
  ).toBe('alpha');
});

test('responses of the wrong shape are refused', () => {
  expect(() => responsesFrom([[1, 0], [1]])).toThrow(RangeError);
  expect(() => responsesFrom([[2]])).toThrow(RangeError);
  expect(() => responsesFrom([[Number.NaN]])).toThrow(RangeError);
  expect(() => responsesFrom([[0]], [0])).toThrow(RangeError);
});

describe('flags', () => {
  const codes = (item: ItemStatistics) => itemFlags(item).map(({ code }) => code);

  test('a sound item has none', () => {
    expect(itemFlags(anItem())).toEqual([]);
  });

  test('few people are said first', () => {
    expect(codes(anItem({ people: 29, difficulty: { value: 0.1 } }))).toEqual(['too-few', 'too-hard']);
    expect(codes(anItem({ people: 30 }))).toEqual([]);
  });

  test('easy and hard begin beyond the limits', () => {
    const at = (value: number) => codes(anItem({ difficulty: { value } }));
    expect([at(0.95), at(0.951), at(0.2), at(0.199)]).toEqual([[], ['too-easy'], [], ['too-hard']]);
  });

  test('a correlation against the rest is sure with many people and not with few', () => {
    const at = (value: number, pairs: number) => itemFlags(anItem({ discrimination: { value }, pairs }));
    // By hand: tanh(atanh(−0.3) + 1.645/√(n − 3)) is −0.14 at 100 people and +0.10 at 20.
    expect(at(-0.3, 100)).toEqual([{ code: 'negative-discrimination', discrimination: -0.3, beyondChance: true }]);
    expect(at(-0.3, 20)).toEqual([{ code: 'negative-discrimination', discrimination: -0.3, beyondChance: false }]);
    expect(at(0, 5000)).toEqual([{ code: 'low-discrimination', discrimination: 0, limit: 0.2, beyondChance: true }]);
    expect(at(0.2, 100)).toEqual([]);
  });

  test('an item that all answered alike', () => {
    expect(codes(anItem({ difficulty: { value: 1 }, discrimination: { why: 'item-without-spread' } }))).toEqual([
      'too-easy',
      'everybody-alike',
    ]);
  });
});

describe('what was chosen', () => {
  /** Twelve people: those who name the filter did badly elsewhere, those who name the pump well. */
  const named = [...new Array(7).fill('pump'), ...new Array(5).fill('filter')];
  const responses = responsesFrom(named.map((name) => [name === 'filter' ? 1 : 0, name === 'pump' ? 1 : 0]));
  const choices = {
    options: ['filter', 'pump', 'leak'],
    person: Int32Array.from(named.keys()),
    item: new Int32Array(named.length),
    option: Int32Array.from(named, (name) => (name === 'filter' ? 0 : 1)),
    right: [new Set(['filter']), new Set<string>()],
  };

  test('is counted with how its choosers did elsewhere', () => {
    expect(choiceCounts(responses, choices)).toEqual([
      [
        { option: 'pump', right: false, count: 7, elsewhere: 1 },
        { option: 'filter', right: true, count: 5, elsewhere: 0 },
      ],
      [],
    ]);
  });

  test('flags a wrong cause that more people named, and that the able named', () => {
    const [counts] = choiceCounts(responses, choices);
    expect(itemFlags(anItem(), counts)).toEqual([
      { code: 'wrong-more-popular-than-right', option: 'pump', count: 7, right: 5 },
      { code: 'wrong-chosen-by-the-able', option: 'pump', count: 7, elsewhere: 1, rightElsewhere: 0 },
    ]);
  });

  test('shows a right one that nobody named', () => {
    const nobody = { ...choices, right: [new Set(['leak']), new Set<string>()] };
    expect(choiceCounts(responses, nobody)[0]?.at(-1)).toEqual({
      option: 'leak',
      right: true,
      count: 0,
      elsewhere: undefined,
    });
  });

  test('refuses an item that is not there', () => {
    expect(() => choiceCounts(responses, { ...choices, item: new Int32Array(named.length).fill(2) })).toThrow(
      RangeError,
    );
  });
});
