import { expect, test } from 'vitest';
import { jetFrom, PIERCES_SKIN } from '@/lib/checks/jet';
import { catalogue } from '../../support/bench-rig';
import { aState } from '../../support/state';

const nut = catalogue.checks.get('high-pressure-fitting');
const dial = catalogue.checks.get('prime-pressure');

function behindTheNut(gaugePressure: number, density = 830) {
  const values = { ambientPressure: 100e3, fuelDensity: density };
  return aState({ pressures: { rail: 100e3 + gaugePressure }, values });
}

function jet(gaugePressure: number, density?: number) {
  if (!nut) throw new Error('No such check');
  return jetFrom(behindTheNut(gaugePressure, density), nut, 'idle');
}

// Bernoulli, worked by hand: √(2 × 160e6 / 850) = 613.6 m/s.
test('160 MPa behind a nut drive fuel of 850 kg/m³ out at 614 m/s', () => {
  expect(jet(160e6, 850)).toMatchObject({ kind: 'jet', pressure: 160e6, speed: expect.closeTo(613.6, 1) });
});

test('what does not pierce skin only weeps', () => {
  expect(jet(PIERCES_SKIN - 1)).toBeUndefined();
  expect(jet(-4e3)).toBeUndefined();
  expect(jet(PIERCES_SKIN)).toBeDefined();
});

test('a check that opens nothing makes no jet, whatever the rail holds', () => {
  if (!dial) throw new Error('No such check');
  expect(jetFrom(behindTheNut(160e6), dial, 'idle')).toBeUndefined();
});
