import { expect, test } from 'vitest';
import { type CallChoice, decideCall } from '@/app/_server/decide-call';
import { decideFinding } from '@/app/_server/decide-finding';
import { decideReading } from '@/app/_server/decide-reading';
import { loadCatalogue } from '@/content/load';
import { parseCaseCode } from '@/lib/cases/case-code';
import { caseFromSeed } from '@/lib/cases/case-from-seed';
import type { FindingAct, StoredAct } from '@/lib/grading/acts';
import { codeOf } from '../../support/case-codes';

const catalogue = loadCatalogue();
const parsed = parseCaseCode(codeOf('lift-pump-weak', 800), catalogue);
if ('error' in parsed) throw new Error(parsed.error);
const theCase = caseFromSeed(parsed.spec, catalogue);
const prime = { check: 'prime-pressure', condition: 'key-on', instrument: 'dial-0-30-psi' };

function read(seq: number, hookUp: typeof prime): StoredAct {
  const decided = decideReading(theCase, catalogue, [], hookUp);
  if ('error' in decided) throw new Error(decided.error);
  return { ...decided.act, seq };
}

const finding: FindingAct = {
  kind: 'finding',
  reading: 1,
  quantity: 'prime-pressure',
  entered: { value: 5, unit: 'psi' },
  verdict: 'fail',
  comparison: 'below',
  limit: 'prime-pressure-key-on',
  clears: [],
  suspects: ['priming'],
  words: '',
};

const judge = (acts: readonly StoredAct[], changes: Partial<FindingAct> = {}) =>
  decideFinding(theCase.rig, catalogue, acts, { ...finding, ...changes });

test('a gauge that was destroyed stays destroyed, and another one still works', () => {
  const acts = [read(1, { ...prime, condition: 'idle' })];
  expect(decideReading(theCase, catalogue, acts, prime)).toEqual({ error: 'instrument-destroyed' });
  expect(decideReading(theCase, catalogue, acts, { ...prime, instrument: 'dial-0-200-kpa' })).toHaveProperty('act');
});

test('a reading is judged once for each quantity', () => {
  const acts = [read(1, prime)];
  expect(judge(acts)).toEqual({ act: finding });
  expect(judge([...acts, { ...finding, seq: 2 }])).toEqual({ error: 'already-judged' });
});

test('only what was read can be judged', () => {
  expect(judge([])).toEqual({ error: 'reading-not-found' });
  expect(judge([read(1, prime)], { quantity: 'mood' })).toEqual({ error: 'reading-not-found' });
  expect(judge([read(1, { ...prime, condition: 'idle' })])).toEqual({ error: 'nothing-to-judge' });
});

test('a dial has to be read, in a unit that fits', () => {
  const acts = [read(1, prime)];
  expect(judge(acts, { entered: null })).toEqual({ error: 'value-missing' });
  expect(judge(acts, { entered: { value: 5, unit: 'mL/min' } })).toEqual({ error: 'unit-does-not-fit' });
  expect(judge(acts, { entered: { value: 0.35, unit: 'bar' } })).toHaveProperty('act');
});

test('a screen prints its value, so none is to be written beside it', () => {
  const acts = [read(1, { check: 'rail-pressure', condition: 'idle', instrument: 'data-display' })];
  const rail = { quantity: 'sensed-rail-pressure', limit: 'sensed-rail-pressure-idle' };
  expect(judge(acts, { ...rail, entered: { value: 50, unit: 'MPa' } })).toEqual({ error: 'value-not-read' });
  expect(judge(acts, { ...rail, entered: null })).toHaveProperty('act');
});

test('a limit is one of the sheet’s lines or none, and no area is both cleared and suspect', () => {
  const acts = [read(1, prime)];
  expect(judge(acts, { limit: 'sky' })).toEqual({ error: 'unknown-limit' });
  expect(judge(acts, { limit: null })).toHaveProperty('act');
  expect(judge(acts, { clears: ['priming'] })).toEqual({ error: 'area-twice' });
});

test('a call is made of choices that every case of the rig offers', () => {
  const call = { cause: 'lift-pump-weak', repair: 'replace-lift-pump', check: 'prime-pressure', condition: 'key-on' };
  const decide = (changes: Partial<CallChoice>) =>
    decideCall(theCase.rig, catalogue, { ...call, restored: [], ...changes });
  expect(decide({})).toHaveProperty('act');
  expect(decide({ cause: 'gremlins' })).toEqual({ error: 'unknown-cause' });
  expect(decide({ repair: 'hammer' })).toEqual({ error: 'unknown-repair' });
  expect(decide({ check: 'mood' })).toEqual({ error: 'unknown-proof' });
  expect(decide({ condition: 'idle' })).toEqual({ error: 'unknown-proof' });
  expect(decide({ restored: ['prime', 'paint'] })).toEqual({ error: 'unknown-step' });
  expect(decide({ restored: ['prime', 'prime'] })).toMatchObject({ act: { restored: ['prime'] } });
});

test('a second cause is another one than the first, made of the same choices', () => {
  const call = { cause: 'lift-pump-weak', repair: 'replace-lift-pump', check: 'prime-pressure', condition: 'key-on' };
  const other = {
    cause: 'main-filter-plugged',
    repair: 'replace-main-filter',
    check: 'main-filter-drop',
    condition: 'full-load',
  };
  const decide = (also: typeof call) => decideCall(theCase.rig, catalogue, { ...call, also, restored: [] });
  const proof = { check: 'main-filter-drop', condition: 'full-load' };
  expect(decide(other)).toMatchObject({
    act: { cause: 'lift-pump-weak', also: { cause: other.cause, repair: other.repair, proof } },
  });
  expect(decide(call)).toEqual({ error: 'same-cause-twice' });
  expect(decide({ ...other, cause: 'gremlins' })).toEqual({ error: 'unknown-cause' });
  expect(decide({ ...other, condition: 'cranking' })).toEqual({ error: 'unknown-proof' });
});

test('a fitting that let go a jet has nothing to judge', () => {
  const jet: StoredAct = {
    ...read(1, prime),
    kind: 'reading',
    check: 'prime-pressure',
    condition: 'key-on',
    instrument: 'dial-0-30-psi',
    shown: [{ kind: 'jet', quantity: 'prime-pressure', speed: 400, pressure: 60e6 }],
  };
  expect(judge([jet])).toEqual({ error: 'nothing-to-judge' });
});

test('a curve has to be read, in seconds where it is a time', () => {
  const check = catalogue.checks.get('prime-pressure');
  const dial = catalogue.gauges.get('dial-0-30-psi');
  if (!check || !dial) throw new Error('Content has no prime pressure');
  const recorded: typeof catalogue = {
    ...catalogue,
    gauges: new Map([...catalogue.gauges, ['recorder', { ...dial, id: 'recorder', display: 'trace', unit: 's' }]]),
    checks: new Map([...catalogue.checks, [check.id, { ...check, instruments: ['recorder'] }]]),
  };
  const acts: StoredAct[] = [
    {
      seq: 1,
      kind: 'reading',
      check: check.id,
      condition: 'key-on',
      instrument: 'recorder',
      shown: [{ kind: 'value', quantity: 'prime-pressure', value: 12, unit: 's' }],
    },
  ];
  const entered = (value: FindingAct['entered']) =>
    decideFinding(theCase.rig, recorded, acts, { ...finding, entered: value });
  expect(entered(null)).toEqual({ error: 'value-missing' });
  expect(entered({ value: 12, unit: 'psi' })).toEqual({ error: 'unit-does-not-fit' });
  expect(entered({ value: 12, unit: 's' })).toHaveProperty('act');
});
