import { expect, test } from 'vitest';
import type { Shown } from '@/lib/checks/shown';
import type { ReadingAct } from '@/lib/grading/acts';
import { safetyEvents } from '@/lib/grading/safety-events';
import { aReading } from '../../support/attempt-rows';
import { aRig, catalogue } from '../../support/bench-rig';

const good = aReading({ instrument: 'dial-0-30-psi' });
const lost: Shown[] = [{ kind: 'destroyed', quantity: 'prime-pressure' }];
const jet: Shown[] = [{ kind: 'jet', quantity: 'fuel-at-fitting', speed: 300, pressure: 40e6 }];

function events(changes: Partial<ReadingAct>, rig = 'tern-13') {
  return safetyEvents([{ ...good, seq: 3, ...changes }], { rig: aRig(rig) }, catalogue).map(({ code }) => code);
}

test('an engine turned with a low-range gauge on is an event, whether or not the gauge survived', () => {
  expect(events({ condition: 'cranking' })).toEqual(['cranked-low-range']);
  expect(events({ condition: 'idle' })).toEqual(['cranked-low-range']);
  expect(events({ condition: 'idle', shown: lost })).toEqual(['instrument-destroyed']);
  expect(events({ check: 'gear-pump-pressure', instrument: 'dial-0-200-kpa', condition: 'cranking' })).toEqual([
    'cranked-low-range',
  ]);
});

test('the same gauge on an engine that stands is in order, and so is one that covers the port', () => {
  expect(events({ condition: 'key-on' })).toEqual([]);
  expect(events({ condition: 'cranking', instrument: 'dial-0-300-psi' })).toEqual([]);
  expect(events({ check: 'return-restriction', instrument: 'dial-0-100-kpa', condition: 'idle' })).toEqual([]);
  expect(
    events({ check: 'supply-pump-pressure', instrument: 'dial-0-1000-kpa', condition: 'idle' }, 'plover-7'),
  ).toEqual([]);
});

test('an instrument that stops at its end is in no danger', () => {
  expect(events({ check: 'suction-restriction', instrument: 'vacuum-dial-0-60-kpa', condition: 'idle' })).toEqual([]);
});

test('every lost instrument and every jet names its reading, and is told once', () => {
  const readings = [
    { ...good, condition: 'key-on' as const, seq: 1 },
    { ...good, condition: 'idle' as const, seq: 3, shown: lost },
    { ...good, check: 'high-pressure-fitting', condition: 'idle' as const, instrument: 'eyes', seq: 5, shown: jet },
  ];
  expect(safetyEvents(readings, { rig: aRig() }, catalogue)).toEqual([
    { seq: 3, code: 'instrument-destroyed' },
    { seq: 5, code: 'high-pressure-jet' },
  ]);
});
