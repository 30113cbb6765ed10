import { expect, test } from 'vitest';
import { checkHookUp, conditionsOf, type HookUp, performCheck } from '@/lib/cases/perform-check';
import { toSi } from '@/lib/units';
import { catalogue } from '../../support/bench-rig';
import { caseAt } from '../../support/case-at';
import { aCase } from '../../support/worked-attempt';

const weakPump = aCase({ cause: 'lift-pump-weak' });
const primeCheck: HookUp = { check: 'prime-pressure', condition: 'key-on', instrument: 'dial-0-30-psi' };

function hookUp(changes: Partial<HookUp>, theCase = weakPump) {
  return performCheck(theCase, catalogue, { ...primeCheck, ...changes });
}

test('an instrument shows the truth to within its class and resolution', () => {
  const read = hookUp({});
  const ambient = weakPump.points['key-on'].values.ambientPressure ?? 0;
  const truth = (weakPump.points['key-on'].pressures['main-filter-inlet'] ?? 0) - ambient;
  expect(read).toMatchObject({ shown: [{ kind: 'value', quantity: 'prime-pressure', unit: 'psi' }] });
  const [shown] = 'shown' in read ? read.shown : [];
  // Class 1.6 of 30 psi is 0.48 psi, and half of the resolution of 0.25 psi may be rounded away.
  if (shown?.kind === 'value')
    expect(Math.abs(toSi(shown.value, 'psi') - truth)).toBeLessThanOrEqual(toSi(0.605, 'psi'));
});

test('the same instrument on the same case shows the same again', () => {
  expect(hookUp({})).toEqual(hookUp({}));
});

test('a low-range gauge on a port that a turning gear pump feeds is destroyed and shows nothing', () => {
  expect(hookUp({ condition: 'idle' }, aCase({ cause: 'no-fuel-fault' }))).toEqual({
    shown: [{ kind: 'destroyed', quantity: 'prime-pressure' }],
  });
});

test('a glass too small overflows and says only that', () => {
  const leaking = aCase({ cause: 'injector-leakage-high', severity: 0.5 });
  const read = hookUp({ check: 'injector-return-flow', condition: 'idle', instrument: 'cylinder-50-ml' }, leaking);
  expect(read).toEqual({
    shown: [{ kind: 'off-scale', quantity: 'injector-return-flow', end: 'high', limit: 50, unit: 'mL/min' }],
  });
});

test('the data display shows each quantity in its own unit', () => {
  const read = hookUp({ check: 'rail-pressure', condition: 'key-off', instrument: 'data-display' });
  expect('shown' in read && read.shown.map((item) => 'unit' in item && item.unit)).toEqual(['MPa', 'MPa', '%']);
});

test('stored codes are those of the work order', () => {
  const plugged = aCase({ cause: 'inlet-screen-plugged', severity: 1 });
  const read = hookUp({ check: 'trouble-codes', instrument: 'code-list' }, plugged);
  expect(plugged.workOrder.codes.length).toBeGreaterThan(0);
  expect(read).toEqual({ shown: [{ kind: 'codes', quantity: 'stored-codes', codes: plugged.workOrder.codes }] });
});

test.each<[string, Partial<HookUp>]>([
  ['unknown-check', { check: 'compression' }],
  ['condition-not-possible', { condition: 'full-load' }],
  ['condition-not-possible', { condition: 'sideways' }],
  ['unknown-instrument', { instrument: 'dial-0-9-furlongs' }],
  ['instrument-does-not-fit', { instrument: 'vacuum-dial-0-60-kpa' }],
])('%s refuses a hook-up of %o', (error, changes) => {
  expect(hookUp(changes)).toEqual({ error });
});

test('a check that this rig has no port for is refused', () => {
  const check = catalogue.checks.get('prime-pressure');
  const checks = new Map([['prime-pressure', { ...(check as NonNullable<typeof check>), ports: {} }]]);
  expect(checkHookUp(weakPump, { ...catalogue, checks }, primeCheck)).toEqual({ error: 'not-on-this-rig' });
});

test('an engine that does not start cannot be run for a check', () => {
  const dead = aCase({ cause: 'relief-valve-leaking', severity: 1 });
  expect(dead.workOrder.complaint).toBe('will-not-start');
  const running = { check: 'rail-pressure', condition: 'idle', instrument: 'data-display' };
  expect(hookUp(running, dead)).toEqual({ error: 'engine-does-not-run' });
  expect(hookUp({ ...running, condition: 'key-off' }, dead)).toHaveProperty('shown');
});

