import { expect, test } from 'vitest';
import type { SteadyConditionId } from '@/lib/rig/condition';
import type { OperatingPoints } from '@/lib/rig/operating-point';
import { canRun, complaintOf, conditionsReachable, secondsToStart } from '@/lib/symptoms/complaint';
import { aRig, healthyPoints } from '../../support/bench-rig';

/** A healthy state with some values put in. */
function aState(changes: Partial<Record<SteadyConditionId, Record<string, number>>> = {}): OperatingPoints {
  const state = structuredClone(healthyPoints());
  for (const [condition, values] of Object.entries(changes))
    Object.assign(state[condition as SteadyConditionId].values, values);
  return state;
}

const { complaints } = aRig();
const code = [{ spn: 157, fmi: 18 }];

test('a healthy rig gives no complaint', () => {
  expect(complaintOf(aRig(), aState(), [])).toBeUndefined();
});

test.each<[string, OperatingPoints]>([
  ['will-not-start', aState({ cranking: { willStart: 0 } })],
  ['will-not-start', aState({ idle: { injectedShare: 0.2 } })],
  ['lacks-power', aState({ 'full-load': { injectedShare: complaints.powerShare - 0.01 } })],
  ['starts-slowly', aState({ cranking: { secondsToPrime: complaints.startSeconds + 0.1 } })],
  ['hunts', aState({ idle: { freeGasFraction: complaints.idleGasFraction + 0.01 } })],
  ['hunts', aState({ idle: { railShare: 1.3 } })],
  ['hunts', aState({ idle: { injectedShare: 0.8 } })],
])('the driver says %s', (expected, state) => {
  expect(complaintOf(aRig(), state, [])).toBe(expected);
});

test('a code alone lights the lamp', () => {
  expect(complaintOf(aRig(), aState(), code)).toBe('warning-lamp');
});

test('the worst complaint is the one that is told', () => {
  const state = aState({
    cranking: { secondsToPrime: 9 },
    'full-load': { injectedShare: 0.5 },
    idle: { railShare: 1.3 },
  });
  expect(complaintOf(aRig(), state, code)).toBe('lacks-power');
});

test('an engine that never gets there takes for ever to start', () => {
  const state = aState();
  delete state.cranking.values.secondsToPrime;
  expect(secondsToStart(state)).toBe(Number.POSITIVE_INFINITY);
});

test('an engine that does not start can still be cranked and switched on', () => {
  const state = aState({ cranking: { willStart: 0 } });
  expect(conditionsReachable(state, ['key-on', 'cranking', 'idle', 'full-load', 'key-off'])).toEqual([
    'key-on',
    'cranking',
    'key-off',
  ]);
});

test('an engine that starves under load still idles', () => {
  const state = aState({ 'full-load': { injectedShare: 0.1 } });
  expect(canRun(state, 'idle')).toBe(true);
  expect(canRun(state, 'full-load')).toBe(false);
});

test('a state without the value that is asked for is refused by name', () => {
  const state = aState();
  delete state['full-load'].values.injectedShare;
  expect(() => complaintOf(aRig(), state, [])).toThrow(/injectedShare at full-load/);
});
