import { expect, test } from 'vitest';
import { standingOf } from '@/lib/readiness/standing';
import { answered, aProfile, NOW, shown } from '../../support/shown';

const strong = answered(12, 0);
const weak = answered(0, 12);
const both = { filtration: strong, 'fuel-quality': strong };

test('whoever has shown every topic and worked safely is ready', () => {
  expect(standingOf(shown(both))).toMatchObject({ decision: 'ready', profileId: 'a-role', profileVersion: 3, at: NOW });
});

test('a topic that nobody asked about is not enough evidence, however strong the others are', () => {
  const { decision, topics } = standingOf(shown({ filtration: answered(40, 0) }));
  expect(decision).toBe('not-enough-evidence');
  expect(topics[1]).toMatchObject({
    topic: 'fuel-quality',
    decision: 'not-enough-evidence',
    responses: 0,
    newestAt: null,
  });
});

// Standard normal distribution: Φ(0.5) = 0.691462 (tables, e.g. NIST Handbook 1.3.6.7.1; from memory).
test('without evidence the chance is that of anybody', () => {
  const [, second] = standingOf(shown({})).topics;
  expect(second?.chance).toBeCloseTo(0.691462, 4);
  expect(second?.mean).toBeCloseTo(0, 10);
  // ±1.644854, the 95 % point of the same distribution.
  expect(second?.interval[0]).toBeCloseTo(-1.6449, 3);
  expect(second?.interval[1]).toBeCloseTo(1.6449, 3);
});

test('one topic below its line is not yet, whatever the others', () => {
  expect(standingOf(shown({ ...both, filtration: weak })).decision).toBe('not-yet');
});

test('fewer responses than the profile asks for decide nothing', () => {
  const { topics } = standingOf(shown({ ...both, filtration: answered(3, 0) }));
  expect(topics[0]?.decision).toBe('not-enough-evidence');
});

test('evidence older than the profile lets count decides nothing, neither way', () => {
  for (const tally of [answered(40, 0, 201), answered(0, 40, 201)])
    expect(standingOf(shown({ ...both, filtration: tally })).decision).toBe('not-enough-evidence');
  expect(standingOf(shown({ ...both, filtration: answered(40, 0, 200) })).decision).toBe('ready');
});

test('a safety-critical act among the newest cases is not yet', () => {
  const unsafe = standingOf(shown(both, { safety: [{ events: 0 }, { events: 0 }, { events: 1 }] }));
  expect(unsafe).toMatchObject({ decision: 'not-yet', safety: { code: 'unsafe', cases: 3, events: 1 } });
  const long = standingOf(shown(both, { safety: [0, 0, 0, 1].map((events) => ({ events })) }));
  expect(long).toMatchObject({ decision: 'ready', safety: { code: 'clean', cases: 3, events: 0 } });
});

test('too few cases to speak of safety are not enough evidence, unless one was unsafe', () => {
  const few = standingOf(shown(both, { safety: [{ events: 0 }] }));
  expect(few).toMatchObject({ decision: 'not-enough-evidence', safety: { code: 'too-few-cases', cases: 1 } });
  expect(standingOf(shown(both, { safety: [{ events: 2 }] })).safety).toMatchObject({ code: 'unsafe', events: 2 });
});

test('a profile without a gate asks for no cases', () => {
  const profile = { ...aProfile, safety: { clean: 0, atLeast: 0 } };
  expect(standingOf(shown(both, { profile, safety: [{ events: 3 }] })).decision).toBe('ready');
});
