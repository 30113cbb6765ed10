import { expect, test } from 'vitest';
import { hurtBy } from '@/lib/assignments/date-change';

const at = (hour: number) => new Date(Date.UTC(2026, 2, 2, hour));
const assessed = {
  rules: { mode: 'assessed', minutes: 60, late: 'refused' },
  opensAt: at(8),
  closesAt: at(12),
} as const;
const practice = { ...assessed, rules: { ...assessed.rules, mode: 'practice' } } as const;

test.each([
  ['a later closing, at work', assessed, at(8), at(13), { now: at(9), begun: true }, undefined],
  ['an earlier closing, at work', assessed, at(8), at(11), { now: at(9), begun: true }, 'earlier'],
  ['an earlier closing, nobody at work', assessed, at(8), at(11), { now: at(9), begun: false }, undefined],
  ['another opening, at work', assessed, at(9), at(12), { now: at(9), begun: true }, 'begun'],
  ['another opening, nobody at work', assessed, at(10), at(12), { now: at(9), begun: false }, undefined],
  ['a closing that is over', assessed, at(8), at(9), { now: at(9), begun: false }, 'past'],
  ['a later closing once it was told', assessed, at(8), at(13), { now: at(12), begun: true }, 'told'],
  ['even where nobody began', assessed, at(8), at(13), { now: at(12), begun: false }, 'told'],
  ['a later closing of practice that closed', practice, at(8), at(13), { now: at(12), begun: true }, undefined],
  ['nothing at all', assessed, at(8), at(12), { now: at(11), begun: true }, undefined],
])('%s', (_, assignment, opensAt, closesAt, { now, begun }, hurt) => {
  expect(hurtBy(assignment, { opensAt, closesAt }, { now, begun, mostExtraTime: 0 })).toBe(hurt);
});

test('it is not told while somebody with more time goes on', () => {
  const later = { opensAt: at(8), closesAt: at(13) };
  expect(hurtBy(assessed, later, { now: at(12), begun: true, mostExtraTime: 0.5 })).toBeUndefined();
});
