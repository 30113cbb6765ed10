import { expect, test } from 'vitest';
import { ODDS_AT, oddsAt, rulesOf, type TopicRule } from '@/lib/readiness/odds';
import { aProfile } from '../../support/shown';

const rule: TopicRule = { cut: 0.5, confidence: 0.95, refuse: 0.05, minimum: 8, maximum: 30 };

test('topics that are decided alike share their rule', () => {
  const [first, second] = aProfile.topics as [(typeof aProfile.topics)[0], (typeof aProfile.topics)[0]];
  const profile = { ...aProfile, topics: [first, second, { ...first, topic: 'returns-and-temperature' }] };
  expect(rulesOf(profile).map(({ topics }) => topics)).toEqual([
    ['filtration', 'returns-and-temperature'],
    ['fuel-quality'],
  ]);
});

test('the odds of a rule are the same every time, and sum to one', () => {
  const [one, other] = [oddsAt(rule, 0), oddsAt(rule, 0)];
  expect(one).toEqual(other);
  expect(one.ready + one.notYet + one.undecided).toBeCloseTo(1, 12);
  expect(one.responses).toBeGreaterThanOrEqual(rule.minimum);
  expect(one.responses).toBeLessThanOrEqual(rule.maximum);
});

// The rule bounds the chance that whoever is found ready is below the line, given the population; for people who stand well below
// it the reference table (40 Rasch items, the same rule) has 1 and 7 in a thousand at 1 and 0.5 below the line. A share here errs
// by 0.016 at most there (300 people), so that 0.05 is three standard errors above.
test('the further from the line, the surer the decision', () => {
  const ready = ODDS_AT.map((fromLine) => oddsAt(rule, fromLine).ready);
  expect(ready).toEqual([...ready].sort((a, b) => a - b));
  expect(ready[0]).toBeLessThan(0.05);
  expect(ready.at(-1)).toBeGreaterThan(0.75);
});
