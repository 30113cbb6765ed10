import { expect, test } from 'vitest';
import type { Shown } from '@/lib/checks/shown';
import { judgeBody } from '@/lib/questions/kinds/judge';
import { judgementOf } from '@/lib/questions/kinds/judge/judgement';
import { randomStream } from '@/lib/random';
import { aRig, catalogue } from '../../../support/bench-rig';

type ShownNumber = Extract<Shown, { kind: 'value' | 'off-scale' }>;

test.each<[string, string, string, ShownNumber, string]>([
  [
    'a small glass that ran over tells nothing of a limit that it cannot hold',
    'injector-return-flow-idle',
    'cylinder-50-ml',
    { kind: 'off-scale', quantity: 'injector-return-flow', end: 'high', limit: 50, unit: 'mL/min' },
    'atStop',
  ],
  [
    'a small glass that ran over fails a limit far below its brim',
    'relief-valve-leak-idle',
    'cylinder-50-ml',
    { kind: 'off-scale', quantity: 'relief-valve-leak', end: 'high', limit: 50, unit: 'mL/min' },
    'failAbove',
  ],
  [
    'a needle on its lower stop passes where only a most is given',
    'return-restriction-idle',
    'dial-0-100-kpa',
    { kind: 'off-scale', quantity: 'return-restriction', end: 'low', limit: 0, unit: 'kPa' },
    'pass',
  ],
  [
    'a prime pressure of 2 psi too little fails',
    'prime-pressure-key-on',
    'dial-0-30-psi',
    { kind: 'value', quantity: 'prime-pressure', value: 8, unit: 'psi' },
    'failBelow',
  ],
  [
    'a prime pressure on the limit of 70 kPa, 10.15 psi, cannot be told',
    'prime-pressure-key-on',
    'dial-0-30-psi',
    { kind: 'value', quantity: 'prime-pressure', value: 10, unit: 'psi' },
    'tooClose',
  ],
])('%s', (_, limit, instrument, shown, right) => {
  const { answer, key } = questionOf(limit, instrument, shown);
  const options = answer.form === 'choice' && key.form === 'choice' ? answer.options : [];
  const rightLines = options
    .filter(({ id }) => key.form === 'choice' && key.right.includes(id))
    .map(({ line }) => line);
  expect(rightLines).toMatchObject([{ say: right }]);
});

test('only a pointer at its stop is offered as a reason where it stands there', () => {
  const shown: ShownNumber = { kind: 'value', quantity: 'relief-valve-leak', value: 3, unit: 'mL/min' };
  const { answer } = questionOf('relief-valve-leak-idle', 'cylinder-50-ml', shown);
  expect(answer.form === 'choice' && answer.options.length).toBe(4);
  const said = JSON.stringify(answer);
  expect(said).not.toContain('atStop');
  expect(said).toContain('tooClose');
});

function questionOf(limit: string, instrument: string, shown: ShownNumber) {
  const line = aRig().limits.find(({ id }) => id === limit);
  const check = catalogue.checks.get(line?.check ?? '');
  const quantity = check?.quantities.find(({ id }) => id === line?.quantity);
  const gauge = catalogue.gauges.get(instrument);
  if (!line || !check || !quantity || !gauge || line.condition === 'snap-acceleration')
    throw new Error('No such limit');
  const judgement = judgementOf({ check, quantity, condition: line.condition, line }, instrument, gauge, shown);
  return judgeBody(judgement, { classAlone: false, topics: [], shuffle: randomStream('unit', 'shuffle') });
}
