import { expect, test } from 'vitest';
import type { Case } from '@/lib/cases/case';
import { parseCaseCode } from '@/lib/cases/case-code';
import { caseFromSeed } from '@/lib/cases/case-from-seed';
import { performCheck } from '@/lib/cases/perform-check';
import { hintFor } from '@/lib/coaching/hint';
import type { Act, ReadingAct } from '@/lib/grading/acts';
import { catalogue } from '../../support/bench-rig';
import { codeOf } from '../../support/case-codes';

function caseOf(cause: string, severity: number, word?: string): Case {
  const parsed = parseCaseCode(codeOf(cause, severity, word), catalogue);
  if ('error' in parsed) throw new Error(parsed.error);
  return caseFromSeed(parsed.spec, catalogue);
}

function read(theCase: Case, hookUp: { check: string; condition: string; instrument: string }): ReadingAct {
  const result = performCheck(theCase, catalogue, hookUp);
  if ('error' in result) throw new Error(result.error);
  return { kind: 'reading', ...hookUp, condition: hookUp.condition as ReadingAct['condition'], shown: result.shown };
}

/** Does what each hint says until there is none. */
function follow(theCase: Case, first: readonly ReadingAct[] = []): ReadingAct[] {
  const acts: Act[] = [...first];
  const followed: ReadingAct[] = [];
  for (let steps = 0; steps < 12; steps++) {
    const hint = hintFor(theCase, catalogue, acts);
    if (!hint.next) return followed;
    const reading = read(theCase, hint.next);
    followed.push(reading);
    acts.push(hint, reading);
  }
  throw new Error(`No end: ${followed.map(({ check }) => check).join(', ')}`);
}

const weakPump = caseOf('lift-pump-weak', 800);

test('a hint names a check of the rig that can be done as hinted, and why', () => {
  const { next, why } = hintFor(weakPump, catalogue, []);
  expect(next && performCheck(weakPump, catalogue, next)).toHaveProperty('shown');
  expect(why?.minutes).toBe(catalogue.checks.get(next?.check ?? '')?.minutes);
  expect(why?.settles).toBeGreaterThan(0);
  expect(why?.settles).toBeLessThanOrEqual(1);
  expect(why?.areas.length).toBeGreaterThan(0);
});

test('two cases that differ in nothing but the hidden cause get the same hint', () => {
  // At severity 0 every cause is the healthy rig exactly: same order, same readings, another truth.
  const [one, other] = ['suction-air-leak', 'rail-sensor-reads-high'].map((cause) => caseOf(cause, 0, 'same-hint'));
  if (!one || !other) throw new Error('two cases');
  expect(one.truth).not.toEqual(other.truth);
  expect(other.workOrder).toEqual(one.workOrder);
  const first = hintFor(one, catalogue, []);
  expect(hintFor(other, catalogue, [])).toEqual(first);
  const acts = [read(one, first.next ?? { check: '', condition: '', instrument: '' })];
  expect(hintFor(other, catalogue, acts)).toEqual(hintFor(one, catalogue, acts));
});

test('no hint knows a cause, a severity or what is to be repaired', () => {
  const text = JSON.stringify(hintFor(weakPump, catalogue, []));
  for (const { id, repairs } of catalogue.causes.values())
    for (const word of [id, ...repairs.map((repair) => repair.id)]) expect(text).not.toContain(`"${word}"`);
  expect(text).not.toContain('severity');
});

test('hints come to an end, and none names a hook-up twice', () => {
  const hinted = follow(weakPump).map(({ check, condition }) => `${check} ${condition}`);
  expect(hinted.length).toBeGreaterThan(0);
  expect(new Set(hinted).size).toBe(hinted.length);
});

test('findings and hints asked for before do not move a hint: only what was shown does', () => {
  const first = hintFor(weakPump, catalogue, []);
  expect(hintFor(weakPump, catalogue, [first, first])).toEqual(first);
});

test('a gauge that is destroyed is not hinted at again', () => {
  const lost = read(weakPump, { check: 'prime-pressure', condition: 'idle', instrument: 'dial-0-30-psi' });
  expect(lost.shown[0]?.kind).toBe('destroyed');
  const instruments = follow(weakPump, [lost]).map(({ instrument }) => instrument);
  expect(instruments.length).toBeGreaterThan(0);
  expect(instruments).not.toContain('dial-0-30-psi');
});
