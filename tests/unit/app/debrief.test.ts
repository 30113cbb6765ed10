import { expect, test } from 'vitest';
import { ledTo } from '@/app/_server/debrief-view';
import { outcomeKind } from '@/app/learn/cases/[attemptId]/debrief/outcome-kind';
import type { Mistake } from '@/lib/checks/check';

test.each([
  [['a'], ['a'], true, 'right'],
  [['a'], ['a', 'b'], false, 'oneTooMany'],
  [['a'], ['b', 'a'], false, 'oneTooMany'],
  [['a'], ['b'], true, 'area'],
  [['a'], ['b', 'c'], false, 'wrong'],
  [['a', 'b'], ['b', 'a'], true, 'both'],
  [['a', 'b'], ['b'], false, 'oneOfTwo'],
  [['a', 'b'], ['c', 'a'], false, 'oneOfTwo'],
  [['a', 'b'], ['c', 'd'], true, 'twoArea'],
  [['a', 'b'], ['c'], false, 'twoWrong'],
] as const)('%s called as %s, areas right: %s', (truths, answers, area, kind) => {
  expect(outcomeKind(truths, answers, area)).toBe(kind);
});

const lowGauge: Mistake = {
  id: 'low-gauge',
  consequence: 'instrument-destroyed',
  instrument: 'dial-0-30-psi',
  condition: 'cranking',
  text: { en: 'Cranking with a low-range gauge fitted' },
};
const reading = { condition: 'cranking', instrument: { id: 'dial-0-30-psi', name: 'Dial' } } as const;
const destroyed = { code: 'instrument-destroyed' } as const;

test('a known mistake is named beside what came of it, and beside nothing else', () => {
  expect(ledTo(lowGauge, reading, destroyed)).toBe(true);
  expect(ledTo(lowGauge, { ...reading, condition: 'idle' }, destroyed)).toBe(false);
  expect(ledTo(lowGauge, { ...reading, instrument: { id: 'dial-0-300-psi', name: 'Dial' } }, destroyed)).toBe(false);
  expect(ledTo(lowGauge, reading, { code: 'high-pressure-jet' })).toBe(false);
  const cracked: Mistake = { id: 'cracked', consequence: 'jet', text: { en: 'Cracking a nut on a running engine' } };
  expect(ledTo(cracked, reading, { code: 'high-pressure-jet' })).toBe(true);
  expect(ledTo({ ...cracked, consequence: 'misleading' }, reading, destroyed)).toBe(false);
});
