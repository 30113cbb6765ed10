import { expect, test } from 'vitest';
import { decideTopic, evidenceAt } from '@/lib/competency/decide';
import type { Tally } from '@/lib/competency/tally';
import { changesSoon } from '@/lib/readiness/changes-soon';
import { standingOf } from '@/lib/readiness/standing';
import { answered, aProfile, NOW, shown } from '../../support/shown';

const DAY = 86_400_000;

function changes(tallies: Record<string, Tally>, horizonDays = 90, profile = aProfile) {
  const standing = standingOf(shown(tallies, { profile }));
  return changesSoon(standing, profile, { tallies: new Map(Object.entries(tallies)), halfLifeDays: 180 }, horizonDays);
}

test('what is ready is named with the first day on which it no longer is', () => {
  const filtration = answered(9, 1);
  const [change] = changes({ filtration }, 365, { ...aProfile, recentDays: 3650 });
  expect(change).toMatchObject({ topic: 'filtration', from: 'ready', because: 'fades' });
  const rule = { confidence: 0.9, refuse: 0.1, minimum: 4 };
  const decided = (at: number) => decideTopic(evidenceAt(filtration, at, { cut: 0, halfLifeDays: 180 }), rule);
  expect([decided((change?.at ?? 0) - DAY), decided(change?.at ?? 0)]).toEqual(['ready', 'not-enough-evidence']);
});

test('what does not change within the days that are looked ahead is not named', () => {
  expect(changes({ filtration: answered(60, 0) })).toEqual([]);
});

test('what nothing was decided on does not change', () => {
  expect(changes({ filtration: answered(2, 2) }, 3650)).toEqual([]);
});

test('a decision ends when its newest response is too old, not yet as well as ready', () => {
  const tallies = { filtration: answered(60, 0, 150), 'fuel-quality': answered(0, 60, 120) };
  expect(changes(tallies)).toEqual([
    { topic: 'filtration', from: 'ready', because: 'too-old', at: NOW + 50 * DAY },
    { topic: 'fuel-quality', from: 'not-yet', because: 'too-old', at: NOW + 80 * DAY },
  ]);
});
