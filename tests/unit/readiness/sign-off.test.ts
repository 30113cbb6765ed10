import { expect, test } from 'vitest';
import type { RoleProfile } from '@/lib/readiness/profile';
import { type HandsOnCheck, obstaclesTo, type ToSign } from '@/lib/readiness/sign-off';
import { standingOf } from '@/lib/readiness/standing';
import { answered, aProfile, NOW, shown } from '../../support/shown';

const DAY = 86_400_000;
const strong = answered(12, 0);
const ready = standingOf(shown({ filtration: strong, 'fuel-quality': strong }));
const withHands: RoleProfile = {
  ...aProfile,
  handsOn: ['made-safe', 'changed'].map((id) => ({ id, topic: 'filtration', outOf: 3, pass: 2, text: { en: id } })),
};

function check(changes: Partial<HandsOnCheck> = {}): HandsOnCheck {
  const items = [
    { id: 'made-safe', score: 3 },
    { id: 'changed', score: 2 },
  ];
  return { id: 'check', profileId: 'a-role', items, unsafe: false, observedAt: NOW, takenBack: false, ...changes };
}

function codes(changes: Partial<ToSign>): string[] {
  const toSign = { profile: aProfile, standing: ready, checks: [], learnerId: 'learner', signerId: 'lead', ...changes };
  return obstaclesTo(toSign).map((one) => ('topic' in one ? `${one.code} ${one.topic} ${one.missing}` : one.code));
}

test('nothing stands in the way of whoever showed everything', () => {
  expect(codes({})).toEqual([]);
  expect(codes({ profile: withHands, checks: [check()] })).toEqual([]);
});

test('nobody signs themselves off', () => {
  expect(codes({ signerId: 'learner' })).toEqual(['oneself']);
});

test('every topic that is not ready is in the way, with what it is short of', () => {
  const standing = standingOf(shown({ filtration: answered(0, 12) }));
  expect(codes({ standing })).toEqual(['topic filtration weak', 'topic fuel-quality untested']);
});

test('unsafe work is in the way, and so is too little work to say', () => {
  const both = { filtration: strong, 'fuel-quality': strong };
  expect(codes({ standing: standingOf(shown(both, { safety: [{ events: 1 }] })) })).toEqual(['unsafe']);
  expect(codes({ standing: standingOf(shown(both, { safety: [] })) })).toEqual(['too-few-cases']);
});

test('a hands-on check that the profile asks for has to be there, for this role, and not taken back', () => {
  const not = ['hands-on-missing'];
  expect(codes({ profile: withHands })).toEqual(not);
  expect(codes({ profile: withHands, checks: [check({ profileId: 'another' })] })).toEqual(not);
  expect(codes({ profile: withHands, checks: [check({ takenBack: true })] })).toEqual(not);
});

test('of several hands-on checks the newest counts', () => {
  const failed = check({ items: [{ id: 'made-safe', score: 3 }], observedAt: NOW - DAY });
  expect(codes({ profile: withHands, checks: [failed] })).toEqual(['hands-on-below']);
  expect(codes({ profile: withHands, checks: [check(), failed] })).toEqual([]);
  expect(
    codes({ profile: withHands, checks: [failed, { ...failed, ...check({ observedAt: NOW - 2 * DAY }) }] }),
  ).toEqual(['hands-on-below']);
});

test('something dangerous that was seen is in the way, whether or not anything had to be seen', () => {
  for (const profile of [aProfile, withHands])
    expect(codes({ profile, checks: [check({ unsafe: true })] })).toEqual(['hands-on-unsafe']);
});

test('a hands-on check goes stale like any evidence', () => {
  const old = (days: number) => codes({ profile: withHands, checks: [check({ observedAt: NOW - days * DAY })] });
  expect([old(200), old(201)]).toEqual([[], ['hands-on-old']]);
});
