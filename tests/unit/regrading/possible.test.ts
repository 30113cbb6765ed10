import { expect, test } from 'vitest';
import { isPossible } from '@/lib/regrading/possible';
import { aBody } from '../../support/sitting-rows';
import { aSetBody, someRules } from '../../support/teaching-rows';

// Task 1 is a case, task 2 a question with the options a and b.
const body = aSetBody();
const [same, parallel] = [someRules(), someRules({ seeds: 'parallel' })];
const weights = { verdicts: 20, reasons: 20, call: 20, route: 20, practice: 20 };
const right = (place: number, ...options: string[]) => ({ kind: 'key', place, right: options }) as const;

test('a task that counts for nobody is one of the set', () => {
  const withdrawn = (place: number) => isPossible({ kind: 'withdraw', place }, body, same, undefined);
  expect([1, 2, 3].map(withdrawn)).toEqual([true, true, false]);
});

test('parts of a case are weighed where there is a case', () => {
  expect(isPossible({ kind: 'weights', weights }, body, same, undefined)).toBe(true);
  expect(isPossible({ kind: 'weights', weights }, { items: body.items.slice(1) }, same, undefined)).toBe(false);
});

test('a further right answer is an option of a question that everybody was asked', () => {
  expect(isPossible(right(2, 'b'), body, same, aBody)).toBe(true);
  expect(isPossible(right(2, 'b', 'z'), body, same, aBody)).toBe(false);
  expect(isPossible(right(1, 'b'), body, same, aBody)).toBe(false);
  expect(isPossible(right(2, 'b'), body, same, undefined)).toBe(false);
  expect(isPossible(right(2, 'b'), body, parallel, aBody)).toBe(false);
});
