import { expect, test } from 'vitest';
import summer from '@/content/fuels/summer-grade.json';
import { fuelSchema } from '@/lib/fluids/fuel';

function problemsOf(change: Partial<typeof summer>): string[] {
  const parsed = fuelSchema.safeParse({ ...summer, ...change });
  return parsed.success ? [] : parsed.error.issues.map(({ path, message }) => `${path.join('.')}: ${message}`);
}

test('a fuel may plug a filter as soon as it clouds', () => {
  expect(problemsOf({ filterabilityC: summer.cloudPointC })).toEqual([]);
});

test('a fuel that plugs filters before it clouds is refused', () => {
  expect(problemsOf({ filterabilityC: summer.cloudPointC + 1 })).toEqual([
    expect.stringMatching(/^filterabilityC: expected .* at or below cloudPointC/),
  ]);
});

test('a fuel that thickens with heat is refused', () => {
  expect(problemsOf({ viscosity100: summer.viscosity40 })).toEqual([
    expect.stringMatching(/^viscosity100: expected .* below viscosity40/),
  ]);
});

test.each(['cloudPointC', 'filterabilityC', 'flashPointC'] as const)('a fuel without %s is refused', (key) => {
  const { [key]: _left, ...rest } = summer;
  expect(fuelSchema.safeParse(rest).error?.issues[0]?.path).toEqual([key]);
});
