import fc from 'fast-check';
import { expect, test } from 'vitest';
import { causesIn, topicsOf } from '@/lib/topics/topics-of';
import { findCase } from '@/lib/wishes/find-case';
import type { Wishes, WishName } from '@/lib/wishes/wishes';
import { catalogue } from '../support/bench-rig';
import { quickCertificate } from '../support/quick-certificate';

const some = (ids: Iterable<string>) => fc.subarray([...ids], { minLength: 1 });
const logits = fc.double({ min: -3, max: 3, noNaN: true });

const wishesArbitrary: fc.Arbitrary<Wishes> = fc.record(
  {
    rigs: some(catalogue.rigs.keys()),
    causes: some(catalogue.causes.keys()),
    topics: some(catalogue.topics.keys()),
    hardest: fc.boolean(),
    faults: fc.constantFrom('single', 'double'),
    difficulty: fc.tuple(logits, logits),
    minutes: fc.integer({ min: -5, max: 90 }),
  },
  { requiredKeys: [] },
);

/** Wishes that a name may be said of. `settled` nobody has to wish for; without causes or rigs wished for, all are. */
function named({ causes, rigs, topics, faults, difficulty, minutes }: Wishes): WishName[] {
  const asked = { causes, rigs, topics, faults, difficulty, minutes };
  return (Object.keys(asked) as (keyof typeof asked)[]).filter((name) => asked[name] !== undefined);
}

test('whatever is wished for, a case meets all of it, or a wish that was made is named', () => {
  fc.assert(
    fc.property(wishesArbitrary, fc.string({ maxLength: 12 }), (wishes, seed) => {
      const result = findCase(wishes, seed, catalogue, (theCase) => quickCertificate(theCase));
      if ('unmet' in result) {
        expect(named(wishes)).toContain(result.unmet);
        return;
      }
      const { rig, spec } = result.case;
      const wrong = causesIn(result.case, catalogue);
      const { certificate } = result;
      if (wishes.rigs) expect(wishes.rigs).toContain(rig.id);
      if (wishes.causes) for (const { id } of wrong) expect(wishes.causes).toContain(id);
      if (wishes.topics?.every((id) => catalogue.topics.get(id)?.areas.length))
        expect(topicsOf(result.case, catalogue).some(({ id }) => wishes.topics?.includes(id))).toBe(true);
      if (wishes.faults) expect(wrong).toHaveLength(wishes.faults === 'double' ? 2 : 1);
      expect(spec.hardest ?? false).toBe(wishes.hardest ?? false);
      const [min, max] = wishes.difficulty ?? [-9, 9];
      expect(certificate.difficulty >= min && certificate.difficulty <= max).toBe(true);
      expect(certificate.route.minutes).toBeLessThanOrEqual(wishes.minutes ?? 999);
    }),
    { numRuns: 60, endOnFailure: true },
  );
}, 60_000);
