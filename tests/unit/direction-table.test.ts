import { expect, test } from 'vitest';
import { trueValue } from '@/lib/checks/quantity';
import type { ConditionId } from '@/lib/rig/condition';
import type { OperatingPoints } from '@/lib/rig/operating-point';
import { catalogue, healthyPoints, pointsWith } from '../support/bench-rig';

/*
 * Which way each reading goes at severity 0.8, reasoned from the trade before it was computed (common practice, no
 * source; the sign logic of suction, outlet restriction, air, worn pump and stuck regulator as any shop teaches it).
 * + rises, - falls, = stays. A reading stays when it moves less than a twentieth of its healthy value or than the
 * least that its instrument shows, whichever is more.
 *
 *  prime   prime pressure, key-on: lift pump against the bleed, so only what is up to the main-filter inlet matters
 *  suction vacuum at the gear-pump inlet, high idle: restriction ahead of it raises it, more flow raises it
 *  crankG, idleG, loadG  gear-pump pressure cranking, idle, full load
 *  filter  main-filter drop, full load: resistance × flow
 *  screen  inlet-screen drop, full load: what the high-pressure pump takes
 *  air     bubbles in the clear hose, idle
 *  idleR, loadR  sensed rail pressure idle, full load: held by the controller until it saturates
 *  crankR  sensed rail pressure cranking
 *  offR    sensed rail pressure at key-off: truth is none
 *  meter   metering command at idle: rises to make good any loss
 *  relief, injR, pumpR  relief-valve, injector and pump return flow at idle: go with true rail pressure
 */
const columns = {
  prime: ['prime-pressure', 'key-on', 'prime-pressure', 2e3],
  suction: ['suction-restriction', 'high-idle', 'suction-restriction', 0.5e3],
  crankG: ['gear-pump-pressure', 'cranking', 'gear-pump-pressure', 5e3],
  idleG: ['gear-pump-pressure', 'idle', 'gear-pump-pressure', 5e3],
  loadG: ['gear-pump-pressure', 'full-load', 'gear-pump-pressure', 5e3],
  filter: ['main-filter-drop', 'full-load', 'main-filter-drop', 1e3],
  screen: ['screen-drop', 'full-load', 'screen-drop', 1e3],
  air: ['air-in-fuel', 'idle', 'free-gas', 0.01],
  idleR: ['rail-pressure', 'idle', 'sensed-rail-pressure', 1e5],
  loadR: ['rail-pressure', 'full-load', 'sensed-rail-pressure', 1e5],
  crankR: ['cranking-rail-pressure', 'cranking', 'cranking-rail-pressure', 1e5],
  offR: ['rail-pressure', 'key-off', 'sensed-rail-pressure', 1e5],
  meter: ['rail-pressure', 'idle', 'metering-command', 0.001],
  relief: ['relief-valve-leak', 'idle', 'relief-valve-leak', 1e-8],
  injR: ['injector-return-flow', 'idle', 'injector-return-flow', 1e-8],
  pumpR: ['pump-return-flow', 'idle', 'pump-return-flow', 1e-8],
} as const satisfies Record<string, readonly [string, ConditionId, string, number]>;

const table = `
                           prime suction crankG idleG loadG filter screen air idleR loadR crankR offR meter relief injR pumpR
supply-filter-plugged        -      +      =      =     -      -      =    =    =     =     =     =     =     =     =     =
suction-air-leak             -      =      -      -     -      -      =    +    =     =     =     =     +     =     =     =
lift-pump-weak               -      =      =      =     =      =      =    =    =     =     =     =     =     =     =     =
gear-pump-worn               =      =      -      -     -      -      =    =    =     =     =     =     +     =     =     =
regulator-stuck-open         =      =      -      -     -      -      =    =    =     =     =     =     +     =     =     =
main-filter-plugged          +      -      +      =     =      +      =    =    =     =     =     =     +     =     =     =
inlet-screen-plugged         =      =      =      =     =      -      +    =    =     -     =     =     =     =     =     =
metering-valve-restricted    =      =      =      =     =      -      -    =    =     -     =     =     +     =     =     =
metering-valve-stuck-open    =      +      -      =     =      =      =    =    +     =     +     =     -     +     +     +
high-pressure-pump-worn      =      +      -      =     =      =      =    =    =     -     =     =     +     =     =     +
relief-valve-leaking         =      +      -      =     =      +      +    =    =     -     -     =     +     +     =     =
injector-leakage-high        =      +      -      =     =      +      +    =    =     -     =     =     +     =     +     =
rail-sensor-reads-high       =      =      +      =     =      =      =    =    =     =     =     +     -     =     -     -
no-fuel-fault                =      =      =      =     =      =      =    =    =     =     =     =     =     =     =     =
`;

type Column = keyof typeof columns;
type Direction = '+' | '-' | '=';

const [head = [], ...lines] = table
  .trim()
  .split('\n')
  .map((line) => line.trim().split(/\s+/));
const rows = lines.flatMap(([cause = '', ...signs]) =>
  signs.map((sign, index) => [cause, head[index] as Column, sign as Direction] as const),
);

const healthy = healthyPoints();

test('the table speaks of every cause and every column', () => {
  expect(lines.map(([cause]) => cause).sort()).toEqual([...catalogue.causes.keys()]);
  expect(head).toEqual(Object.keys(columns));
  expect(rows).toHaveLength(catalogue.causes.size * head.length);
});

test.each(rows)('%s moves %s as the trade expects: %s', (cause, column, expected) => {
  const before = reading(healthy, column);
  const after = reading(pointsWith(cause, 0.8), column);
  const threshold = Math.max(Math.abs(before) / 20, columns[column][3]);
  expect({ direction: directionOf(after - before, threshold), before, after }).toMatchObject({ direction: expected });
});

function reading(points: OperatingPoints, column: Column): number {
  const [checkId, condition, quantityId] = columns[column];
  const quantity = catalogue.checks.get(checkId)?.quantities.find(({ id }) => id === quantityId);
  if (!quantity) throw new Error(`No ${quantityId} in ${checkId}`);
  return trueValue(points[condition], quantity, 0);
}

function directionOf(moved: number, threshold: number): Direction {
  if (Math.abs(moved) <= threshold) return '=';
  return moved > 0 ? '+' : '-';
}
