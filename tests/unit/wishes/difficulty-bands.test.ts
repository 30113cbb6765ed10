import { describe, expect, test } from 'vitest';
import { seedFromWord } from '@/lib/cases/case-code';
import { caseFromSeed } from '@/lib/cases/case-from-seed';
import { certify } from '@/lib/diagnosis/certificate';
import { difficultyBands } from '@/lib/wishes/difficulty-bands';
import { catalogue } from '../../support/bench-rig';

const rigs = [...catalogue.rigs.keys()];
const DRAWN = 24;

/** Difficulties of drawn cases that their checks settle. */
function drawn(hardest: boolean): number[] {
  return Array.from({ length: DRAWN }, (_, n) => {
    const seed = seedFromWord(`band-${n}`);
    const theCase = caseFromSeed({ rig: rigs[n % rigs.length] ?? '', seed, ...(hardest && { hardest }) }, catalogue);
    return certify(theCase, catalogue);
  }).flatMap(({ settled, difficulty }) => (settled ? [difficulty] : []));
}

describe.each([
  ['usual', false],
  ['hardest', true],
])('at the %s level', (_level, hardest) => {
  const { easier, middle, harder } = difficultyBands(hardest);

  test('the bands meet and leave nothing out', () => {
    expect([easier[0], harder[1]]).toEqual([Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY]);
    expect([easier[1], middle[1]]).toEqual([middle[0], harder[0]]);
    expect(middle[0]).toBeLessThan(middle[1]);
  });

  // Of 14 settled cases, fewer than two fall into a band of a third in 3 of 100 such draws (binomial).
  test('each band holds enough of what is drawn to be found', () => {
    const difficulties = drawn(hardest);
    for (const [from, to] of [easier, middle, harder]) {
      const inside = difficulties.filter((difficulty) => difficulty >= from && difficulty <= to);
      expect(inside.length).toBeGreaterThanOrEqual(2);
    }
  }, 120_000);
});