test('unwise conditions can be chosen like any other', () => {
  const check = catalogue.checks.get('prime-pressure');
  expect(check && conditionsOf(check)).toEqual(['key-on', 'cranking', 'idle']);
});

test('a fitting opened with the rail behind it shows a jet and nothing else', () => {
  const nut = { check: 'high-pressure-fitting', condition: 'cranking', instrument: 'eyes' };
  expect(hookUp(nut, caseAt({}))).toEqual({
    shown: [{ kind: 'jet', quantity: 'fuel-at-fitting', speed: expect.any(Number), pressure: expect.any(Number) }],
  });
});

test('a meter shows each quantity in its own range and unit, with one error for all of them', () => {
  const supply = { check: 'lift-pump-supply', condition: 'key-on', instrument: 'multimeter' };
  const read = hookUp(supply, caseAt({}));
  expect(read).toMatchObject({ shown: [{ unit: 'V' }, { unit: 'A' }] });
  // 24 V at a pump that is wired as it should be; the meter may be 0.02 V out and rounds to 0.01 V.
  const [volts] = 'shown' in read ? read.shown : [];
  expect(volts?.kind === 'value' && Math.abs(volts.value - 24)).toBeLessThanOrEqual(0.025);
});

test('an open winding is off the scale of resistance, where the limit’s own range ends', () => {
  const open = caseAt({ cause: 'metering-actuator-open-circuit', severity: 1 });
  expect(hookUp({ check: 'metering-actuator', condition: 'key-off', instrument: 'multimeter' }, open)).toEqual({
    shown: [{ kind: 'off-scale', quantity: 'actuator-resistance', end: 'high', limit: 200, unit: 'Ω' }],
  });
});

test('an eye tells a grade; hydrometer and thermometer in the same jar tell their own', () => {
  const watery = caseAt({ cause: 'water-in-fuel', severity: 1 });
  const read = hookUp({ check: 'fuel-sample', condition: 'key-off', instrument: 'sample-jar' }, watery);
  expect(read).toMatchObject({
    shown: [
      { quantity: 'water', unit: 'grade', value: expect.toSatisfy((grade: number) => grade > 0) },
      { quantity: 'cloudiness', unit: 'grade', value: 0 },
      { quantity: 'fuel-density', unit: 'kg/m³' },
      { quantity: 'fuel-temperature', unit: '°C' },
    ],
  });
});

test('a recorder shows the curves that its numbers are read off', () => {
  const read = hookUp({ check: 'crank-trace', condition: 'cranking', instrument: 'trace-recorder' }, caseAt({}));
  expect(read).toMatchObject({ shown: [{ unit: 's' }, { unit: 'MPa' }] });
  for (const shown of 'shown' in read ? read.shown : []) {
    const lines = shown.kind === 'value' ? shown.lines : [];
    expect(lines?.map(({ id }) => id).sort()).toEqual(['commanded-rail-pressure', 'sensed-rail-pressure']);
  }
});

test('a snap acceleration sets out from idle and needs an engine that runs', () => {
  const snap = { check: 'snap-trace', condition: 'snap-acceleration', instrument: 'trace-recorder' };
  expect(hookUp(snap, caseAt({}))).toHaveProperty('shown');
  expect(hookUp(snap, caseAt({ cause: 'relief-valve-leaking', severity: 1 }))).toEqual({
    error: 'engine-does-not-run',
  });
});

test('a needle swings where bubbles pass, a digital gauge and solid fuel show none of it', () => {
  const airy = caseAt({ cause: 'suction-air-leak', severity: 0.3 });
  const gearPump = { check: 'gear-pump-pressure', condition: 'idle' };
  const swing = (instrument: string, theCase = airy) => {
    const read = hookUp({ ...gearPump, instrument }, theCase);
    const [shown] = 'shown' in read ? read.shown : [];
    return shown?.kind === 'value' ? shown.flutter : undefined;
  };
  expect(swing('dial-0-300-psi')).toBeGreaterThan(0);
  expect(swing('digital-0-4-mpa')).toBeUndefined();
  expect(swing('dial-0-300-psi', caseAt({}))).toBeUndefined();
});
