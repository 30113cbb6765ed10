import { expect, test } from 'vitest';
import { type Assessing, assess } from '@/lib/questions/kinds/which-tool/assess';
import { hooksFor, type Task } from '@/lib/questions/kinds/which-tool/hook';
import { whichToolRanges } from '@/lib/questions/kinds/which-tool/ranges';
import { dayOf } from '@/lib/questions/shared/rig-day';
import type { ConditionId } from '@/lib/rig/condition';
import { toSi } from '@/lib/units';
import { aRig, catalogue } from '../../../support/bench-rig';

const assessing: Assessing = {
  catalogue,
  ranges: whichToolRanges.parse(catalogue.questions.get('which-tool')?.ranges),
};

test.each<[string, string, string, string, ConditionId, string | undefined]>([
  ['the procedure’s own gauge', 'gear-pump-pressure', 'gear-pump-pressure', 'dial-0-300-psi', 'idle', undefined],
  [
    'a prime gauge on the running engine',
    'gear-pump-pressure',
    'gear-pump-pressure',
    'dial-0-30-psi',
    'idle',
    'destroyed',
  ],
  ['a low gauge while cranking', 'gear-pump-pressure', 'gear-pump-pressure', 'dial-0-200-kpa', 'cranking', 'may-catch'],
  ['the prime gauge with the key on', 'prime-pressure', 'prime-pressure', 'dial-0-30-psi', 'key-on', undefined],
  [
    'a gauge coarser than the procedure’s that still tells it',
    'prime-pressure',
    'prime-pressure',
    'digital-0-4-mpa',
    'key-on',
    undefined,
  ],
  ['a vacuum gauge on pressure', 'prime-pressure', 'prime-pressure', 'vacuum-dial-0-60-kpa', 'key-on', 'wrong-kind'],
  [
    'the right gauge behind the filter',
    'suction-before-filter',
    'suction-after-filter',
    'vacuum-dial-0-60-kpa',
    'full-load',
    'wrong-port',
  ],
  ['a suction at idle', 'suction-restriction', 'suction-restriction', 'vacuum-dial-0-60-kpa', 'idle', 'no-line'],
  [
    'a glass smaller than the limit',
    'injector-return-flow',
    'injector-return-flow',
    'cylinder-50-ml',
    'idle',
    'short-range',
  ],
  ['a glass too coarse for a drip', 'relief-valve-leak', 'relief-valve-leak', 'cylinder-1000-ml', 'idle', 'coarse'],
])('%s', (_, check, at, gauge, condition, flaw) => {
  const found = assessed(check, at, gauge, condition);
  expect(found?.flaw).toBe(flaw);
});

test('a destroyed gauge is said to see as many times its range as the solver has there', () => {
  const found = assessed('gear-pump-pressure', 'gear-pump-pressure', 'dial-0-30-psi', 'idle');
  const { pressures, values } = day.points.idle;
  const pressure = (pressures['gear-pump-outlet'] ?? 0) - (values.ambientPressure ?? 0);
  expect(found).toMatchObject({ flaw: 'destroyed', times: expect.closeTo(pressure / toSi(30, 'psi'), 9) });
});

const day = dayOf(0, aRig(), catalogue);

function assessed(id: string, at: string, gauge: string, condition: ConditionId) {
  const check = catalogue.checks.get(id);
  const quantity = check?.quantities[0];
  if (!check || !quantity) throw new Error('No such check');
  const task: Task = { day, check, quantity };
  const hook = hooksFor(task, catalogue).find(
    (one) => one.instrument.id === gauge && one.at.check.id === at && one.condition === condition,
  );
  if (!hook) throw new Error('Nobody would think of that');
  return assess(task, hook, assessing);
}
