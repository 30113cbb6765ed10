import { expect, test } from 'vitest';
import { dueOn, type Review, rememberedBy, scheduleOf, weakestFirst } from '@/lib/review/schedule';

const right = (card: string, day: number): Review => ({ card, credit: 1, day });
const wrong = (card: string, day: number): Review => ({ card, credit: 0, day });

test('a mark says how well something was remembered, and never that it was easy', () => {
  expect([0, 0.49, 0.5, 0.79, 0.8, 1].map(rememberedBy)).toEqual(['again', 'again', 'hard', 'hard', 'good', 'good']);
});

test('somebody who was never asked has no cards', () => {
  expect(scheduleOf([])).toEqual([]);
});

test('each card has its own history, whatever was asked between', () => {
  const apart = scheduleOf([right('dial', 0), right('dial', 3)]);
  const mixed = scheduleOf([right('dial', 0), wrong('judge', 1), right('dial', 3), wrong('judge', 4)]);
  expect(mixed.find(({ card }) => card === 'dial')).toEqual(apart[0]);
  expect(mixed).toHaveLength(2);
});

test('a first right answer is due after two days, a first wrong one after one', () => {
  expect(scheduleOf([right('dial', 10), wrong('judge', 10)]).map(({ card, due }) => [card, due])).toEqual([
    ['dial', 12],
    ['judge', 11],
  ]);
});

test('right answers put the next date further and further off, a wrong one brings it near', () => {
  const days = [0, 3, 13];
  const due = days.map((_, n) => {
    const [card] = scheduleOf(days.slice(0, n + 1).map((day) => right('dial', day)));
    return (card?.due ?? 0) - (card?.reviewed ?? 0);
  });
  expect([...due].sort((a, b) => a - b)).toEqual(due);
  expect(new Set(due).size).toBe(3);
  const [forgotten] = scheduleOf([...days.map((day) => right('dial', day)), wrong('dial', 40)]);
  expect((forgotten?.due ?? 0) - 40).toBeLessThan(due[2] ?? 0);
});

test('twice right on one day teaches no more than once', () => {
  const [once] = scheduleOf([right('dial', 5)]);
  const [twice] = scheduleOf([right('dial', 5), right('dial', 5)]);
  expect(twice?.stability).toBeCloseTo(once?.stability ?? 0, 6);
});

test('a day that lies before the last one counts as the same day', () => {
  const [back] = scheduleOf([right('dial', 5), right('dial', 3)]);
  expect(Number.isFinite(back?.due)).toBe(true);
});

test('what is due comes longest overdue first, and what is not due does not come', () => {
  const cards = scheduleOf([right('late', 0), right('later', 1), right('tomorrow', 4)]);
  expect(dueOn(cards, 5).map(({ card }) => card)).toEqual(['late', 'later']);
  expect(dueOn(cards, 6).map(({ card }) => card)).toEqual(['late', 'later', 'tomorrow']);
  expect(dueOn(cards, 1)).toEqual([]);
});

test('where nothing is due the least remembered comes first', () => {
  const cards = scheduleOf([right('strong', 5), wrong('weak', 5), right('older', 4)]);
  expect(weakestFirst(cards, 6).map(({ card }) => card)).toEqual(['weak', 'older', 'strong']);
});
