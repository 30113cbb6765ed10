import { expect, test } from 'vitest';
import { loadCatalogue } from '@/content/load';
import { checkProfiles } from '@/lib/readiness/check-profiles';
import { type RoleProfile, roleProfileSchema } from '@/lib/readiness/profile';

const { profiles, topics } = loadCatalogue();
const [profile] = profiles.values() as IterableIterator<RoleProfile>;
const base = profile as RoleProfile;

test('the ready profiles say that they are assumed, and ask for safe work', () => {
  expect(profiles.size).toBeGreaterThanOrEqual(3);
  for (const { source, safety, topics: required } of profiles.values()) {
    expect(source.kind).toBe('assumed');
    expect(safety.clean).toBeGreaterThan(0);
    expect(required.map(({ topic }) => topic)).toContain('safe-working-and-isolation');
  }
});

test('work without anybody beside asks to have been seen', () => {
  for (const { id, handsOn } of profiles.values()) expect(handsOn === null).toBe(!id.endsWith('-unsupervised'));
});

test('a profile that contradicts itself is refused where it does', () => {
  const [first] = base.topics as [RoleProfile['topics'][number]];
  const wrong: [object, (string | number)[]][] = [
    [{ topics: [first, first] }, ['topics', 1, 'topic']],
    [{ refuse: 0.5, topics: [{ ...first, confidence: 0.5 }] }, ['topics', 0, 'confidence']],
    [{ minimum: 9, maximum: 8 }, ['maximum']],
    [{ safety: { clean: 2, atLeast: 3 } }, ['safety', 'atLeast']],
    [
      { handsOn: [{ id: 'a', topic: first.topic, outOf: 2, pass: 3, text: { en: 'Does it' } }] },
      ['handsOn', 0, 'pass'],
    ],
  ];
  for (const [change, path] of wrong) {
    const parsed = roleProfileSchema.safeParse({ ...base, ...change });
    expect(parsed.error?.issues.map((issue) => issue.path)).toEqual([path]);
  }
});

test('a topic that there is not is named', () => {
  const strange = { ...base, topics: [{ topic: 'baking', cut: 0, confidence: 0.9 }] };
  expect(checkProfiles({ profiles: new Map([[base.id, strange]]), topics })).toEqual([
    `content/profiles/${base.id}.json: unknown topic baking`,
  ]);
});
