import { expect, test } from 'vitest';
import type { Evidence } from '@/lib/competency/evidence';
import { standingUnderScheme } from '@/lib/readiness/scheme-standing';
import { aRoleProfile, aScheme } from '../../support/competency-rows';

const DAY = 86_400_000;
const now = 400 * DAY;
const scheme = aScheme({
  blueprint: [
    { topic: 'filtration', share: 0.5, atLeast: 8 },
    { topic: 'fuel-quality', share: 0.5, atLeast: 8 },
  ],
  windowDays: 100,
});
const profile = aRoleProfile({ safety: { clean: 5, atLeast: 3 } });

/** A case solved in full on both topics. */
function solved(number: number, changes: Partial<Evidence> = {}): Evidence[] {
  return ['filtration', 'fuel-quality'].map((topic) => ({
    topic,
    source: 'case',
    work: `attempt ${number}`,
    revision: 1,
    counts: true,
    score: 4,
    model: { kind: 'steps', steps: [-1.5, -0.5, 0.5, 1.5], spread: 0.5 },
    hints: 0,
    exposure: `case ${number}`,
    safetyEvents: 0,
    purpose: 'assessed',
    at: now - number * DAY,
    versions: { content: 'a', generator: 1 },
    detail: { findings: [], share: 1, because: 'finding' },
    ...changes,
  }));
}

const eight = Array.from({ length: 8 }, (_, index) => index + 1);

function standing(evidence: readonly Evidence[]) {
  return standingUnderScheme({ scheme, profile, evidence, at: now });
}

test('eight solved cases on each topic come to ready, one fewer to not enough', () => {
  expect(standing(eight.flatMap((number) => solved(number)))).toMatchObject({
    decision: 'ready',
    topics: [
      { topic: 'filtration', cut: 0, responses: 8, cases: 8 },
      { topic: 'fuel-quality', cut: 0, responses: 8, cases: 8 },
    ],
    safety: { code: 'clean', cases: 5 },
  });
  expect(standing(eight.slice(1).flatMap((number) => solved(number))).decision).toBe('not-enough-evidence');
});

test.each<[string, Partial<Evidence>]>([
  ['was practice', { purpose: 'practice' }],
  ['lies before the window', { at: now - 101 * DAY }],
  ['is yet to come', { at: now + 1 }],
  ['was withdrawn', { counts: false }],
  ['had been met in the case before', { exposure: 'case 2' }],
])('a response that %s does not count', (_, changes) => {
  const others = eight.slice(1).flatMap((number) => solved(number));
  const { decision, topics } = standing([...others, ...solved(1, changes)]);
  expect(decision).toBe('not-enough-evidence');
  expect(topics.map(({ responses }) => responses)).toEqual([7, 7]);
});

test('a task practised before does not count when it is assessed', () => {
  const practised = solved(9, { purpose: 'practice', exposure: 'case 1' });
  const { topics } = standing([...eight.flatMap((number) => solved(number)), ...practised]);
  expect(topics.map(({ responses }) => responses)).toEqual([7, 7]);
});

test('only the last revision of a response counts', () => {
  const evidence = eight.flatMap((number) => solved(number));
  const revised = evidence.map((one) => ({ ...one, revision: 2, score: 0 }));
  expect(standing([...revised, ...evidence]).decision).toBe('not-yet');
});

test('no strength elsewhere makes up for a weak topic', () => {
  const evidence = eight.flatMap((number) => solved(number));
  const weak = evidence.map((one) => (one.topic === 'filtration' ? { ...one, score: 0 } : one));
  expect(standing(weak).decision).toBe('not-yet');
});

test('a safety-critical act among the newest cases means not yet, among older ones nothing', () => {
  const withAct = (number: number) =>
    standing(eight.flatMap((one) => solved(one, one === number ? { safetyEvents: 1 } : {})));
  expect(withAct(5)).toMatchObject({ decision: 'not-yet', safety: { code: 'unsafe', events: 1 } });
  expect(withAct(6)).toMatchObject({ decision: 'ready', safety: { code: 'clean', events: 0 } });
});

test('a response does not fade inside the window', () => {
  const old = standing(eight.flatMap((number) => solved(number, { at: now - (90 + number) * DAY })));
  const fresh = standing(eight.flatMap((number) => solved(number)));
  expect(old.topics.map(({ chance }) => chance)).toEqual(fresh.topics.map(({ chance }) => chance));
});
