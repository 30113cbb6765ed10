import { expect, test } from 'vitest';
import { expectedAt, isLowRange } from '@/lib/checks/low-range';
import type { ConditionId } from '@/lib/rig/condition';
import { aRig, catalogue } from '../../support/bench-rig';

test('what the sheet lets one expect at a port is its own line’s, or that of the part before it', () => {
  const rig = aRig();
  // The sheet: gear-pump pressure 1150–1500 kPa at full load, cooling plate and filter behind the pump.
  expect(expectedAt('gear-pump-outlet', rig, catalogue.checks)).toBeCloseTo(1500e3, 6);
  expect(expectedAt('main-filter-inlet', rig, catalogue.checks)).toBeCloseTo(1500e3, 6);
  expect(expectedAt('return-manifold', rig, catalogue.checks)).toBeCloseTo(20e3, 6);
  expect(expectedAt('main-filter-inlet', aRig('plover-7'), catalogue.checks)).toBeCloseTo(590e3, 6);
});

function low(gaugeId: string, condition: ConditionId, checkId = 'gear-pump-pressure') {
  const [gauge, check] = [catalogue.gauges.get(gaugeId), catalogue.checks.get(checkId)];
  if (!gauge || !check) throw new Error(`No ${gaugeId} or no ${checkId}`);
  return isLowRange(gauge, check, condition, aRig(), catalogue.checks);
}

test('a gauge is of too low a range where its end lies below that, as soon as the engine turns', () => {
  expect(low('dial-0-200-kpa', 'cranking')).toBe(true);
  expect(low('dial-0-300-psi', 'cranking')).toBe(false);
  expect(low('dial-0-30-psi', 'key-on', 'prime-pressure')).toBe(false);
  expect(low('dial-0-30-psi', 'cranking', 'prime-pressure')).toBe(true);
});

test('an instrument whose pointer only stops is in no danger', () => {
  expect(low('differential-dial-0-30-psi', 'full-load')).toBe(false);
});
