import { describe, expect, test } from 'vitest';
import { type Area, areas } from '@/lib/areas';
import type { AreaShares } from '@/lib/grading/grade';
import { implicationOf } from '@/lib/grading/implication';
import { standardRubric } from '../../support/marking';

const { reason } = standardRubric();

/** Shares of the named areas; nothing of the rest. */
function shares(some: Partial<Record<Area, number>>): AreaShares {
  return { ...(Object.fromEntries(areas.map((area) => [area, 0])) as AreaShares), ...some };
}

const before = shares({ priming: 0.5, filtration: 0.3, returns: 0.2 });
/** Priming gone, filtration leading, returns hardly moved. */
const after = shares({ priming: 0.01, filtration: 0.75, returns: 0.24 });

function implication(clears: Area[], suspects: Area[], afters: readonly [AreaShares, ...AreaShares[]] = [after]) {
  return implicationOf({ clears, suspects }, before, afters, reason);
}

describe('what follows for the areas', () => {
  test('all that is plain named rightly earns the whole', () => {
    expect(implication(['priming'], ['filtration'])).toMatchObject({ share: 1, missed: [] });
  });

  test('each named area tells its share before and after', () => {
    expect(implication(['priming'], []).clears).toEqual([{ area: 'priming', right: true, before: 0.5, after: 0.01 }]);
  });

  test('what fell by less than three tenths is not cleared, and what carries a twentieth stays suspect', () => {
    expect(implication(['returns'], ['returns'])).toMatchObject({
      clears: [{ right: false }],
      suspects: [{ right: true }],
    });
  });

  test('what was hardly there may be cleared by anything', () => {
    expect(implication(['fuel'], []).clears[0]?.right).toBe(true);
  });

  test('the share of the named that are right counts', () => {
    expect(implication(['priming', 'returns'], ['filtration']).share).toBeCloseTo(2 / 3, 12);
  });

  test('what is plain and left unnamed costs a part of it', () => {
    // One of two plain areas left out: half of the half that may be lost.
    expect(implication(['priming'], [])).toMatchObject({ share: 0.75, missed: ['filtration'] });
    expect(implication([], ['returns'])).toMatchObject({ share: 0.5, missed: ['priming', 'filtration'] });
  });

  test('naming nothing earns nothing where something is plain', () => {
    expect(implication([], [])).toMatchObject({ share: 0, missed: ['priming', 'filtration'] });
  });

  test('naming nothing is right where nothing is plain', () => {
    const even = shares({ priming: 0.35, filtration: 0.35, returns: 0.3 });
    expect(implicationOf({ clears: [], suspects: [] }, even, [even], reason)).toMatchObject({ share: 1, missed: [] });
  });

  test('a reading that tells nothing leaves what carried suspicion suspect', () => {
    const even = shares({ priming: 0.35, filtration: 0.35, returns: 0.3 });
    const named = implicationOf({ clears: [], suspects: ['priming', 'returns'] }, even, [even], reason);
    expect(named.share).toBe(1);
    expect(implicationOf({ clears: ['priming'], suspects: [] }, even, [even], reason).share).toBe(0);
  });
});

describe('two sound readings of the same gauge', () => {
  const nearly = shares({ priming: 0.36, filtration: 0.44, returns: 0.2 });

  test('both earn what either of them shows', () => {
    expect(implication(['priming'], [], [nearly]).clears[0]?.right).toBe(false);
    expect(implication(['priming'], [], [nearly, after]).clears[0]?.right).toBe(true);
  });

  test('only what all of them show is plain', () => {
    const doubtful = shares({ priming: 0.4, filtration: 0.35, returns: 0.25 });
    expect(implication([], ['returns'], [after, doubtful]).missed).toEqual([]);
    expect(implication([], ['returns'], [after, nearly]).missed).toEqual(['filtration']);
  });
});
