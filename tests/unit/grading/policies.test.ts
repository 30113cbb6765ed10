import { beforeAll, describe, expect, test } from 'vitest';
import { type Bin, type Calibration, calibrate } from '@/app/_cli/policies/calibrate';
import { expert } from '@/app/_cli/policies/expert';
import { certifiedJobs } from '@/app/_cli/policies/job';
import { partsChanger } from '@/app/_cli/policies/parts-changer';
import { randomClicker } from '@/app/_cli/policies/random-clicker';
import { type PolicyScore, scorePolicies } from '@/app/_cli/policies/score-policies';
import { soundButSlow } from '@/app/_cli/policies/sound-but-slow';
import { rightVerdictsWrongReasons } from '@/app/_cli/policies/wrong-reasons';
import { catalogue } from '../../support/bench-rig';

/*
 * Simulated learners, with the bounds that grading has to meet over five hundred cases (npm run policies), here over a
 * dozen: each bound is loosened by three standard errors of the mean, and by nothing else.
 */
const CASES = 12;
const policies = [expert, soundButSlow, rightVerdictsWrongReasons, randomClicker, partsChanger];
const drawn = { word: 'twelve', hardest: false };

describe('over a dozen cases', () => {
  let scores: PolicyScore[] = [];
  beforeAll(() => {
    scores = scorePolicies(policies, { ...drawn, count: CASES }, catalogue);
  }, 600_000);

  function scoreOf(id: string) {
    const score = scores.find(({ policy }) => policy === id);
    if (!score) throw new Error(`No scores of ${id}`);
    return { ...score, allowance: (3 * score.sd) / Math.sqrt(CASES) };
  }

  test('an expert earns 95 of a hundred and solves every case', () => {
    const { mean, allowance, solved } = scoreOf('expert');
    expect(mean).toBeGreaterThanOrEqual(95 - allowance);
    expect(solved).toBe(1);
  });

  test('a random clicker earns no more than 25', () => {
    const { mean, allowance } = scoreOf('random-clicker');
    expect(mean).toBeLessThanOrEqual(25 + allowance);
  });

  test('a parts changer earns no more than 20', () => {
    const { mean, allowance } = scoreOf('parts-changer');
    expect(mean).toBeLessThanOrEqual(20 + allowance);
  });

  test('who is right for the wrong reasons lands between, and earns nothing for reasons', () => {
    const wrong = scoreOf('right-verdicts-wrong-reasons');
    expect(wrong.mean).toBeGreaterThan(scoreOf('random-clicker').mean + wrong.allowance);
    expect(wrong.mean).toBeLessThan(scoreOf('expert').mean - wrong.allowance);
    // Areas that a reading tells nothing about may be named by chance.
    expect(wrong.parts.reasons).toBeLessThan(0.1);
    expect(wrong.parts.verdicts).toBe(scoreOf('expert').parts.verdicts);
  });

  test('who judges soundly but looks at the wrong things first loses time, not judgement', () => {
    const slow = scoreOf('sound-but-slow');
    expect(slow.minutes).toBeGreaterThan(scoreOf('expert').minutes);
    expect(slow.parts.route).toBeLessThan(scoreOf('expert').parts.route);
    expect(slow.mean).toBeGreaterThan(scoreOf('random-clicker').mean);
  });
});

test('the same case gives the same acts', () => {
  for (const job of certifiedJobs({ ...drawn, count: 1 }, catalogue))
    for (const policy of policies) expect(policy.work(job)).toEqual(policy.work(job));
}, 120_000);

describe('belief over a hundred cases', () => {
  const COUNT = 100;
  let counted: Calibration | undefined;
  beforeAll(() => {
    counted = calibrate({ ...drawn, word: 'hundred', count: COUNT }, catalogue);
  }, 600_000);

  /** Of a bin's share, if every belief in it were sound; beliefs of one case count once. */
  const standardError = ({ believed, cases }: Bin) => Math.sqrt((believed * (1 - believed)) / Math.max(1, cases));

  test.each(['every', 'leading'] as const)('is true as often as it says, of %s cause', (which) => {
    const { bins, error } = counted?.[which] ?? { bins: [], error: Number.NaN };
    const all = bins.reduce((sum, { count }) => sum + count, 0);
    // 0.03 is what two thousand cases are held to; a hundred may miss by chance, three standard errors in each bin.
    const chance = bins.reduce((sum, bin) => sum + (bin.count / all) * 3 * standardError(bin), 0);
    expect(error).toBeLessThanOrEqual(0.03 + chance);
  });

  test('of all causes sums to one in every case and at every step', () => {
    const bins = counted?.every.bins ?? [];
    const told = bins.reduce((sum, { count, believed }) => sum + count * believed, 0);
    const steps = counted?.leading.bins.reduce((sum, { count }) => sum + count, 0) ?? Number.NaN;
    // Sums of some thousand rounded shares.
    expect(told).toBeCloseTo(steps, 6);
    expect(steps).toBeGreaterThan(COUNT);
  });
});
