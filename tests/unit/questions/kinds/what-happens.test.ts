import { describe, expect, test } from 'vitest';
import { type Direction, effectsOf, looksOn, NO_READING } from '@/lib/questions/kinds/what-happens/changes';
import { livelyLooks } from '@/lib/questions/kinds/what-happens/lively-looks';
import { degreeOf } from '@/lib/questions/shared/degree-of';
import { dayOf } from '@/lib/questions/shared/rig-day';
import { aRig, catalogue, causeOf } from '../../../support/bench-rig';

const day = dayOf(1, aRig(), catalogue);

function effectOf(cause: string, check: string, condition: string, quantity = check) {
  const looks = looksOn(day, catalogue);
  const index = looks.findIndex(
    (look) => look.check.id === check && look.condition === condition && look.quantity.id === quantity,
  );
  return effectsOf(day, { cause: causeOf(cause), severity: causeOf(cause).severity.max }, catalogue)[index];
}

describe('what a severe fault does to a reading, from hydraulic reasoning', () => {
  test.each<[string, string, string, string, Direction]>([
    // Common practice, no source: a plugged medium loses more pressure, and starves what comes behind it.
    ['main-filter-plugged', 'main-filter-drop', 'full-load', 'main-filter-drop', 'rises'],
    ['main-filter-plugged', 'lift-pump-supply', 'key-on', 'lift-pump-voltage', 'stays'],
    ['main-filter-bypassing', 'main-filter-drop', 'full-load', 'main-filter-drop', 'falls'],
    ['supply-filter-plugged', 'suction-after-filter', 'full-load', 'suction-after-filter', 'rises'],
    ['lift-pump-open-circuit', 'lift-pump-supply', 'key-on', 'lift-pump-current', 'falls'],
    ['injector-leakage-high', 'injector-return-flow', 'idle', 'injector-return-flow', 'rises'],
    // The controller makes up for what leaks, so that the rail does not show it and the command does.
    ['injector-leakage-high', 'rail-pressure', 'idle', 'sensed-rail-pressure', 'stays'],
    ['injector-leakage-high', 'rail-pressure', 'idle', 'metering-command', 'rises'],
    ['regulator-stuck-open', 'gear-pump-pressure', 'full-load', 'gear-pump-pressure', 'falls'],
  ])('%s: in %s at %s, %s %s', (cause, check, condition, quantity, direction) => {
    const effect = effectOf(cause, check, condition, quantity);
    expect(effect === NO_READING ? effect : effect?.direction).toBe(direction);
  });
});

test('no reading is asked for where the broken engine does not run', () => {
  expect(effectOf('rail-sensor-reference-lost', 'main-filter-drop', 'full-load')).toBe(NO_READING);
});

test('a change that only a fine instrument sees is neither one nor none', () => {
  const all = effectsOf(day, { cause: causeOf('main-filter-plugged'), severity: 0.6 }, catalogue);
  const small = all.filter((effect) => {
    if (!effect || effect === NO_READING) return false;
    const change = Math.abs(effect.after - effect.before);
    return change > effect.none && change > 0 && change <= effect.plain;
  });
  expect(small.length).toBeGreaterThan(0);
  for (const effect of small) expect(effect !== NO_READING && effect?.direction).toBeUndefined();
});

test('what stays is asked only of readings that several causes move', () => {
  const lively = [...livelyLooks(day, catalogue)].map((index) => looksOn(day, catalogue)[index]?.quantity.id);
  expect(lively).toContain('metering-command');
  expect(lively).not.toContain('commanded-rail-pressure');
  expect(lively).not.toContain('tank-level');
});

test('degrees divide what a cause ranges over in three', () => {
  const cause = causeOf('main-filter-plugged');
  expect([0.5, 0.75, 1].map((severity) => degreeOf({ cause, severity }))).toEqual(['mild', 'clear', 'severe']);
  expect(degreeOf({ cause: causeOf('lift-pump-open-circuit'), severity: 1 })).toBe('only');
});
